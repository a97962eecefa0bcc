import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** Nothing that axe can find bars the way in a part of a page, by day and by night. */
export async function expectNoBarrier(page: Page, part: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).include(part).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
      colorScheme,
    ).toEqual([]);
  }
}
