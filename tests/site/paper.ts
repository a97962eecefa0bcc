import type { Page } from '@playwright/test';

/** Prints the page as it stands on A4 paper and counts the sheets. */
export async function sheetsOf(page: Page): Promise<number> {
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
}
