import { type Span, unionOf } from '#core/time/spans.ts';
import type { DayReport, FlowLimit, ServiceNeed } from './dayReport.ts';

/** A worked-out day and, when there is a tariff, its price. */
export interface PricedDay {
  readonly report: DayReport<ServiceNeed, FlowLimit>;
  /** Price of the day, or of any period the two days share [currency]; left out without a tariff. */
  readonly cost?: number;
}

/** What a line of a comparison is about. */
export type ComparisonKind =
  | 'water'
  | 'turnovers'
  | 'runMinutes'
  | 'energy'
  | 'cost'
  | 'need'
  | 'limit'
  | 'quiet';

/** One quantity of two days side by side. */
export interface ComparisonLine {
  /**
   * water [m3], turnovers [-], runMinutes [min], energy [J], cost [currency]; need: minutes served
   * [min]; limit and quiet: minutes crossed [min].
   */
  readonly kind: ComparisonKind;
  /** The need or limit, or null for a line about the whole day. */
  readonly id: string | null;
  /** Value in the first day, or null where that day does not have the line. */
  readonly first: number | null;
  /** Value in the second day, or null where that day does not have the line. */
  readonly second: number | null;
  /** Second less first, or null when either is missing. */
  readonly difference: number | null;
  /** Difference over first [-], or null when either is missing or first is 0. */
  readonly change: number | null;
  /** Whether all is well in the first day: the need met, the limit kept; null for a plain quantity. */
  readonly firstWell: boolean | null;
  /** The same of the second day. */
  readonly secondWell: boolean | null;
}

interface Entry {
  readonly kind: ComparisonKind;
  readonly id: string | null;
  readonly value: number;
  readonly well: boolean | null;
}

/**
 * Two days line by line: water, turnovers, running time, energy, price, each need, each crossing.
 *
 * Law: second less first, for every quantity that either day has.
 * @param first The day compared with [see PricedDay], fields as there.
 * @param second The other day [see PricedDay], fields as there.
 * @returns Lines [see ComparisonLine], units by kind: whole-day quantities first, then needs, limits that either day crosses, quiet hours when either crosses them.
 * @throws nothing; a line that one day lacks has null there.
 * Accuracy: exact up to rounding of doubles.
 * Source: common practice, no source.
 * @example compareDays({ report: emptyReport, cost: 2 }, { report: emptyReport, cost: 1.5 })[4].change // -0.2500
 */
export function compareDays(first: PricedDay, second: PricedDay): readonly ComparisonLine[] {
  const ours = entriesOf(first);
  const theirs = entriesOf(second);
  const extra = theirs.filter((entry) => !ours.some((other) => sameLine(entry, other)));
  const lines = [...ours, ...extra].map((entry) =>
    lineOf(
      entry,
      ours.find((other) => sameLine(entry, other)),
      theirs.find((other) => sameLine(entry, other)),
    ),
  );
  return lines.sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind)).map(keptLimit);
}

const kinds: readonly ComparisonKind[] = [
  'water',
  'turnovers',
  'runMinutes',
  'energy',
  'cost',
  'need',
  'limit',
  'quiet',
];

/** A day in which nothing runs: the zero of every comparison. */
export const emptyReport: DayReport<ServiceNeed, FlowLimit> = {
  segments: [],
  volumeMoved: 0,
  turnovers: 0,
  energy: 0,
  runMinutes: 0,
  needs: [],
  crossings: [],
  quietCrossings: [],
};

function entriesOf({ report, cost }: PricedDay): readonly Entry[] {
  const plain = (kind: ComparisonKind, value: number): Entry => ({
    kind,
    id: null,
    value,
    well: null,
  });
  return [
    plain('water', report.volumeMoved),
    plain('turnovers', report.turnovers),
    plain('runMinutes', report.runMinutes),
    plain('energy', report.energy),
    ...(cost === undefined ? [] : [plain('cost', cost)]),
    ...report.needs.map(
      ({ need, servedMinutes, met }): Entry => ({
        kind: 'need',
        id: need.id,
        value: servedMinutes,
        well: met,
      }),
    ),
    ...crossedMinutes(
      'limit',
      report.crossings.map(({ limit, from, to }) => ({ id: limit.id, start: from, end: to })),
    ),
    ...crossedMinutes(
      'quiet',
      report.quietCrossings.map(({ from, to }) => ({ id: null, start: from, end: to })),
    ),
  ];
}

/** One entry per limit: the minutes in any of its crossings, shared ones once. */
function crossedMinutes(
  kind: ComparisonKind,
  crossings: readonly ({ readonly id: string | null } & Span)[],
): readonly Entry[] {
  const ids = [...new Set(crossings.map(({ id }) => id))];
  return ids.map((id) => {
    const own = unionOf(crossings.filter((crossing) => crossing.id === id));
    return {
      kind,
      id,
      value: own.reduce((sum, { start, end }) => sum + end - start, 0),
      well: false,
    };
  });
}

function sameLine(first: Entry, second: Entry): boolean {
  return first.kind === second.kind && first.id === second.id;
}

function lineOf(
  { kind, id }: Entry,
  first: Entry | undefined,
  second: Entry | undefined,
): ComparisonLine {
  return {
    kind,
    id,
    ...compared(first?.value ?? null, second?.value ?? null),
    firstWell: first?.well ?? null,
    secondWell: second?.well ?? null,
  };
}

function compared(first: number | null, second: number | null) {
  const difference = first === null || second === null ? null : second - first;
  const change = difference === null || !first ? null : difference / first;
  return { first, second, difference, change };
}

/** A day without a crossing of a limit has kept it: 0 minutes crossed, not "no such line". */
function keptLimit(line: ComparisonLine): ComparisonLine {
  if (line.kind !== 'limit' && line.kind !== 'quiet') return line;
  return {
    ...line,
    ...compared(line.first ?? 0, line.second ?? 0),
    firstWell: line.first === null,
    secondWell: line.second === null,
  };
}
