import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleLoad } from '#explorables/BillArea/example.ts';
import { costOf, createModel, energyOf } from '#explorables/BillArea/model.ts';
import { takePad } from '#explorables/BillArea/own.ts';
import { bars, sentence, spokenTime, table } from '#explorables/BillArea/text.ts';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad, newReading } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const kilowattHour = 3.6e6;
const hours = (count: number) => count * 3600;

describe('the bill', () => {
  test('1500 W for 8 hours are 12 kWh, and $2.16 at $0.18', () => {
    // Reference file electricity, "flat tariff, one block".
    const energy = energyOf(1500, hours(8));
    expect(energy / kilowattHour).toBeCloseTo(12, 9);
    expect(costOf(energy, 0.18)).toBeCloseTo(2.16, 9);
  });

  test('two hours at 1200 W and twelve at 180 W are 4.56 kWh', () => {
    // Reference file electricity, "flat tariff, two speeds".
    const energy = energyOf(1200, hours(2)) + energyOf(180, hours(12));
    expect(energy / kilowattHour).toBeCloseTo(4.56, 9);
    expect(costOf(energy, 0.18)).toBeCloseTo(0.8208, 9);
  });

  test('the picture: a longer day at fewer watts costs less', () => {
    // Arithmetic: 1.6 x 8 = 12.8 and 0.25 x 20 = 5 kWh, at 0.20.
    const model = createModel(exampleLoad);
    expect(model.cost.value).toBeCloseTo(2.56, 9);
    model.power.apply(250);
    model.time.apply(hours(20));
    expect(model.energy.value / kilowattHour).toBeCloseTo(5, 9);
    expect(model.cost.value).toBeCloseTo(1, 9);
  });
});

describe('the amperes', () => {
  test('work and magnetising current add up at a right angle', () => {
    // Pythagoras: 690 W at 230 V are 3 A of work; with 4 A to magnetise the ammeter shows 5.
    const model = createModel({ ...exampleLoad, magnetising: 4 });
    model.power.apply(690);
    expect(model.amperes.value?.current).toBeCloseTo(5, 9);
    expect(model.amperes.value?.factor).toBeCloseTo(0.6, 9);
    expect(model.amperes.value?.apparent).toBeCloseTo(1150, 9);
  });

  test('the question of the lesson: half the amperes, an eighth of the watts', () => {
    // Arithmetic: sqrt((1600/230)^2 + 3.4^2) = 7.743 and sqrt((200/230)^2 + 3.4^2) = 3.509.
    expect(lessonValue('motorAmperes', { power: '1600 W' }).value).toBeCloseTo(7.743, 3);
    expect(lessonValue('motorAmperes', { power: '200 W' }).value).toBeCloseTo(3.509, 3);
  });

  test('the shorter bar is the one that does the work, and they close up with the load', () => {
    const model = createModel(exampleLoad);
    const shares = (power: number) => {
      model.power.apply(power);
      const found = bars(model);
      return (found?.workingShare ?? 0) / (found?.shownShare ?? 1);
    };
    expect(shares(200)).toBeLessThan(shares(1000));
    expect(shares(1000)).toBeLessThan(shares(2500));
    expect(shares(2500)).toBeLessThan(1);
  });
});

describe('horsepower', () => {
  test('one is 745.7 W', () => {
    // NIST SP 811, B.8: horsepower (550 ft lbf/s) = 7.456 999 E+02 W.
    expect(lessonValue('powerIs', { power: '1 hp' }).value).toBeCloseTo(745.6999, 3);
  });

  test('65 gpm at 55 ft are 0.903 hp in the water, 1.505 at the shaft and 1.881 from the wire', () => {
    // Hydraulic Institute data tool, eq. 1.B.4: gpm x ft / 3960; then over 0.6 and 0.8.
    const given = { flow: '65 gpm', head: '55 ft' };
    const horsepower = 745.6999;
    const close = (value: number, expected: number) =>
      expect(Math.abs(value / horsepower / expected - 1)).toBeLessThan(0.003);
    close(lessonValue('waterPower', given).value, 65 * (55 / 3960));
    close(lessonValue('powerBefore', { ...given, through: '60 %' }).value, 1.5046);
    close(lessonValue('powerBefore', { ...given, through: '60 %, 80 %' }).value, 1.8808);
  });
});

describe('what is said', () => {
  test('at full load, at light load and not running', () => {
    const model = createModel(exampleLoad);
    expect(plain(sentence(model))).toBe(
      '1600 W for 8 h is 12.8 kWh; at $0.20 per kWh that is $2.56 a day. ' +
        'The ammeter shows 7.7 A; times 230 V that is 1781 VA, of which 1600 W are power: a power factor of 0.90. The bill counts the watts alone.',
    );
    model.power.apply(200);
    model.time.apply(hours(8.25));
    expect(plain(sentence(model))).toMatch(
      /^200 W for 8\.25 h is 1\.65 kWh; .* wrong by more than double\.$/,
    );
    model.time.apply(0);
    expect(plain(sentence(model))).toMatch(/^The pump does not run: no kilowatt-hour/);
    expect(spokenTime(model)).toMatch(/^0 hours/);
    model.reset();
    expect(model.time.value.value).toBe(hours(8));
    expect(model.power.value.value).toBe(1600);
  });

  test('no setting leaves a hole', () => {
    const model = createModel(exampleLoad);
    model.units.value = metric;
    for (const power of [0, 20, 2500, 1e9]) {
      model.power.apply(power);
      model.price.apply(0);
      const said = JSON.stringify([sentence(model), bars(model), table(model)]);
      expect(said).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});

describe('the reader’s own pad', () => {
  test.each([
    ['an owner', ownerPad],
    ['a lodge', lodgePad],
    ['a rig', rigPad],
  ])('%s: opens with the planned day, its price and its currency', (_, pad) => {
    const model = createModel(exampleLoad);
    takePad(model, pad);
    model.source.value = 'mine';
    expect(model.power.value.value).toBeGreaterThan(0);
    expect(model.power.value.value).toBeLessThanOrEqual(model.load.value.greatestPower);
    expect(model.load.value.time).toBeLessThanOrEqual(hours(24));
    expect(JSON.stringify([sentence(model), table(model)])).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('amperes are shown only at watts that were read; without a reading it is said', () => {
    // Arithmetic: 690 W at 230 V and 5 A are a power factor of 690 / 1150 = 0.6.
    const pump = { ...ownerPad.pump, voltage: 230 };
    const read = newReading('a', { speed: 3450, power: 690, current: 5 });
    const model = createModel(exampleLoad);
    takePad(model, { ...ownerPad, pump, readings: [read] });
    model.source.value = 'mine';
    model.power.apply(690);
    expect(model.amperes.value?.factor).toBeCloseTo(0.6, 9);
    model.power.apply(300);
    expect(model.amperes.value).toBeUndefined();
    expect(sentence(model)).toContain('only at the watts you read');
    takePad(model, { ...ownerPad, readings: [] });
    model.source.value = 'mine';
    expect(sentence(model)).toContain('no reading with both watts and amperes');
    expect(bars(model)).toBeUndefined();
    takePad(model, emptyPad('us'));
    expect(model.own.value).toBeUndefined();
  });
});
