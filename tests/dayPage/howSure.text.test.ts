import { describe, expect, test } from 'vitest';
import {
  bandTable,
  findingText,
  needText,
  partsText,
  pictureText,
  pictureTitle,
  plusMinus,
  shareText,
  yearText,
} from '#dayPage/parts/sure/text.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { padModel } from '#pad/model/assemble.ts';
import { looked, plain, sureness } from './howSureFixtures.ts';
import { freePad } from './oddPads.ts';

// Our own behaviour, in words.

describe('the words', () => {
  test('of a share are the nearest plain fraction', () => {
    expect(
      [0, 0.001, 0.021, 0.125, 0.25, 0.3, 0.5, 0.66, 0.9, 0.96, 0.999, 1].map(shareText),
    ).toEqual([
      'none of 1000',
      '1 of 1000',
      '1 of 48',
      '1 of 8',
      '1 of 4',
      '3 of 10',
      '1 of 2',
      '2 of 3',
      '9 of 10',
      'all but 1 of 25',
      'all but 1 of 1000',
      'all',
    ]);
  });

  test('of a need say how it stands and how it might', () => {
    const [of] = padModel(ownerPad).needs;
    if (of === undefined) throw new Error('no need');
    expect([0, 0.05, 0.7, 1].map((share) => needText({ of, share }))).toEqual([
      'Skim the surface: served in every one of the 1000 pads.',
      'Skim the surface: served, but in 1 of 20 such pads it would stay short.',
      'Skim the surface: short, but in 3 of 10 such pads it would be served.',
      'Skim the surface: short in every one of the 1000 pads.',
    ]);
  });

  test('of the finding name band, likely value and reading, with as many figures as tell', () => {
    const { model } = sureness(ownerPad);
    const shown = model.focus.value;
    const inHours = (joules: number) => (joules / 3.6e6).toFixed(2);
    if (shown === null) throw new Error('nothing shown');
    expect(plain(findingText(model))).toBe(
      `Your day takes between ${inHours(shown.band.low)} and ${inHours(shown.band.high)} kWh, most likely ${inHours(shown.best)}. The watts, read at 850 rpm, would halve that.`,
    );
    expect(plusMinus({ low: 90, high: 110 })).toBe('±\u00a010\u00a0%');
    expect(plusMinus({ low: 98.5, high: 101.5 })).toBe('±\u00a01.5\u00a0%');
    expect(plusMinus({ low: 0, high: 0 })).toBe('±\u00a00\u00a0%');
  });

  test('say where trials and straight lines part, and then tell the trials', async () => {
    expect(partsText(sureness(lodgePad).model)).toBe('');
    // One reading leaves so much open that the answers bend within it.
    const model = await looked({ ...lodgePad, readings: lodgePad.readings.slice(0, 1) });
    const shown = model.focus.value;
    expect(shown?.parts).toBe(true);
    expect(partsText(model)).toMatch(/^For energy and money the two part: .* trial pads\.$/);
    expect(yearText(model)).toContain(' by straight lines alone, most likely ');
    const low = ((shown?.trial?.low ?? 0) / 3.6e6).toFixed(2);
    expect(findingText(model)).toContain(`between ${low} and `);
    expect(plain(pictureTitle(model, shown as NonNullable<typeof shown>))).toMatch(
      /^Energy of the day: most likely \d\.\d+ kWh, 95 % from .* Trial pads: .* kWh\.$/,
    );
  });

  test('say that without readings all of it is typical, and with none of a pad that there is no day', () => {
    const { model } = sureness({ ...ownerPad, readings: [] });
    expect(findingText(model)).toContain(
      'You have given no readings yet: all of this rests on typical values.',
    );
    expect(pictureText(model)).toContain('200 trial pads that fit your description.');
    expect(findingText(sureness(ownerPad).model)).not.toContain('no readings');
    expect(pictureText(sureness(ownerPad).model)).toContain('that would give your readings.');
    const { model: bare } = sureness(emptyPad());
    expect(bare.focus.value).toBeNull();
    expect(findingText(bare)).toContain('does not say enough yet');
    expect(bandTable(bare).rows).toEqual([]);
  });

  test('of a day without doubt ask for no reading, and give the year one price', async () => {
    // Energy for nothing: of the price alone there is no doubt, whatever the pump draws.
    const model = await looked(freePad);
    model.matters.value = 'cost';
    expect(findingText(model)).toBe('Your day costs €0.00, and nothing of it is in doubt.');
    expect(yearText(model)).toBe('The year 2027 costs €0.00, and nothing of it is in doubt.');
  });

  test('of the table hold both bands and the year', async () => {
    const { model: fresh } = sureness(ownerPad);
    // A head without words is none to a screen reader.
    expect(bandTable(fresh).columns).not.toContain('');
    expect(bandTable(fresh).rows.map(([name, , , trials]) => [name, trials])).toEqual([
      ['Water', 'being worked out'],
      ['Energy', 'being worked out'],
      ['Money', 'being worked out'],
    ]);
    const model = await looked(ownerPad);
    expect(bandTable(model).rows.map(([name]) => name)).toEqual([
      'Water',
      'Energy',
      'Money',
      'Money, the year 2027',
    ]);
  });
});
