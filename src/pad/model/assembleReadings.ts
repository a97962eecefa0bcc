import {
  type Contradiction,
  type Reading as CoreReading,
  type InstrumentAccuracy,
  type PadAssumption,
  typicalInstruments,
} from '#core/fit/padEvidence.ts';
import type { Instruments, Reading } from '#pad/document/schema.ts';
import { type Assumption, assumption } from '#pad/messages/assumptions.ts';
import type { Path } from '#pad/messages/path.ts';
import {
  type Problem,
  type ProblemCode,
  type ProblemValue,
  problem,
} from '#pad/messages/problems.ts';
import type { PumpSpeeds } from './heldSpeed.ts';

export interface AssembledReadings {
  readonly readings: readonly CoreReading[];
  readonly problems: readonly Problem[];
}

const values = ['flow', 'filterPressure', 'suctionVacuum', 'power', 'current'] as const;

/** Ratios at which the core uses a reading. */
const leastRatio = 0.05;
const greatestRatio = 2;

function readingProblems(reading: Reading, path: Path): readonly Problem[] {
  if (values.every((name) => reading[name] === null)) return [problem('readingEmpty', path)];
  const zero = (['flow', 'power', 'current'] as const).filter((name) => reading[name] === 0);
  return zero.map((name) => problem('readingZero', [...path, name]));
}

function speedProblem(reading: Reading, path: Path, speeds: PumpSpeeds): readonly Problem[] {
  if (!reading.speed) return [problem('readingSpeed', [...path, 'speed'])];
  const ratio = reading.speed / speeds.reference;
  if (ratio >= leastRatio && ratio <= greatestRatio) return [];
  const rpm = (value: number): ProblemValue => ({ quantity: 'speed', value });
  const range = {
    least: rpm(leastRatio * speeds.reference),
    greatest: rpm(greatestRatio * speeds.reference),
  };
  return [problem('speedRange', [...path, 'speed'], range)];
}

/** A reading's value, unless nobody took it or a 0 says nothing. */
function taken(value: number | null): number | undefined {
  return value === null || value === 0 ? undefined : value;
}

function coreReading(reading: Reading, speeds: PumpSpeeds, voltage: number | null): CoreReading {
  return {
    id: reading.id,
    ratio: (reading.speed ?? 0) / speeds.reference,
    flow: taken(reading.flow),
    dischargePressure: reading.filterPressure ?? undefined,
    suctionVacuum: reading.suctionVacuum ?? undefined,
    gaugeHeight: reading.gaugeHeight ?? undefined,
    power: taken(reading.power),
    current: taken(reading.current),
    voltage: taken(voltage),
  };
}

/** The readings that can be used, and what is wrong with the others. */
export function assembleReadings(
  readings: readonly Reading[],
  speeds: PumpSpeeds,
  voltage: number | null,
): AssembledReadings {
  const judged = readings.map((reading, place) => {
    const path = ['readings', place];
    const fatal = speedProblem(reading, path, speeds);
    const empty = values.every((name) => taken(reading[name]) === undefined);
    return {
      reading,
      problems: [...fatal, ...readingProblems(reading, path)],
      used: !empty && fatal.length === 0,
    };
  });
  return {
    readings: judged.flatMap(({ reading, used }) =>
      used ? [coreReading(reading, speeds, voltage)] : [],
    ),
    problems: judged.flatMap(({ problems }) => problems),
  };
}

export interface AssembledInstruments {
  readonly accuracy: InstrumentAccuracy;
  readonly assumptions: readonly Assumption[];
}

const usualSpans = {
  filter: { quantity: 'pressure', value: typicalInstruments.filterGauge.span },
  vacuum: { quantity: 'vacuum', value: typicalInstruments.vacuumGauge.span },
} as const;

/** How good the instruments are, with ordinary ones where nobody said. */
export function assembleInstruments(
  instruments: Instruments,
  readings: readonly CoreReading[],
): AssembledInstruments {
  const { filterGauge, vacuumGauge, meterShare, powerShare } = instruments;
  const usual = typicalInstruments;
  const read = (name: keyof CoreReading) => readings.some((one) => one[name] !== undefined);
  const share = (value: number) => ({ share: { quantity: 'share' as const, value } });
  const gaugeUnknown =
    (read('dischargePressure') && (filterGauge.span === null || filterGauge.grade === null)) ||
    (read('suctionVacuum') && (vacuumGauge.span === null || vacuumGauge.grade === null));
  return {
    accuracy: {
      filterGauge: {
        span: filterGauge.span || usual.filterGauge.span,
        grade: filterGauge.grade ?? usual.filterGauge.grade,
      },
      vacuumGauge: {
        span: vacuumGauge.span || usual.vacuumGauge.span,
        grade: vacuumGauge.grade ?? usual.vacuumGauge.grade,
      },
      meterShare: Math.max(meterShare ?? usual.meterShare, 0.001),
      powerShare: Math.max(powerShare ?? usual.powerShare, 0.001),
    },
    assumptions: [
      ...(gaugeUnknown ? [assumption('gaugesTypical', usualSpans)] : []),
      ...(read('flow') && meterShare === null
        ? [assumption('meterTypical', share(usual.meterShare))]
        : []),
      ...(read('power') && powerShare === null
        ? [assumption('wattsTypical', share(usual.powerShare))]
        : []),
    ],
  };
}

const pairCodes = {
  powerFallsWithSpeed: ['powerFalls', 'power'],
  flowFallsWithSpeed: ['flowFalls', 'flow'],
  pressureFallsWithSpeed: ['pressureFalls', 'filterPressure'],
  flowRisesFasterThanSpeed: ['flowTooFast', 'flow'],
} as const satisfies Readonly<Record<string, readonly [ProblemCode, keyof Reading]>>;

const readFields = {
  flow: 'flow',
  dischargePressure: 'filterPressure',
  suctionVacuum: 'suctionVacuum',
  power: 'power',
  apparentPower: 'current',
} as const;

const flowValue = (value: number): ProblemValue => ({ quantity: 'flow', value });
const headValue = (value: number): ProblemValue => ({ quantity: 'head', value });
const powerValue = (value: number): ProblemValue => ({ quantity: 'power', value });

/** What the core found wrong between readings, tied to the fields of the pad. */
export function contradictionProblem(found: Contradiction, readings: readonly Reading[]): Problem {
  const placeOf = (id: string): Path => ['readings', readings.findIndex((one) => one.id === id)];
  const nameOf = (id: string): string => {
    const speed = readings.find((one) => one.id === id)?.speed;
    return speed == null ? id : `${speed} rpm`;
  };
  switch (found.kind) {
    case 'powerFallsWithSpeed':
    case 'flowFallsWithSpeed':
    case 'pressureFallsWithSpeed':
    case 'flowRisesFasterThanSpeed': {
      const [code, field] = pairCodes[found.kind];
      return problem(code, [...placeOf(found.fasterId), field], { other: nameOf(found.slowerId) });
    }
    case 'gaugesDisagreeWithMeter':
      return problem('gaugesAgainstMeter', [...placeOf(found.id), 'flow'], {
        least: flowValue(found.byGauges.low),
        greatest: flowValue(found.byGauges.high),
        meter: flowValue(found.measured),
      });
    case 'headAboveShutoff':
      return problem('aboveShutoff', [...placeOf(found.id), 'filterPressure'], {
        head: headValue(found.head),
        shutoff: headValue(found.shutoffHead),
      });
    case 'powerBelowHydraulic':
      return problem('powerTooLow', [...placeOf(found.id), 'power'], {
        power: powerValue(found.power),
        hydraulic: powerValue(found.hydraulic),
      });
    case 'powerAboveApparent':
      return problem('powerTooHigh', [...placeOf(found.id), 'power'], {
        power: powerValue(found.power),
        apparent: powerValue(found.apparent),
      });
    case 'offTheFit':
      return problem('offTheFit', [...placeOf(found.id), readFields[found.quantity]]);
  }
}

/** What the fit took for granted, in the words of the pad. */
export function fitAssumption(found: PadAssumption): Assumption {
  const share = (value: number): ProblemValue => ({ quantity: 'share', value });
  switch (found.kind) {
    case 'curveEstimated':
    case 'curveWithinTolerance':
    case 'circuitAsDescribed':
      return assumption(found.kind, { spread: share(found.spread) });
    case 'flowReadFromCurve':
    case 'suctionLossFromPipes':
      return assumption(found.kind);
    case 'filterGaugeReadsDischargeSide':
      return assumption('filterGaugeSide');
    case 'gaugeLevelUnknown':
      return assumption(found.kind, { spread: { quantity: 'length', value: found.spread } });
    case 'efficiencyTypical':
    case 'fixedShareTypical':
      return assumption(found.kind, { value: share(found.value) });
    case 'powerFactorTypical':
      return assumption(found.kind, { value: String(Number(found.value.toPrecision(2))) });
  }
}
