import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cases-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Starts the command on a folder of its own that holds just these cases of mixing. */
function command(...cases: readonly object[]) {
  const own = mkdtempSync(join(folder, 'run-'));
  writeFileSync(join(own, 'mixing.json'), JSON.stringify({ cases }));
  const { stdout, status } = spawnSync(process.execPath, ['tests/reference/run.ts', own], {
    cwd: new URL('../..', import.meta.url).pathname,
    encoding: 'utf8',
  });
  return { status, last: stdout.trimEnd().split('\n').at(-1) };
}

const caseOf = (inputs: object, share: number) => ({
  what: 'invented',
  inputs,
  expected: { share },
  tolerance: { relative: 1e-9 },
});
const right = caseOf({ turnovers: 1 }, 1 - Math.exp(-1));
const wrong = caseOf({ turnovers: 1 }, 0.7);
const strange = caseOf({ moon_phase: 1 }, 0.7);

it('ends well only when nothing misses and nothing is skipped', () => {
  expect(command(right)).toEqual({ status: 0, last: '1 passed, 0 failed, 0 skipped' });
  expect(command(right, wrong)).toEqual({ status: 1, last: '1 passed, 1 failed, 0 skipped' });
  expect(command(right, strange)).toEqual({ status: 1, last: '1 passed, 0 failed, 1 skipped' });
  expect(command().status).toBe(1);
});
