import type { Pad, Section } from '#pad/document/schema.ts';
import type { Report } from './figures.ts';

/** A short warning for the sheet. */
export interface SheetCaution {
  readonly title: string;
  readonly text: string;
}

/** Warnings as the site words them: those every sheet bears, and those of what a day or its pad does. */
export interface SheetCautions {
  readonly always: readonly SheetCaution[];
  /** A speed passes the stop. */
  readonly stop: SheetCaution;
  /** One suction cover alone. */
  readonly oneCover: SheetCaution;
  /** Hours without flow. */
  readonly noFlow: SheetCaution;
  /** A heater, and a pump that stops or slows down. */
  readonly heater: SheetCaution;
}

function holdsHeater(sections: readonly Section[]): boolean {
  return sections.some((section) =>
    section.kind === 'parallel'
      ? section.branches.some((branch) => holdsHeater(branch.sections))
      : section.kind === 'equipment' && section.equipment === 'heater',
  );
}

function hasHeater({ plumbing, needs }: Pad): boolean {
  return (
    needs.some(({ kind }) => kind === 'heating') ||
    holdsHeater([...plumbing.suction, ...plumbing.discharge])
  );
}

/** What must never be done or forgotten on this day, the gravest first. */
export function hardCautions(
  report: Report,
  pad: Pad,
  cautions: SheetCautions,
): readonly SheetCaution[] {
  const flowStops = report.segments.some(({ kind }) => kind !== 'flowing');
  const slows = new Set(report.segments.map(({ ratio }) => ratio)).size > 1;
  return [
    ...(report.crossings.some(({ limit }) => limit.hard) ? [cautions.stop] : []),
    ...(pad.limits.suctionCovers.length === 1 ? [cautions.oneCover] : []),
    ...(flowStops ? [cautions.noFlow] : []),
    ...((flowStops || slows) && hasHeater(pad) ? [cautions.heater] : []),
  ];
}
