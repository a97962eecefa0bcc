import type { Here } from './figures.ts';

/** Where an answer lies past what the data sheet tells, in sentences; nothing where it does not. */
export function beyondText({
  point,
  isPowerCarried,
}: Pick<Here, 'point' | 'isPowerCarried'>): string {
  const past = point.kind === 'flowing' && point.extrapolated;
  return (
    (past ? ' This flow lies past the end of the pump’s curve, so it is a guess.' : '') +
    (isPowerCarried
      ? ' The data sheet gives no watts for this flow: those of its nearest point are taken.'
      : '')
  );
}
