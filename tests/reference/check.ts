/** Runs the cases of a folder through the core. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { checkText, type Result } from '#reference/checks/check.ts';

/** Every `.json` file under the folder, by name. */
export function checkFolder(folder: string): readonly Result[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.json'))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .flatMap((path) => checkText(relative(folder, path), readFileSync(path, 'utf8')));
}
