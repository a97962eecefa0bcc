import * as fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { createDayModel } from '#dayPage/day/model.ts';
import { Finder } from '#dayPage/parts/cheapest/Finder.tsx';
import { MeterCheck } from '#dayPage/parts/meter/MeterCheck.tsx';
import { HowSure } from '#dayPage/parts/sure/HowSure.tsx';
import { TakeOut } from '#dayPage/parts/takeOut/TakeOut.tsx';
import { WhatIf } from '#dayPage/parts/whatIf/WhatIf.tsx';
import { YearSheet } from '#dayPage/parts/year/YearSheet.tsx';
import DaySheet from '#dayPage/view.tsx';
import { ownerPad } from '#pad/demos/demos.ts';
import type { Pad } from '#pad/document/schema.ts';
import { alteredDemos, pads } from '../pad/document/arbitraryPads.ts';
import { storeOf } from './daySheetFixtures.ts';

// Checks of our own behaviour have no outside source.

const parts = { Finder, HowSure, MeterCheck, TakeOut, WhatIf, YearSheet };
const caution = { title: 'Caution', text: 'It does.' };
const cautions = {
  always: [caution],
  stop: caution,
  oneCover: caution,
  noFlow: caution,
  heater: caution,
};
const noNumber = /NaN|undefined|Infinity|\[object/;

/** Every part of the day sheet as it opens with a pad. */
function sheet(pad: Pad): string {
  const day = createDayModel(storeOf(pad));
  const whole = renderToString(
    <DaySheet id="day" cautions={cautions} store={storeOf(pad)} padHref="/pad/" />,
  );
  const apart = Object.values(parts).map((Part) => renderToString(<Part id="part" day={day} />));
  return [whole, ...apart].join('\n');
}

describe('the day sheet of any pad at all', () => {
  test('opens, and shows no number that is none', () => {
    fc.assert(
      fc.property(fc.oneof(alteredDemos, pads), (pad) => {
        expect(sheet(pad)).not.toMatch(noNumber);
      }),
      { numRuns: 200, seed: 77 },
    );
  });

  test('opens on a date that its month does not have', () => {
    const day = { ...ownerPad.day, date: { year: 2027, month: 6, day: 31 } };
    const shown = sheet({ ...ownerPad, day });
    expect(shown).toContain('value="2027-06-30"');
    expect(shown).toContain('June 2027 has 30 days, so the day is priced on its last');
    expect(shown).not.toMatch(noNumber);
  });

  test('opens with a step of nearly nothing', () => {
    expect(sheet({ ...ownerPad, pump: { ...ownerPad.pump, speedStep: 1e-12 } })).not.toMatch(
      noNumber,
    );
  });

  test('opens with a block at 0 rpm and no pump', () => {
    const pump = { ...ownerPad.pump, referenceSpeed: null, topSpeed: null };
    const blocks = ownerPad.day.blocks.map((block) => ({ ...block, speed: 0 }));
    const pad: Pad = { ...ownerPad, pump, day: { ...ownerPad.day, blocks } };
    expect(sheet(pad)).not.toMatch(noNumber);
  });
});
