/** Faces our lessons can call for; the rest of KaTeX's set never ships. */
const kept = /KaTeX_(Main|Math|Size\d|AMS)/;

/**
 * Trims KaTeX's stylesheet to the woff2 files of the faces we use.
 *
 * @returns {import('vite').Plugin}
 */
export function leanMathsFonts() {
  return {
    name: 'lean-maths-fonts',
    enforce: 'pre',
    transform(css, id) {
      if (!/katex(\.min)?\.css/.test(id)) return undefined;
      return css.replace(/@font-face\s*\{[^}]*\}/g, leanFace);
    },
  };
}

/** @param {string} face */
function leanFace(face) {
  if (!kept.test(face)) return '';
  const withoutOldFormats = face.replace(
    /,\s*url\([^)]*\)\s*format\(["'](?:woff|truetype)["']\)/g,
    '',
  );
  return withoutOldFormats.replace('font-display:block', 'font-display:swap');
}
