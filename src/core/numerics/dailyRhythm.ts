/** What goes smoothly with the hours of a day, told apart from what jumps. */
import { CoreError } from '#core/base/errors.ts';

/**
 * The smooth part of a day: its mean and its slowest waves.
 *
 * Law: the Fourier sum of the values over one day, up to so many waves a day.
 * @param values Values at evenly spaced times of one day [any unit], finite, more than twice as many as waves plus one.
 * @param waves Waves a day of the fastest part that is kept [-], whole, 0 or more.
 * @returns The smooth part at the same times [the same unit], as many as values.
 * @throws CoreError when there are too few values, one is not finite or the waves are not whole.
 * Accuracy: exact up to rounding of doubles for values that are such a sum.
 * Source: discrete Fourier series (Bracewell, The Fourier Transform and Its Applications, from memory).
 * @example dailyRhythm([3, 1, 3, 1, 3, 1], 1)[0] // 2.000
 */
export function dailyRhythm(values: readonly number[], waves: number): readonly number[] {
  const count = values.length;
  if (!Number.isInteger(waves) || waves < 0) {
    throw new CoreError('waves', waves, 'a whole number, 0 or more');
  }
  if (count <= 2 * waves + 1) {
    throw new CoreError('values', count, `more than ${2 * waves + 1} values`);
  }
  values.forEach((value, index) => {
    if (!Number.isFinite(value)) {
      throw new CoreError(`values[${index}]`, value, 'a finite number');
    }
  });
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const smooth = values.map(() => mean);
  for (let wave = 1; wave <= waves; wave += 1) {
    const angle = (index: number) => (2 * Math.PI * ((wave * index) % count)) / count;
    let [even, odd] = [0, 0];
    values.forEach((value, index) => {
      even += (2 / count) * value * Math.cos(angle(index));
      odd += (2 / count) * value * Math.sin(angle(index));
    });
    smooth.forEach((value, index) => {
      smooth[index] = value + even * Math.cos(angle(index)) + odd * Math.sin(angle(index));
    });
  }
  return smooth;
}
