/** Whether a link's fragment means to carry a pad at all; reading it is for link.ts. */
export function carriesPad(fragment: string): boolean {
  return /^#?pad=/.test(fragment);
}
