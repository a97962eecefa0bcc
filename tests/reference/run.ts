/**
 * `npm run check:reference [-- FOLDER]`: every case of a folder through the core. Without a folder,
 * the project's own set.
 */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkFolder } from './check.ts';
import { report } from './report.ts';

const folder = resolve(process.argv[2] ?? fileURLToPath(new URL('cases', import.meta.url)));

if (existsSync(folder)) {
  const { lines, passed, failed, skipped } = report(checkFolder(folder));
  if (passed + failed + skipped === 0) console.log(`There is no case in ${folder}.`);
  console.log(lines.join('\n'));
  process.exitCode = failed + skipped > 0 || passed === 0 ? 1 : 0;
} else {
  console.log(`There is no folder ${folder}. Give the path of a folder of case files.`);
  process.exitCode = 1;
}
