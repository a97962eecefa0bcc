/**
 * The cheapest day as programmes for HiGHS (npm highs, MIT), written from the statement of the
 * problem and not from the core: minute by minute, or slot by slot with binary speeds.
 */
import loadHighs from 'highs';
import type { ServiceNeed } from '#core/day/dayReport.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';

export type Highs = Awaited<ReturnType<typeof loadHighs>>;

export const openHighs = (): Promise<Highs> => loadHighs();

interface Span {
  readonly start: number;
  readonly end: number;
}

const day = 1440;
/** The share of a bound that flows and speeds may miss it by, as the day's report counts. */
const slack = 1 + 1e-6;

/** Whether a minute lies in a span of the ring; equal ends mean all of it. */
function holds({ start, end }: Span, minute: number): boolean {
  const stop = end % day;
  if (start === stop) return true;
  return start < stop ? minute >= start && minute < stop : minute >= start || minute < stop;
}

interface Option {
  readonly ratio: number;
  readonly flow: number;
  readonly power: number;
}

function optionsAt(inputs: CheapestDayInputs, minute: number): readonly Option[] {
  const ceilings = inputs.quiet.filter((each) => holds(each, minute)).map((each) => each.ceiling);
  const within = inputs.speeds.filter(
    ({ flow, ratio }) =>
      inputs.limits.every((limit) => flow <= limit.greatestFlow * slack) &&
      ceilings.every((ceiling) => ratio <= ceiling * slack),
  );
  return inputs.mayStop ? [{ ratio: 0, flow: 0, power: 0 }, ...within] : within;
}

function serves(need: ServiceNeed, option: Option, minute: number): boolean {
  if (option.flow <= 0 || option.flow * slack < need.leastFlow) return false;
  if (need.greatestFlow !== undefined && option.flow > need.greatestFlow * slack) return false;
  return need.windows.length === 0 || need.windows.some((window) => holds(window, minute));
}

function priceAt(inputs: CheapestDayInputs, minute: number): number {
  const found = inputs.prices.find((each) => holds(each, minute));
  if (found === undefined) throw new Error(`no price at minute ${minute}`);
  return found.price;
}

/** What a programme ends with: null where there is no day, no end to the cost where time ran out. */
export type OracleDay = { readonly cost: number } | null;

/** Time for one programme [s]. */
const patience = 20;

const term = (value: number, name: string): string =>
  `${value < 0 ? '-' : '+'} ${Math.abs(value)} ${name}`;

function solveText(highs: Highs, text: string, options: object): OracleDay {
  const found = highs.solve(text, options) as {
    Status: string;
    ObjectiveValue: number;
  };
  if (found.Status === 'Infeasible') return null;
  if (found.Status === 'Time limit reached') return { cost: Number.POSITIVE_INFINITY };
  if (found.Status !== 'Optimal') throw new Error(`HiGHS says ${found.Status}`);
  return { cost: found.ObjectiveValue };
}

/**
 * Minutes that lie in the same spans, counted together; the count of each at each
 * option is whole, or any number when `whole` is false.
 */
export function oracleMinutes(
  highs: Highs,
  inputs: CheapestDayInputs,
  whole: boolean,
  step = 1,
): OracleDay {
  const needs = inputs.needs.filter(({ minutes }) => minutes > 0);
  const spans = [...inputs.prices, ...inputs.quiet, ...needs.flatMap(({ windows }) => windows)];
  const groups = new Map<string, { minute: number; count: number }>();
  for (let minute = 0; minute < day; minute += step) {
    const key = spans.map((span) => Number(holds(span, minute))).join('');
    const group = groups.get(key);
    if (group) group.count += 1;
    else groups.set(key, { minute, count: 1 });
  }
  const objective: string[] = [];
  const volume: string[] = [];
  const service: string[][] = needs.map(() => []);
  const rows: string[] = [];
  const names: string[] = [];
  [...groups.values()].forEach(({ minute, count }, group) => {
    const options = optionsAt(inputs, minute);
    if (options.length === 0) rows.push(`e${group}: 0 nothing >= 1`);
    options.forEach((option, place) => {
      const name = `x${group}_${place}`;
      names.push(name);
      objective.push(
        term(1000 * priceAt(inputs, minute) * (option.power / 1000) * (step / 60), name),
      );
      if (option.flow > 0) volume.push(term(option.flow * 60 * step, name));
      needs.forEach((need, index) => {
        if (serves(need, option, minute)) service[index]?.push(`+ ${name}`);
      });
    });
    if (options.length > 0)
      rows.push(
        `g${group}: ${options.map((_, place) => `+ x${group}_${place}`).join(' ')} = ${count}`,
      );
  });
  if (inputs.leastVolume > 0)
    rows.push(`vol: ${volume.join(' ') || '0 nothing'} >= ${inputs.leastVolume}`);
  needs.forEach(({ minutes }, index) => {
    rows.push(
      `n${index}: ${service[index]?.join(' ') || '0 nothing'} >= ${Math.ceil(minutes / step - 1e-9)}`,
    );
  });
  const text = [
    'Minimize',
    `obj: ${objective.join('\n ')}`,
    'Subject To',
    ...rows,
    'Bounds',
    'nothing = 0',
    ...(whole ? ['General', names.join('\n ')] : []),
    'End',
  ].join('\n');
  const found = solveText(highs, text, { mip_rel_gap: 0, mip_abs_gap: 0, time_limit: patience });
  return found && { cost: found.cost / 1000 };
}

/** Slot by slot: one binary for each slot and option, changes counted around the ring, runs kept whole. */
export function oracleSlots(highs: Highs, inputs: CheapestDayInputs, step: number): OracleDay {
  const slots = day / step;
  const needs = inputs.needs.filter(({ minutes }) => minutes > 0);
  const all = optionsAt({ ...inputs, quiet: [] }, 0);
  const rows: string[] = [];
  const objective: string[] = [];
  const binaries: string[] = [];
  const volume: string[] = [];
  const at = (slot: number) => (slot + slots) % slots;
  for (let slot = 0; slot < slots; slot += 1) {
    const minute = slot * step;
    const allowed = new Set(optionsAt(inputs, minute).map(({ ratio }) => ratio));
    const names = all.map((_, place) => `y${slot}_${place}`);
    rows.push(`o${slot}: ${names.map((name) => `+ ${name}`).join(' ')} = 1`);
    binaries.push(...names);
    all.forEach((option, place) => {
      const name = `y${slot}_${place}`;
      objective.push(
        term(1000 * priceAt(inputs, minute) * (option.power / 1000) * (step / 60), name),
      );
      if (option.flow > 0) volume.push(term(option.flow * 60 * step, name));
      if (!allowed.has(option.ratio)) rows.push(`q${slot}_${place}: ${name} = 0`);
      if (inputs.mostChanges !== undefined)
        rows.push(`c${slot}_${place}: ${name} - y${at(slot - 1)}_${place} - z${slot} <= 0`);
    });
    if (inputs.mostChanges !== undefined) binaries.push(`z${slot}`);
  }
  if (inputs.mostChanges !== undefined) {
    const changes = Array.from({ length: slots }, (_, slot) => `+ z${slot}`).join(' ');
    rows.push(`most: ${changes} <= ${inputs.mostChanges}`);
  }
  if (inputs.leastVolume > 0)
    rows.push(`vol: ${volume.join(' ') || '0 z0'} >= ${inputs.leastVolume}`);
  needs.forEach((need, index) => {
    const run = Math.ceil(need.shortestRun / step - 1e-9);
    for (let slot = 0; slot < slots; slot += 1) {
      const good = all.flatMap((option, place) =>
        serves(need, option, slot * step) ? [`- y${slot}_${place}`] : [],
      );
      const counted = `k${index}_${slot}`;
      binaries.push(counted);
      rows.push(`s${index}_${slot}: ${counted} ${good.join(' ')} <= 0`);
      // A run that begins here goes on for at least its shortest length, unless all the day counts.
      for (let later = 1; later < Math.min(run, slots); later += 1)
        rows.push(
          `r${index}_${slot}_${later}: ${counted} - k${index}_${at(slot - 1)} - k${index}_${at(slot + later)} <= 0`,
        );
    }
    const sum = Array.from({ length: slots }, (_, slot) => `+ k${index}_${slot}`).join(' ');
    rows.push(`n${index}: ${sum} >= ${Math.ceil(need.minutes / step - 1e-9)}`);
  });
  const text = [
    'Minimize',
    `obj: ${objective.join('\n ')}`,
    'Subject To',
    ...rows,
    'Binary',
    binaries.join('\n '),
    'End',
  ].join('\n');
  const found = solveText(highs, text, { mip_rel_gap: 0, mip_abs_gap: 0, time_limit: patience });
  return found && { cost: found.cost / 1000 };
}
