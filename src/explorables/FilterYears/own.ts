import type { EquipmentSection, Pad, Section } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import type { FilterSetup } from './ask.ts';
import { ofArea } from './basis.ts';
import type { FilterYearsModel, OwnFilters } from './model.ts';
import { createSolver } from './solve.ts';

/** Days between cleanings where the pad does not say; common practice, no source. */
const usualDays = 56;

function filtersIn(sections: readonly Section[]): readonly EquipmentSection[] {
  return sections.flatMap((section) => {
    if (section.kind === 'parallel') {
      return section.branches.flatMap(({ sections: inner }) => filtersIn(inner));
    }
    return section.kind === 'equipment' && section.equipment === 'filter' ? [section] : [];
  });
}

/** Heads to three figures in the reader's unit, as they would be typed. */
function shown(filter: FilterSetup, units: UnitChoice): FilterSetup {
  const unit = unitFor(units, 'head');
  const round = (head: number) =>
    toSI('head', Number(fromSI('head', head, unit).toPrecision(3)), unit);
  return { ...filter, cleanHead: round(filter.cleanHead), dirtyHead: round(filter.dirtyHead) };
}

/** The reader's first filter beside one of twice its area, or nothing while the pad does not say both ends. */
export function ownFilters(pad: Pad): OwnFilters | undefined {
  const { running, speeds, tariff } = padModel(pad);
  const [filter] = filtersIn([...pad.plumbing.suction, ...pad.plumbing.discharge]);
  if (running === null || speeds === null || tariff === null || filter === undefined)
    return undefined;
  const { head, dirtyHead, flow, exponent } = filter;
  const isTold = head !== null && dirtyHead !== null && flow !== null && head >= 0.1;
  if (!isTold || dirtyHead <= head || !(flow > 0)) return undefined;
  const due = Math.min(180, Math.max(2, Math.round(pad.year.cleaningDays ?? usualDays)));
  const mine: FilterSetup = { cleanHead: head, dirtyHead, due, interval: due };
  return {
    basis: {
      leastSpeed: speeds.least,
      topSpeed: speeds.top,
      speed: Math.round((speeds.top * 0.55) / 50) * 50,
      filters: [mine, shown(ofArea(mine, 2, exponent ?? 2), pad.units)],
      referenceFlow: flow,
      currency: tariff.currency,
    },
    solve: createSolver({
      curve: running.curve,
      power: running.power,
      circuit: running.circuit,
      filterId: filter.id,
      reference: speeds.reference,
      top: speeds.top,
      tariff,
    }),
  };
}

/** Puts the reader's own filter and units beside the example. */
export function takePad(model: FilterYearsModel, pad: Pad): void {
  model.own.value = ownFilters(pad);
  model.units.value = pad.units;
}
