/**
 * `npm run check:reference [-- FOLDER]`: every case of a folder through the core. Without a folder,
 * the project's own copy of the reference set.
 */
import { existsSync, realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { awaiting } from './awaiting.ts';
import { checkFolder } from './check.ts';
import { report } from './report.ts';

const ownSet = realpathSync(fileURLToPath(new URL('cases', import.meta.url)));
const folder = resolve(process.argv[2] ?? ownSet);

if (existsSync(folder)) {
  const results = checkFolder(folder);
  const isOwn = realpathSync(folder) === ownSet;
  const { lines, failed, skipped } = report(results, isOwn ? awaiting : []);
  if (results.length === 0) console.log(`There is no case in ${folder}.`);
  console.log(lines.join('\n'));
  process.exitCode = failed + skipped > 0 || results.length === 0 ? 1 : 0;
} else {
  console.log(`There is no folder ${folder}. Give the path of a folder of case files.`);
  process.exitCode = 1;
}
