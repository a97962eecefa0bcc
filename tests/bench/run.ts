/** `npm run bench [-- --json]`: every row, each way in turns, the median of the rounds. */
import { cpus, totalmem } from 'node:os';
import type { Row, RowMaker, Way } from './row.ts';
import { rows as cheapestDay } from './rows/cheapestDay.ts';
import { rows as operatingPoints } from './rows/operatingPoints.ts';
import { rows as sliderStep } from './rows/sliderStep.ts';
import { rows as year } from './rows/year.ts';

const rounds = 7;
const roundMillis = 250;

/** Units of work a second over one round. */
function rate(way: Way): number {
  let units = 0;
  let sink = 0;
  const start = performance.now();
  let now = start;
  while (now - start < roundMillis) {
    sink += way.run();
    units += way.units;
    now = performance.now();
  }
  if (!Number.isFinite(sink)) throw new Error(`${way.name} gave no number`);
  return (1000 * units) / (now - start);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

interface Result {
  readonly name: string;
  readonly unit: string;
  readonly perSecond: Readonly<Record<string, number>>;
  /** Ours over the second way, median of the rounds' own ratios. */
  readonly ratio?: number;
  readonly reach?: number;
  /** Time of our way for the units of the goal [ms], and what it may be. */
  readonly time?: { readonly units: number; readonly millis: number; readonly within: number };
}

function timeOf({ within }: Row, perSecond: number): Pick<Result, 'time'> {
  if (within === undefined) return {};
  const millis = (1000 * within.units) / perSecond;
  return { time: { units: within.units, millis, within: within.millis } };
}

function measure(row: Row): Result {
  for (const way of row.ways) rate(way);
  const found = Array.from({ length: rounds }, () => row.ways.map(rate));
  row.close?.();
  const perSecond = Object.fromEntries(
    row.ways.map((way, index) => [way.name, median(found.map((round) => round[index] as number))]),
  );
  const ours = perSecond[row.ways[0]?.name ?? ''] ?? Number.NaN;
  const base = { name: row.name, unit: row.unit, perSecond, ...timeOf(row, ours) };
  if (row.ways.length < 2) return base;
  const ratio = median(found.map(([first, second]) => (first as number) / (second as number)));
  return { ...base, ratio, ...(row.reach !== undefined && { reach: row.reach }) };
}

function timeLine({ time, unit }: Result): string {
  if (time === undefined) return '';
  return `  ${time.units} ${unit} in ${time.millis.toPrecision(3)} ms (reach ${time.within} ms)`;
}

/** Whole numbers, but for what is slower than ten a second. */
function shown(value: number): string {
  return value < 10 ? value.toPrecision(2) : Math.round(value).toLocaleString('en');
}

function line(result: Result): string {
  const rates = Object.entries(result.perSecond)
    .map(([name, value]) => `${name} ${shown(value)} /s`)
    .join(', ');
  const ratio = result.ratio === undefined ? '' : `  ratio ${result.ratio.toFixed(1)}`;
  const reach = result.reach === undefined ? '' : ` (reach ${result.reach})`;
  return `${result.name}: ${result.unit}: ${rates}${ratio}${reach}${timeLine(result)}`;
}

const machine = {
  processor: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
  memoryGiB: Math.round(totalmem() / 2 ** 30),
  node: process.version,
};
const makers: readonly RowMaker[] = [...operatingPoints, ...sliderStep, ...year, ...cheapestDay];
const asJson = process.argv.includes('--json');
if (!asJson) {
  console.log(
    `${machine.processor}, ${machine.cores} cores, ${machine.memoryGiB} GiB, node ${machine.node}`,
  );
}
const results: Result[] = [];
for (const make of makers) {
  const result = measure(await make());
  results.push(result);
  if (!asJson) console.log(line(result));
}
if (asJson) console.log(JSON.stringify({ machine, results }, null, 2));
