import { daySubjects } from './day.ts';
import type { Subject } from './law.ts';
import { machineSubjects } from './machine.ts';
import { pipeSubjects } from './pipes.ts';

/** Every law of the formula sheet, by subject, from the water to the label. */
export const subjects: readonly Subject[] = [...pipeSubjects, ...machineSubjects, ...daySubjects];
