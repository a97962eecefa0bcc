import { filterFactor } from '#core/hydraulics/equipment.ts';
import { affinityHead } from '#core/pump/pump.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleBench } from '#explorables/example/filter.ts';
import {
  createModel,
  type FilterWeeksModel,
  type Moment,
  type State,
} from '#explorables/FilterWeeks/model.ts';
import { toSI } from '#units/convert.ts';
import { readGiven } from '#units/given.ts';
import { formatMoney } from '#units/money.ts';

/** The lesson's picture, set as the lesson says. */
function set(given: ValueProps): FilterWeeksModel {
  const model = createModel(exampleBench, readGiven('speed', given['speed']));
  model.weeks.apply(Number(given['weeks'] ?? 0));
  return model;
}

function held({ here }: FilterWeeksModel): State {
  const state = here.value.held;
  if (state === undefined) throw new RangeError('The pump no longer gives the clean flow here.');
  return state;
}

function there<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new RangeError('The pump no longer gives the clean flow here.');
  return value;
}

const rise = (moment: Moment, clean: Moment) => moment.left.pressure - clean.left.pressure;

/** A filter that loads, on the invented pad of its lesson. */
export const makers = {
  filterFlow: (given) => ({ quantity: 'flow', value: set(given).here.value.left.flow }),
  filterFlowLost: (given) => {
    const { here, clean } = set(given);
    return { quantity: 'share', value: 1 - here.value.left.flow / clean.value.left.flow };
  },
  filterGauge: (given) => ({ quantity: 'pressure', value: set(given).here.value.left.pressure }),
  filterRise: (given) => {
    const { here, clean } = set(given);
    return { quantity: 'pressure', value: rise(here.value, clean.value) };
  },
  filterPower: (given) => ({ quantity: 'power', value: set(given).here.value.left.power }),
  filterHeldSpeed: (given) => ({ quantity: 'speed', value: held(set(given)).speed }),
  filterHeldPower: (given) => ({ quantity: 'power', value: held(set(given)).power }),
  filterHeldGauge: (given) => ({ quantity: 'pressure', value: held(set(given)).pressure }),
  filterExtraEnergy: (given) => ({
    quantity: 'energy',
    value: there(set(given).extraEnergy.value),
  }),
  filterExtraPrice: (given) => {
    const value = there(set(given).extraCost.value);
    return {
      quantity: null,
      value,
      shown: formatMoney(value, exampleBench.price?.currency ?? '', { places: 0 }),
    };
  },
  filterLoadedHead: (given) => {
    const cleanHead = readGiven('head', given['clean']);
    const ends = { cleanHead, dirtyHead: readGiven('head', given['dirty']) };
    return { quantity: 'head', value: cleanHead * filterFactor(ends, Number(given['loading'])) };
  },
  gaugeAtSpeed: (given) => ({
    quantity: 'pressure',
    // Pressure goes with head, and head with the square of the speed.
    value:
      affinityHead(
        readGiven('pressure', given['pressure']) / toSI('pressure', 1, 'kPa'),
        readGiven('speed', given['from']),
        readGiven('speed', given['to']),
      ) * toSI('pressure', 1, 'kPa'),
  }),
} as const satisfies ValueMakers;
