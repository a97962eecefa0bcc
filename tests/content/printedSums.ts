/**
 * Reads the sums that a page prints ("3 h × 1200 W = 3.60 kWh") and works them out again from their
 * printed inputs, by nothing but arithmetic.
 */

interface Num {
  readonly value: number;
  /** Half a unit of the last printed place. */
  readonly half: number;
}
type Token = Num | string;

/** Words that a sum goes on after: units. Everything else ends it. */
const unit =
  /^(?:%|°[CF]?|gpm(?:\/ft²)?|gal(?:\/Wh)?|m²|m³(?:\/h)?|m(?:\/[sh])?|mm|ft(?:[²³])?(?:\/s)?|in(?:Hg)?|psi|kPa|bar|k?Wh?|VA?|A|h|min|rpm|years|cubic feet|kWh)(?![A-Za-z])/;
const number = /^(?:\d{1,3}(?:\u202f\d{3})+|\d+)(?:\.\d+)?/;
const fractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '⅛': 1 / 8,
  '⅞': 7 / 8,
};

/** The runs of numbers and signs in a text. */
function* runsOf(text: string): Generator<Token[]> {
  let run: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const rest = text.slice(at);
    const last = run.at(-1);
    const digits = number.exec(rest)?.[0];
    const word = unit.exec(rest)?.[0];
    const [char = ''] = rest;
    const equals = /^(?:=|is(?= [$\d])|that is|: (?=[$\d]))/.exec(rest)?.[0];
    if (/[\s$]/.test(char) && equals === undefined) at += 1;
    else if (digits !== undefined) {
      if (typeof last === 'object') {
        yield run;
        run = [];
      }
      const plain = digits.replaceAll('\u202f', '');
      const places = plain.split('.')[1]?.length ?? 0;
      run.push({ value: Number(plain), half: 0.5 * 10 ** -places });
      at += digits.length;
    } else if (fractions[char] !== undefined) {
      run.push({ value: fractions[char], half: 0 });
      at += 1;
    } else if (word !== undefined && typeof last === 'object') {
      if (word === '%') run[run.length - 1] = { value: last.value / 100, half: last.half / 100 };
      at += word.length;
    } else if (/[×+−/()²³]/.test(char)) {
      run.push(char);
      at += 1;
    } else if (equals !== undefined) {
      run.push('=');
      at += equals.length;
    } else {
      yield run;
      run = [];
      at += char.length;
      // The rest of a word, so that no number in a name is taken for one of a sum.
      while (/[A-Za-z’'^-]/.test(char) && /[\w.]/.test(text[at] ?? '') && /\w/.test(text[at] ?? ''))
        at += 1;
    }
  }
  yield run;
}

/** A side of a sum by the usual order of its signs; undefined where it is none. */
function worked(tokens: readonly Token[]): number | undefined {
  let at = 0;
  const sum = (): number => {
    let total = product();
    while (tokens[at] === '+' || tokens[at] === '−') {
      total += tokens[at++] === '+' ? product() : -product();
    }
    return total;
  };
  const product = (): number => {
    let total = power();
    while (tokens[at] === '×' || tokens[at] === '/') {
      total = tokens[at++] === '×' ? total * power() : total / power();
    }
    return total;
  };
  const power = (): number => {
    let base = atom();
    while (tokens[at] === '²' || tokens[at] === '³') base **= tokens[at++] === '²' ? 2 : 3;
    return base;
  };
  const atom = (): number => {
    const token = tokens[at++];
    if (typeof token === 'object') return token.value;
    if (token !== '(') return Number.NaN;
    const inside = sum();
    return tokens[at++] === ')' ? inside : Number.NaN;
  };
  const found = sum();
  return at === tokens.length && Number.isFinite(found) ? found : undefined;
}

export interface PrintedSum {
  readonly sum: number;
  readonly printed: number;
  readonly half: number;
}

/** Every sum in a text whose other side is one printed number. */
export function printedSums(text: string): PrintedSum[] {
  return [...runsOf(text)].flatMap((run) => {
    const sides: Token[][] = [[]];
    for (const token of run) {
      if (token === '=') sides.push([]);
      else sides.at(-1)?.push(token);
    }
    return sides.slice(1).flatMap((side, place) => {
      const before = sides[place] ?? [];
      const [shown] = side;
      const sum = worked(before);
      if (before.length < 2 || typeof shown !== 'object' || sum === undefined) return [];
      if (side.length > 1 && place < sides.length - 2) return [];
      return side.length === 1 ? [{ sum, printed: shown.value, half: shown.half }] : [];
    });
  });
}

/** Watts times hours may be printed in kilowatt-hours. */
const scales = [1, 1e-3];

/** The sums that do not come out as printed, to within the last printed place. */
export function wrongSums(text: string): string[] {
  return printedSums(text)
    .filter(
      ({ sum, printed, half }) =>
        !scales.some((scale) => Math.abs(sum * scale - printed) <= 1.001 * half),
    )
    .map(({ sum, printed }) => `${printed} is printed, ${sum} comes out: ${text}`);
}
