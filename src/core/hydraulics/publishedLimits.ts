/**
 * Limits of velocity and flow that codes and standards state, for showing beside a reader's own. The
 * code in force at the place and the manuals of the units govern.
 */
import { requireNotNegative } from '#core/base/errors.ts';

/** One stated limit of velocity. */
export interface PublishedVelocityLimit {
  /** Title of the document [-]. */
  readonly document: string;
  /** Where in it [-]. */
  readonly section: string;
  /** The line it holds for [-], in the document's own word. */
  readonly line: string;
  /** Greatest velocity [m/s], above 0. */
  readonly velocity: number;
  /** How far we could check it: read in the document, read in others' pages about it, or known. */
  readonly read: 'inText' | 'secondHand' | 'memory';
}

const foot = 0.3048;
const gallonPerMinute = (231 * 0.0254 ** 3) / 60;

/** Velocity limits as stated in feet per second; see each row for how it was read. */
export const publishedVelocityLimits: readonly PublishedVelocityLimit[] = [
  ...[
    { line: 'suction', velocity: 6 * foot },
    { line: 'discharge', velocity: 10 * foot },
    { line: 'discharge, copper', velocity: 6 * foot },
  ].map((row) => ({
    document: 'Nevada Administrative Code',
    section: '444.160(1)',
    read: 'inText' as const,
    ...row,
  })),
  ...[
    { line: 'suction', velocity: 6 * foot },
    { line: 'return', velocity: 8 * foot },
  ].flatMap((row) => [
    {
      document: 'ANSI/APSP/ICC-15 2011',
      section: 'pipe sizing',
      read: 'secondHand' as const,
      ...row,
    },
    { document: 'California Energy Code', section: '150.0(p)', read: 'memory' as const, ...row },
  ]),
];

/**
 * Least rate at which a sand bed is washed backward [m/s], 15 gpm/ft2 (Model Aquatic Health Code,
 * second-hand; Utah R392-302-23, in the text).
 */
export const backwashRate = (15 * gallonPerMinute) / foot ** 2;

/** Turnover time that the filtration rule asks for [s]: 6 h. */
const filtrationTurnover = 6 * 3600;

/** Flow that the filtration rule always allows [m3/s]: 36 gpm. */
const filtrationFloor = 36 * gallonPerMinute;

/**
 * Greatest flow at which a pool may be filtered under the 6 hour rule.
 *
 * Law: the flow of a 6 h turnover or 36 gpm, whichever is greater.
 * @param volume Water in the pool [m3], 0 or more.
 * @returns Flow [m3/s], at least 36 gpm.
 * @throws CoreError when the volume is negative or not finite.
 * Accuracy: exact; reference file pipe-velocity.
 * Source: California Energy Code, section 150.0(p), second-hand: read in a designer's plan sheet, edition and year not seen (Title 24 Part 6, 2022, for the section).
 * @example greatestFiltrationFlow(100) // 0.004630
 */
export function greatestFiltrationFlow(volume: number): number {
  return Math.max(requireNotNegative('volume', volume, 'm3') / filtrationTurnover, filtrationFloor);
}
