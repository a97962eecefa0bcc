import { describe, expect, it } from 'vitest';
import { createDayModel } from '#dayPage/day/model.ts';
import { comingText } from '#dayPage/fileInput/comingText.ts';
import { type FileNews, readSeries } from '#dayPage/fileInput/readSeries.ts';
import type { StartReading } from '#dayPage/fileInput/startReading.ts';
import { createMeterCheck, type MeterModel } from '#dayPage/parts/meter/model.ts';
import { drawnOf } from '#dayPage/parts/meter/picture.ts';
import {
  besideText,
  dayTable,
  fileText,
  findingText,
  hourTable,
} from '#dayPage/parts/meter/text.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { minutesTo1970 } from '#pad/formats/series.ts';
import { storeOf } from './daySheetFixtures.ts';

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const utc = (minute: number) => minute + minutesTo1970;

/** Reads without a worker; a reading that was called off tells nothing more. */
function readHere() {
  let last: Promise<void> = Promise.resolve();
  const start: StartReading = (asked, tell) => {
    let isOff = false;
    const run = async () => {
      for await (const news of readSeries(asked, utc)) if (!isOff) tell(news);
    };
    last = run();
    return () => {
      isOff = true;
    };
  };
  return { start, settled: () => last };
}

function meter(pad: Pad = ownerPad) {
  const here = readHere();
  const day = createDayModel(storeOf(pad));
  const model = createMeterCheck(day, day.pad, here.start);
  const take = async (text: string, name = 'mine.csv') => {
    model.file.take({ name, file: new Blob([text]), isInvented: false });
    await here.settled();
  };
  return { model, take, settled: here.settled };
}

/** Half hours of a day with the power of the owner's day times a share, on a base [W]. */
function table(model: MeterModel, share: number, base: number, days = 4): string {
  const segments = model.day.here.peek()?.report.segments ?? [];
  const rows = ['start,kWh'];
  for (let index = 0; index < days * 48; index += 1) {
    const from = (index % 48) * 30;
    let watts = 0;
    for (const { start, end, power } of segments) {
      watts += (power * Math.max(0, Math.min(end, from + 30) - Math.max(start, from))) / 30;
    }
    const stamp = new Date(Date.UTC(2027, 5, 1) + index * 1.8e6).toISOString().slice(0, 16);
    rows.push(`${stamp},${(base + share * watts) / 2000}`);
  }
  return rows.join('\n');
}

const words = (model: MeterModel) => plain(findingText(model));

describe('a meter held against the day', () => {
  it('on the pump alone says by how much the two differ', async () => {
    const { model, take } = meter();
    model.measures.value = 'pump';
    await take(table(model, 1.2, 0));
    expect(model.held.value?.pump.ratio).toBeCloseTo(1.2, 9);
    expect(words(model)).toMatch(
      /^The meter shows 20 % more than the model: [\d.]+ kWh counted over 4 days, [\d.]+ kWh by the model\.$/,
    );
    expect(plain(besideText(model))).toBe(
      'The pump may run longer or faster than laid out, or draw more than the pad says, or something else hangs on this meter. From day to day it hardly varies (4 whole days).',
    );
    await take(table(model, 0.97, 0));
    expect(words(model)).toContain('The model holds within 5 %:');
    await take(table(model, 0.7, 0));
    expect(words(model)).toContain('The meter shows 30 % less than the model');
  });

  it('on the whole house says how much of each watt shows, and what the house draws', async () => {
    const { model, take } = meter();
    await take(table(model, 1, 412));
    expect(words(model)).toBe(
      'The meter does not speak against the model: when the pump changes its speed, the meter moves 1.00 W for each watt of the model (likely from 1.00 to 1.00 W).',
    );
    expect(plain(besideText(model))).toBe(
      'The rest of the house draws 410 W on the mean. This holds only if nothing else in the house keeps the same minutes as the pump.',
    );
    await take(table(model, 0.6, 412));
    expect(words(model)).toContain('The pump draws less than the model says');
  });

  it('says so when nothing can be told', async () => {
    const { model, take } = meter();
    await take(table(model, 1, 412, 2));
    expect(words(model)).toBe(
      'Nothing can be told yet: the file covers 2 whole days, and at least 3 are needed.',
    );
    const daily = Array.from({ length: 6 }, (_, day) => `2027-06-0${day + 1} 00:00,20`).join('\n');
    await take(`start,kWh\n${daily}`);
    expect(words(model)).toMatch(
      /^Nothing can be told: the intervals of this file are longer than an hour/,
    );
  });

  it('a broken second file changes nothing of the first', async () => {
    const { model, take } = meter();
    await take(table(model, 1, 412));
    const before = model.held.value;
    await take('', 'empty.csv');
    expect(model.held.value).toBe(before);
    expect(comingText(model.file.coming.value, 'meter', true)).toBe(
      '“empty.csv”: This file is empty. What was loaded before stays.',
    );
    await take('PK\u0003\u0004...', 'book.xlsx');
    expect(comingText(model.file.coming.value, 'meter', true)).toContain(
      'This is a packed file, such as a workbook or a zip archive.',
    );
    await take('a\0b\0', 'picture.csv');
    expect(comingText(model.file.coming.value, 'meter', true)).toContain(
      'This is not a text file.',
    );
    expect(model.held.value).toBe(before);
  });

  it('asks when the table leaves something open, and can be read another way afterwards', async () => {
    const { model, take, settled } = meter();
    await take(table(model, 1, 412).replace('start,kWh', 'start,amount'));
    expect(model.file.coming.value.kind).toBe('asks');
    model.file.choose({ unit: 'kW' });
    expect(model.file.table.value?.choice.unit).toBe('kW');
    model.file.readAsked();
    await settled();
    const asPower = model.held.value?.stretch.metered ?? 0;
    model.file.choose({ unit: 'kWh' });
    await settled();
    // Half an hour at 1 kW is 0.5 kWh.
    expect(model.held.value?.stretch.metered).toBeCloseTo(2 * asPower, 0);
  });

  it('a reading that is called off leaves what was there', async () => {
    const { model, take, settled } = meter();
    await take(table(model, 1, 412));
    const before = model.file.loaded.value;
    model.file.take({ name: 'other.csv', file: new Blob([table(model, 1, 0)]), isInvented: false });
    model.file.cancel();
    await settled();
    expect(model.file.loaded.value).toBe(before);
    expect(comingText(model.file.coming.value, 'meter', true)).toBe(
      '“other.csv” was not read to its end. What was loaded before stays.',
    );
  });

  it('the invented file says that it is, and gives back what it was made with', async () => {
    const { model, settled } = meter();
    for (const of of ['pump', 'house'] as const) {
      model.measures.value = of;
      model.trySample();
      await settled();
      expect(fileText(model)).toEqual([
        expect.stringMatching(
          /^Invented file: 2688 intervals of 15.min, 1 June 2027 to 28 June 2027\.$/,
        ),
      ]);
    }
    expect(model.held.value?.house.kind).toBe('told');
    // Made with 6 % more than the model; the house has its own hours, so only near it.
    expect(Math.abs((model.held.value?.house.share ?? 0) - 1.06)).toBeLessThan(0.25);
    model.measures.value = 'pump';
    model.trySample();
    await settled();
    expect(model.held.value?.pump.ratio).toBeCloseTo(1.06, 2);
  });

  it('draws and tabulates without a hole', async () => {
    const { model, take } = meter();
    await take(table(model, 1, 412));
    const drawn = drawnOf(model);
    expect(`${drawn?.metered}${drawn?.modelled}`).not.toMatch(/NaN|undefined/);
    expect(drawn?.rest).toMatch(/^M/);
    expect(drawn?.restLabel).toBeDefined();
    // Half of the last mark stands beyond the picture, which on a phone leaves room for two figures.
    expect(drawn?.x.axis.ticks.map(({ label }) => label)).toEqual(['00', '06', '12', '18', '24']);
    expect(hourTable(model).rows).toHaveLength(24);
    expect(dayTable(model).rows.map(([day]) => day)).toEqual([
      '1 June 2027',
      '2 June 2027',
      '3 June 2027',
      '4 June 2027',
    ]);
    expect(JSON.stringify([hourTable(model), dayTable(model)])).not.toMatch(/NaN|undefined/);
    await take(table(model, 1, 412, 80));
    expect(dayTable(model).rows.map(([month]) => month)).toEqual([
      'June 2027',
      'July 2027',
      'August 2027',
    ]);
  });

  it('with plans by season each date is held against its own day, unless the reader wants the sheet', async () => {
    const quiet = [{ id: 'a', start: 600, end: 720, speed: 1500, reason: '' }];
    const plans = [
      {
        id: 'one',
        name: '',
        from: { month: 1, day: 1 },
        blocks: ownerPad.day.blocks,
        withoutNeeds: [],
        turnovers: null,
      },
      {
        id: 'two',
        name: '',
        from: { month: 6, day: 3 },
        blocks: quiet,
        withoutNeeds: [],
        turnovers: null,
      },
    ];
    const { model, take } = meter({ ...ownerPad, year: { ...ownerPad.year, plans } });
    await take(table(model, 1, 0));
    const energies = () => model.held.value?.stretch.byDay.map(({ modelled }) => modelled) ?? [];
    const [first = 0, second = 0, third = 0, fourth = 0] = energies();
    expect(model.against.value).toBe('year');
    expect(first).toBeCloseTo(model.day.here.value?.report.energy ?? Number.NaN, 3);
    expect(second).toBeCloseTo(first, 6);
    expect(third).toBeLessThan(first / 2);
    expect(fourth).toBeCloseTo(third, 6);
    model.holdAgainst('day');
    expect(energies()[3]).toBeCloseTo(first, 3);
    expect(meter().model.hasPlans.value).toBe(false);
  });

  it('a pad that says too little has nothing to hold a meter against', () => {
    const { model } = meter(emptyPad());
    expect(model.hasDay.value).toBe(false);
    model.trySample();
    expect(model.file.coming.value.kind).toBe('idle');
  });
});

describe('reading piece by piece', () => {
  it('refuses what is too large before it reads any of it', async () => {
    const file = {
      size: 60 * 1024 * 1024,
      slice: () => expect.fail('it was read'),
    } as unknown as Blob;
    const news: FileNews[] = [];
    for await (const each of readSeries({ file, want: 'meter', choice: null }, utc))
      news.push(each);
    expect(news).toEqual([
      { kind: 'refused', problem: { code: 'tooLarge', bytes: 60 * 1024 * 1024 }, look: null },
    ]);
  });

  it('takes a table in UTF-16 too', async () => {
    const text = '\ufeffstart,kWh\r\n2027-06-01 00:00,1\r\n2027-06-01 01:00,2\r\n';
    const bytes = new Uint8Array(
      [...text].flatMap((sign) => [sign.charCodeAt(0) % 256, sign.charCodeAt(0) >> 8]),
    );
    const news: FileNews[] = [];
    for await (const each of readSeries(
      { file: new Blob([bytes]), want: 'meter', choice: null },
      utc,
    ))
      news.push(each);
    expect(news.at(-1)).toMatchObject({ kind: 'done', result: { count: 2 } });
  });
});
