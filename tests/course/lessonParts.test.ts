import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFrom, judge } from '#course/Check/question.ts';
import { banks, findQuestion } from '#course/Check/questions.ts';
import { lessonValue, shownUnits } from '#course/lesson/values.ts';
import { createModel as createBore } from '#explorables/BoreVelocity/model.ts';
import { sentence as boreSentence } from '#explorables/BoreVelocity/text.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { createModel as createPump } from '#explorables/FlowPowerSpeed/model.ts';
import { sentence as pumpSentence } from '#explorables/FlowPowerSpeed/text.ts';
import { metric, us } from '#units/choice.ts';
import { readGiven } from '#units/given.ts';

const gpm = (231 * 0.0254 ** 3) / 60;

describe('figures in a lesson', () => {
  test('the flow at 6 ft/s in 2 in pipe is 63 gpm in Schedule 40 and 55 in Schedule 80', () => {
    // Bores of ASTM D1785, 2.067 and 1.939 in; arithmetic: gpm = 2.448 x V x d^2.
    const flow = (pipe: string) =>
      lessonValue('flowAtVelocity', { pipe, velocity: '6 ft/s' }).value / gpm;
    expect(flow('sch40-2')).toBeCloseTo(62.75, 1);
    expect(flow('sch80-2')).toBeCloseTo(55.22, 1);
  });

  test('half the speed is an eighth of the shaft power', () => {
    // Affinity laws, ANSI/HI 14.3.
    const given = { power: '1600 W', from: '3000 rpm', to: '1500 rpm' };
    expect(lessonValue('affinityPower', given)).toEqual({ quantity: 'power', value: 200 });
  });

  test('a fixed draw stays: 50 W and a cube of 1550 W at half speed are 243.75 W', () => {
    // Arithmetic: 50 + 1550 / 8.
    const given = { fixed: '50 W', cube: '1550 W', from: '3000 rpm', to: '1500 rpm' };
    expect(lessonValue('wirePower', given).value).toBeCloseTo(243.75, 10);
  });

  test('mistakes stop the build in words', () => {
    expect(() => lessonValue('nothing', {})).toThrow(
      'No figure is called "nothing"; there are bore,',
    );
    expect(() => readGiven('flow', '5 ft')).toThrow(
      '"5 ft" is no flow: write a number, a space and one of gpm, m3/h, L/min, m3/s.',
    );
    expect(() => shownUnits('flow', 'ft')).toThrow('ft is no unit of flow; it has gpm,');
  });
});

describe('self-checks', () => {
  const names = Object.values(banks).flatMap((bank) => Object.keys(bank));
  const seed = fc.integer({ min: 1, max: 1e6 });
  const choice = fc.constantFrom(us, metric);

  test.each(names)('%s: every draw can be answered, and only one answer is right', (name) => {
    fc.assert(
      fc.property(seed, choice, (draw, units) => {
        const question = findQuestion(name).make(drawFrom(draw), units);
        expect(question.prompt).not.toMatch(/NaN|undefined|Infinity/);
        expect(question.working.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
        if (question.kind === 'choice') {
          expect(question.options.filter(({ right }) => right)).toHaveLength(1);
          return;
        }
        expect(judge(question, question.answer)).toEqual({ right: true, says: 'Right.' });
        for (const slip of question.slips) {
          expect(judge(question, slip.value)).toEqual({ right: false, says: slip.says });
        }
        expect(judge(question, question.answer * 1.37).right).toBe(false);
      }),
    );
  });

  test('each has a name of its own, and one that is not known is told in words', () => {
    expect(new Set(names).size).toBe(names.length);
    expect(() => findQuestion('nothing')).toThrow('No self-check is called "nothing"; there are ');
  });

  test('the same seed draws the same numbers', () => {
    const prompt = (draw: number) => findQuestion('affinityFlow').make(drawFrom(draw), us).prompt;
    expect(prompt(7)).toBe(prompt(7));
    expect(new Set([1, 2, 3, 4, 5, 6, 7, 8].map(prompt)).size).toBeGreaterThan(2);
  });
});

describe('velocity and bore', () => {
  const model = () =>
    createBore({
      pipes: ['sch40-2', 'sch80-2'],
      flow: 55 * gpm,
      limit: readGiven('velocity', '6 ft/s'),
      temperature: 20,
    });

  test('55 gpm in 2 in pipe is 5.26 ft/s in Schedule 40 and 5.98 in Schedule 80', () => {
    // Common practice speaks of 6 ft/s; the exact figures are reference pipe-velocity.json's law.
    const one = model();
    expect(one.here.value.velocity / 0.3048).toBeCloseTo(5.26, 2);
    one.choosePipe('sch80-2');
    expect(one.here.value.velocity / 0.3048).toBeCloseTo(5.98, 2);
  });

  test('turbulence is sure from 2.62 gpm in 2 in Schedule 40 at 20 degC', () => {
    // Reference pipe-velocity.json, "flow at a Reynolds number", 4000.
    expect(model().turbulentFlow.value / gpm).toBeCloseTo(2.6231, 3);
  });

  test('says what the picture shows', () => {
    expect(boreSentence(model()).replace(/\u00a0/g, ' ')).toMatch(
      /^55 gpm in 2 in Schedule 40 moves at 5\.26 ft\/s, within the limit of 6\.00 ft\/s, which this bore reaches at 63 gpm\./,
    );
  });

  test('reset brings back pipe and flow', () => {
    const one = model();
    one.choosePipe('sch80-2');
    one.flow.apply(80 * gpm);
    one.reset();
    expect(one.chosen.value.id).toBe('sch40-2');
    expect(one.here.value.flow / gpm).toBeCloseTo(55, 9);
    one.choosePipe('no-such-pipe');
    expect(one.chosen.value.id).toBe('sch40-2');
  });
});

describe('flow, power and speed', () => {
  test('at half speed a closed loop keeps a little under half the flow and about a quarter of the head', () => {
    // Affinity laws; smooth-pipe friction goes as about flow^1.8, so a touch under.
    const model = createPump(exampleMachine, 1725);
    const { flow, head, power, speed } = model.shares.value;
    expect(speed).toBe(0.5);
    expect(flow).toBeGreaterThan(0.47);
    expect(flow).toBeLessThan(0.5);
    expect(head).toBeCloseTo(0.25, 1);
    // A fixed draw keeps wire power above an eighth.
    expect(power).toBeGreaterThan(0.125);
    expect(power).toBeLessThan(0.17);
    expect(pumpSentence(model)).toMatch(/of the speed, .* of the flow/);
  });

  test('a speed out of range is brought into it', () => {
    const model = createPump(exampleMachine, 1725);
    model.speed.apply(99_999);
    expect(model.here.value.speed).toBe(exampleMachine.topSpeed);
    model.reset();
    expect(model.here.value.speed).toBe(1730);
  });
});
