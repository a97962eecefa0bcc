import {
  chlorineMass,
  productMass,
  productVolume,
  saltCellHours,
  thumbChlorinePounds,
  tradePercentConcentration,
} from '#core/water/chlorine.ts';
import {
  heaterHours,
  heatingEnergy,
  thumbHeatBtu,
  thumbHeaterBtuPerHour,
} from '#core/water/heating.ts';
import { liquidDensity } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import { specificHeatOf } from './shared.ts';

const pound = 0.45359237;
const gallon = 3.785411784e-3;
const btu = 1055.05585262;
const fahrenheitDegree = 5 / 9;
const squareFoot = 0.3048 ** 2;
const hour = 3600;

function chlorine(given: Given): number {
  return given.maybe('chlorine') ?? chlorineMass(given.number('volume'), given.number('rise'));
}

function thumbChlorine(given: Given): number {
  const gallons = given.number('volume') / gallon;
  return thumbChlorinePounds(gallons, given.number('rise') * 1000, given.number('factor')) * pound;
}

function liquidProduct(given: Given): number {
  const percent = 100 * given.number('tradeStrength');
  // "trade_percent" names a strength in percent; a share would be another quantity.
  return productVolume(chlorine(given), tradePercentConcentration(percent));
}

function cellTime(given: Given): number {
  const hours = saltCellHours(
    chlorine(given),
    given.number('cell'),
    given.maybe('outputShare') ?? 1,
  );
  return hours * hour;
}

function temperatureRise(given: Given): number {
  const difference = given.maybe('temperatureRise');
  return difference ?? given.number('target') - given.number('temperature');
}

/** Properties stand for the whole warming, so they count at its middle. */
function middle(given: Given): number | undefined {
  const start = given.maybe('temperature');
  return start === undefined ? undefined : start + temperatureRise(given) / 2;
}

function heat(given: Given): number {
  const at = middle(given);
  const density = given.maybe('density') ?? (at === undefined ? undefined : liquidDensity(at));
  if (density === undefined) throw new NotUnderstood('neither density nor temperature is given');
  const specificHeat = specificHeatOf(given, at);
  return heatingEnergy(given.number('volume'), temperatureRise(given), { density, specificHeat });
}

function heaterTime(given: Given): number {
  const efficiency = given.maybe('efficiency') ?? 1;
  return heaterHours(heat(given), given.number('heater'), efficiency) * hour;
}

function thumbHeat(given: Given): number {
  const gallons = given.number('volume') / gallon;
  return thumbHeatBtu(gallons, temperatureRise(given) / fahrenheitDegree) * btu;
}

const dose = ['volume|chlorine', 'rise|chlorine'];
const doseInputs = ['volume', 'rise', 'chlorine'];

export const chlorineFamily: Family = {
  name: 'chlorine and heat',
  quantity: /chlorine|salt.?cell|heater|heat/i,
  rules: [
    { what: 'chlorine for a rise', needs: ['volume', 'rise'], gives: { chlorine } },
    {
      what: "the trade's factor for chlorine",
      needs: ['volume', 'rise', 'factor'],
      gives: {
        chlorine: thumbChlorine,
        error: (given) => thumbChlorine(given) / chlorine(given) - 1,
      },
    },
    {
      what: 'product by weight',
      needs: [...dose, 'availableChlorine'],
      takes: doseInputs,
      gives: {
        chlorine,
        product: (given) => productMass(chlorine(given), given.number('availableChlorine')),
      },
    },
    {
      what: 'liquid product by trade percent',
      needs: [...dose, 'tradeStrength'],
      takes: doseInputs,
      gives: { chlorine, productVolume: liquidProduct },
    },
    {
      what: 'liquid product by its strength',
      needs: [...dose, 'strength'],
      takes: doseInputs,
      gives: {
        chlorine,
        productVolume: (given) => productVolume(chlorine(given), given.number('strength')),
      },
    },
    {
      what: 'salt-cell hours',
      needs: [...dose, 'cell'],
      takes: [...doseInputs, 'outputShare'],
      gives: { chlorine, time: cellTime },
    },
    {
      what: 'heat and heater hours',
      needs: ['volume', 'temperatureRise|target'],
      takes: [
        'temperature',
        'target',
        'heater',
        'efficiency',
        'density',
        'specificHeat',
        'price',
        'cop',
      ],
      gives: {
        energy: heat,
        time: heaterTime,
        cost: (given) =>
          ((heat(given) / (given.maybe('efficiency') ?? given.maybe('cop') ?? 1)) *
            given.number('price')) /
          3.6e6,
        electricity: (given) =>
          heat(given) / (given.maybe('cop') ?? given.maybe('efficiency') ?? 1),
        tradeHeat: thumbHeat,
        tradeError: (given) => thumbHeat(given) / heat(given) - 1,
      },
      when: (given) => given.has('temperatureRise') !== given.has('target'),
    },
    {
      what: 'heater size from the surface',
      needs: ['area|length', 'temperatureRise'],
      takes: ['width'],
      gives: {
        heater: (given) => {
          const surface = given.maybe('area') ?? given.number('length') * given.number('width');
          const feet = surface / squareFoot;
          const degrees = given.number('temperatureRise') / fahrenheitDegree;
          return (thumbHeaterBtuPerHour(feet, degrees) * btu) / hour;
        },
      },
    },
  ],
};
