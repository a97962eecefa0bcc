import { pressureHead } from '#core/fit/gauges.ts';
import { meanVelocity } from '#core/hydraulics/pipe.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshFromVacuum,
  npshMargin,
} from '#core/pump/npsh.ts';
import { vapourPressure } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family, Rule } from '../rule.ts';
import { boreInputs, boreOf, densityOf } from './shared.ts';

const placeInputs = [
  'geopotentialAltitude',
  'geometricAltitude',
  'altitude',
  'atmosphere',
  'pressure',
];
const place = placeInputs.join('|');
const waterInputs = ['temperature', 'density', 'vapourPressure'];

const suctionInputs = ['suctionHead', 'suctionLift', 'staticHead', 'suctionLoss', 'headLoss'];

function atmosphere(given: Given): number {
  const stated = placeInputs.filter((id) => given.has(id));
  if (stated.length !== 1) throw new NotUnderstood('the place is stated in more than one way');
  if (given.has('atmosphere')) return given.number('atmosphere');
  if (given.has('pressure')) return given.number('pressure');
  if (given.has('geometricAltitude')) {
    return atmosphericPressure(geopotentialAltitude(given.number('geometricAltitude')));
  }
  return atmosphericPressure(given.maybe('geopotentialAltitude') ?? given.number('altitude'));
}

function suctionWater(given: Given) {
  const pressure = given.maybe('vapourPressure') ?? vapourPressure(given.number('temperature'));
  return { density: densityOf(given), vapourPressure: pressure };
}

function available(given: Given): number {
  return npshAvailable({
    atmosphere: atmosphere(given),
    water: suctionWater(given),
    surfaceAbovePump:
      (given.maybe('suctionHead') ?? 0) -
      (given.maybe('suctionLift') ?? given.maybe('staticHead') ?? 0),
    suctionLoss: given.maybe('suctionLoss') ?? given.maybe('headLoss') ?? 0,
  });
}

/** With no flow and bore the gauge's velocity head is left out, as a case that gives none must. */
function fromVacuum(given: Given): number {
  const velocity = given.has('flow') ? meanVelocity(given.number('flow'), boreOf(given)) : 0;
  return npshFromVacuum({
    atmosphere: atmosphere(given),
    water: suctionWater(given),
    suctionVacuum: given.number('vacuum'),
    velocity: given.maybe('velocity') ?? velocity,
    gaugeAbovePump: given.maybe('gaugeHeight') ?? 0,
  });
}

const margin = (npsh: (given: Given) => number) => (given: Given) =>
  npshMargin(npsh(given), given.number('npshRequired'));

/** What NPSH available lies above the one required and its margin, with nothing lost and no lift. */
function toSpare(given: Given): number {
  const wanted = given.number('npshRequired') * (given.maybe('npshRatio') ?? 1);
  return npshMargin(available(given), wanted + (given.maybe('npshMargin') ?? 0));
}

const answersFor = (npsh: (given: Given) => number): Rule['gives'] => ({
  npshAvailable: npsh,
  npshMargin: margin(npsh),
  npshRatio: (given) => npsh(given) / given.number('npshRequired'),
  sufficient: (given) => margin(npsh)(given) >= 0,
});

export const suctionFamily: Family = {
  name: 'suction',
  quantity: /atmospher|suction head|npsh/i,
  rules: [
    {
      what: 'standard atmosphere',
      needs: ['geopotentialAltitude|geometricAltitude|altitude'],
      gives: {
        pressure: atmosphere,
        atmosphere,
        geopotentialAltitude: (given) => geopotentialAltitude(given.number('geometricAltitude')),
      },
    },
    {
      what: 'head of the atmosphere',
      needs: ['geopotentialAltitude|geometricAltitude|altitude', 'temperature|density'],
      takes: ['temperature', 'density'],
      gives: { head: (given) => pressureHead(atmosphere(given), densityOf(given)) },
    },
    {
      what: 'NPSH available',
      needs: [place, 'temperature|vapourPressure'],
      takes: [...waterInputs, ...suctionInputs, 'npshRequired'],
      gives: answersFor(available),
    },
    {
      what: 'greatest suction lift',
      needs: [place, 'temperature|vapourPressure', 'npshRequired'],
      takes: [...waterInputs, 'suctionLoss', 'headLoss', 'npshMargin', 'npshRatio'],
      gives: { greatestLift: toSpare, suctionLift: toSpare },
    },
    {
      what: 'greatest suction loss',
      needs: [place, 'temperature|vapourPressure', 'npshRequired'],
      takes: [
        ...waterInputs,
        'suctionHead',
        'suctionLift',
        'staticHead',
        'npshMargin',
        'npshRatio',
      ],
      gives: { greatestSuctionLoss: toSpare, suctionLoss: toSpare, headLoss: toSpare },
    },
    {
      what: 'NPSH available from a vacuum gauge',
      needs: [place, 'temperature|vapourPressure', 'vacuum'],
      takes: [...waterInputs, ...boreInputs, 'flow', 'velocity', 'gaugeHeight', 'npshRequired'],
      gives: answersFor(fromVacuum),
    },
  ],
};
