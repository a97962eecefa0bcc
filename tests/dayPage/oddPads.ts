/** Pads that ask for the impossible, or say odd things: for the first sentence of every part of the day. */
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { newBlock, newCover, newNeed } from '#pad/document/parts.ts';
import { needKinds } from '#pad/document/planSchema.ts';
import type { Pad, PadTariff } from '#pad/document/schema.ts';

const hour = (hours: number) => 60 * hours;
const cubicMetresPerHour = (flow: number) => flow / 3600;

/** One price at every hour of the year. */
export const flatAt = (price: number, currency: string): PadTariff => ({
  name: '',
  currency,
  dailyCharge: null,
  seasons: [
    {
      id: 'year',
      name: '',
      from: { month: 1, day: 1 },
      to: null,
      dayTypes: [
        {
          id: 'day',
          name: '',
          weekdays: [0, 1, 2, 3, 4, 5, 6],
          bands: [{ start: 0, end: 0, name: '', price }],
        },
      ],
    },
  ],
  holidays: [],
});

/** Ten hours of heating within eight. */
export const collidingPad: Pad = {
  ...lodgePad,
  name: 'Colliding needs',
  needs: [
    newNeed('heat', 'heating', {
      name: 'Heat pump',
      leastFlow: cubicMetresPerHour(6),
      minutes: 600,
      windows: [{ start: hour(10), end: hour(18) }],
    }),
  ],
};

/** As many needs as a pad can hold; three in four share their name with others. */
export const crowdedPad: Pad = {
  ...lodgePad,
  name: 'Twenty-four needs',
  needs: Array.from({ length: 24 }, (_, at) =>
    newNeed(`need-${at}`, needKinds[at % needKinds.length] ?? 'filtering', {
      name: at % 4 === 0 ? `Need ${at}` : '',
      leastFlow: cubicMetresPerHour(3 + (at % 6)),
      minutes: 30 + 15 * at,
    }),
  ),
};

/** Covers that bear less than the slowest speed moves. */
export const stoppedPad: Pad = {
  ...ownerPad,
  name: 'Covers marked too low',
  limits: {
    ...ownerPad.limits,
    suctionCovers: [newCover('old', { name: 'Old cover', markedFlow: cubicMetresPerHour(2) })],
  },
};

/** Energy for nothing. */
export const freePad: Pad = { ...ownerPad, name: 'For nothing', tariff: flatAt(0, '€') };

/** A currency whose notes have no small unit, by its sign alone. */
export const yenPad: Pad = { ...lodgePad, name: 'Yen', tariff: flatAt(31, '¥') };

/** Nothing on the sheet, and no frost that would start the pump. */
export const restingPad: Pad = {
  ...lodgePad,
  name: 'No blocks',
  day: { ...lodgePad.day, blocks: [], oldBlocks: [] },
  year: { ...lodgePad.year, plans: [], frostSpeed: null },
};

/** Watts that fall as the speed rises. */
export const contradictedPad: Pad = {
  ...ownerPad,
  name: 'Readings that contradict',
  readings: ownerPad.readings.map((reading, at) => ({ ...reading, power: 500 + 500 * at })),
};

/** A name without a space, as long as a name may be. */
export const longNamedPad: Pad = { ...ownerPad, name: 'N'.repeat(100) };

/** A pump that turns as fast as it can, as slowly as water may move. */
export const shortDay = [newBlock('slow', hour(10), hour(15), 1000)];
