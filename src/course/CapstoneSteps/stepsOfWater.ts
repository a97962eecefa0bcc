/** The first steps: from the gauges to the slowest speed of each need. */
import { flowAtVelocity, meanVelocity, pipeSize } from '#core/hydraulics/pipe.ts';
import { affinityFlow } from '#core/pump/pump.ts';
import { asPrinted, type Printed } from '#course/Check/printed.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { type Asked, flowAtHead, there, type Worked } from './worked.ts';

export function headStep(units: UnitChoice, { head, headParts, full }: Worked): Asked {
  const { pressure, vacuum, height } = headParts;
  const bare = (['pressure', 'vacuum'] as const).map((quantity) => {
    const read = quantity === 'pressure' ? full.filterPressure : full.suctionVacuum;
    return fromSI(quantity, read ?? 0, unitFor(units, quantity));
  });
  const unconverted = toSI(
    'head',
    bare.reduce((sum, each) => sum + each, fromSI('length', height, unitFor(units, 'length'))),
    unitFor(units, 'head'),
  );
  const shown = (value: number) => format('head', value, units, { digits: 3 });
  const parts = [pressure, vacuum, height].map((value) =>
    asPrinted('head', value, units, { digits: 3 }),
  );
  return {
    id: 'head',
    title: 'Head',
    prompt: 'Read both gauges at 3450 rpm. What total dynamic head does the pump make?',
    quantity: 'head',
    answer: head,
    near: 0.02,
    slips: [
      {
        value: pressure + height,
        says: 'The vacuum is missing. The pump also has to draw the water in.',
      },
      { value: pressure, says: 'That is the filter gauge alone. Vacuum and height come on top.' },
      {
        value: pressure - vacuum + height,
        says: 'A vacuum is added, not taken off: the pump lifts from below the air’s pressure.',
      },
      {
        value: pressure + vacuum,
        says: 'The height between the gauges is missing.',
      },
      {
        value: unconverted,
        says: 'The readings are in different units. Turn each into head first, then add.',
      },
    ],
    working: [
      'Filter gauge, vacuum gauge and height, each as head:',
      `${parts.map(({ text }) => text).join(' + ')} = ${shown(parts.reduce((sum, { value }) => sum + value, 0))}.`,
    ],
  };
}

export function flowStep(units: UnitChoice, { model, flow, head, headParts }: Worked): Asked {
  const { curve } = there(model.running, 'a pump');
  const at = (wish: number) => flowAtHead((q) => curve.head(q), wish, curve.lastFlow);
  return {
    id: 'flow',
    title: 'Flow',
    prompt: 'Go into the pump’s curve with that head. What flow does the pump move at 3450 rpm?',
    quantity: 'flow',
    answer: flow,
    near: 0.04,
    slips: [
      {
        value: at(headParts.pressure),
        says: 'That is the flow at the head of the filter gauge alone. Go in with the whole head.',
      },
      {
        value: curve.lastFlow,
        says: 'That is the end of the curve. The pump runs where its curve has your head.',
      },
    ],
    working: [
      `From ${format('head', head, units, { digits: 3 })} straight across to the curve, then down: ${format('flow', flow, units, { digits: 3 })}.`,
    ],
  };
}

export function velocityStep(units: UnitChoice, { flow }: Worked): Asked {
  const { bore } = pipeSize('sch40-2');
  const nominal = toSI('diameter', 2, 'in');
  const answer = meanVelocity(flow, bore);
  const limit = toSI('velocity', 6, 'ft/s');
  return {
    id: 'velocity',
    title: 'Velocity',
    prompt: `How fast is the water then in the suction pipe, 2 in Schedule 40 with a bore of ${format('diameter', bore, units)}?`,
    quantity: 'velocity',
    answer,
    near: 0.03,
    slips: [
      {
        value: meanVelocity(flow, nominal),
        says: 'That takes the 2 in of the name for the bore. Use the bore.',
      },
      { value: answer / 4, says: 'That uses the diameter as if it were the radius.' },
    ],
    working: [
      `Flow over area: ${format('velocity', answer, units, { digits: 3 })}. The limit is ${format('velocity', limit, units, { digits: 3 })}, which this pipe reaches at ${format('flow', flowAtVelocity(limit, bore), units)}.`,
      'So at full speed this pump is above the limit of its suction pipe.',
    ],
  };
}

const needWords: Readonly<Record<string, string>> = {
  skim: 'the skimmer',
  heat: 'the heater',
  filter: 'the filter',
};

export function speedSteps(units: UnitChoice, { speedFor, flowOf, flow }: Worked): Asked[] {
  return ['skim', 'heat', 'filter'].map((needId) => {
    const wanted = flowOf(needId);
    const answer = speedFor(needId);
    const ratio = wanted / flow;
    const [least, full] = [wanted, flow].map((each) =>
      asPrinted('flow', each, units, { digits: 4 }),
    ) as [Printed, Printed];
    const words = needWords[needId] ?? needId;
    return {
      id: `speed-${needId}`,
      title: `Speed for ${words}`,
      prompt: `What is the slowest speed that gives ${words} its ${format('flow', wanted, units, { digits: 3 })}? Steps of 10 rpm.`,
      quantity: 'speed',
      answer,
      near: 0.025,
      slips: [
        {
          value: 3450 * Math.sqrt(ratio),
          says: 'That is the rule for head, turned round. Flow follows the speed itself.',
        },
        {
          value: 3450 * Math.cbrt(ratio),
          says: 'That is the rule for power, turned round. Flow follows the speed itself.',
        },
        {
          value: 3450 * ratio ** 2,
          says: 'Flow does not fall with the square of the speed. It follows the speed itself.',
        },
      ],
      working: [
        `Flow follows speed: 3450 × ${least.text} / ${full.text} = ${Math.round((3450 * least.value) / full.value)} rpm. Round up to the next step: ${answer} rpm.`,
        `Check: ${full.text} × ${answer} / 3450 = ${format('flow', affinityFlow(full.value, 3450, answer), units, { digits: 4 })}.`,
      ],
    };
  });
}
