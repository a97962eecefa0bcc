/** Ids of the self-checks in a lesson's text, in order: what its progress hangs on. */
export function checksIn(text: string): readonly string[] {
  return [...text.matchAll(/<Check\s[^>]*?\bid="([^"]+)"/g)].map(([, id = '']) => id);
}
