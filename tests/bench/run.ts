/** `npm run bench [-- --json]`: every row, each way in turns, the median of the rounds. */
import { cpus, totalmem } from 'node:os';
import type { Row, RowMaker, Way } from './row.ts';
import { rows as operatingPoints } from './rows/operatingPoints.ts';

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
}

function measure(row: Row): Result {
  for (const way of row.ways) rate(way);
  const found = Array.from({ length: rounds }, () => row.ways.map(rate));
  row.close?.();
  const perSecond = Object.fromEntries(
    row.ways.map((way, index) => [way.name, median(found.map((round) => round[index] as number))]),
  );
  const base = { name: row.name, unit: row.unit, perSecond };
  if (row.ways.length < 2) return base;
  const ratio = median(found.map(([ours, theirs]) => (ours as number) / (theirs as number)));
  return { ...base, ratio, ...(row.reach !== undefined && { reach: row.reach }) };
}

function line(result: Result): string {
  const rates = Object.entries(result.perSecond)
    .map(([name, value]) => `${name} ${Math.round(value).toLocaleString('en')} /s`)
    .join(', ');
  const ratio = result.ratio === undefined ? '' : `  ratio ${result.ratio.toFixed(1)}`;
  const reach = result.reach === undefined ? '' : ` (reach ${result.reach})`;
  return `${result.name}: ${result.unit}: ${rates}${ratio}${reach}`;
}

const machine = {
  processor: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
  memoryGiB: Math.round(totalmem() / 2 ** 30),
  node: process.version,
};
const makers: readonly RowMaker[] = [...operatingPoints];
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
