/** Sides of a picture that grow by powers of ten; values are kept as their logarithm. */
import type { Side } from '#ui/charts/Frame.tsx';
import { grouped } from '#units/numerals.ts';

/** Every whole multiple of every power of ten between two values, ends included. */
function decadeMarks(least: number, greatest: number): number[] {
  const marks: number[] = [];
  for (let power = Math.floor(Math.log10(least)); power <= Math.log10(greatest); power += 1) {
    for (let multiple = 1; multiple < 10; multiple += 1) {
      // Dividing by a whole power keeps 3 x 0.01 from showing as 0.030000000000000002.
      const mark = power < 0 ? multiple / 10 ** -power : multiple * 10 ** power;
      if (mark >= least && mark <= greatest) marks.push(mark);
    }
  }
  return marks;
}

/** One side from `least` to `greatest`, labelled where told, with the fine lines of log paper. */
export function logSide(
  title: string,
  least: number,
  greatest: number,
  labelled: readonly number[],
): Side {
  return {
    title,
    unit: '',
    axis: {
      min: Math.log10(least),
      max: Math.log10(greatest),
      ticks: labelled.map((value) => ({ value: Math.log10(value), label: grouped(String(value)) })),
      fine: decadeMarks(least, greatest).map(Math.log10),
    },
  };
}
