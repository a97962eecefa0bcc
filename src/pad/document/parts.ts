/**
 * New entries of a pad, with everything nobody has said yet left unknown. Forms use them for what
 * the reader adds, and the examples are written with them.
 */
import type {
  BranchSection,
  EquipmentSection,
  FittingSection,
  Pad,
  PadBlock,
  PadNeed,
  PadYear,
  ParallelSection,
  PipeSection,
  QuietHours,
  Reading,
  SuctionCover,
} from './schema.ts';
import { padFormat, padVersion } from './version.ts';

/** The fields of an entry that may be given; its id always is. */
type Given<Entry> = Partial<Omit<Entry, 'kind' | 'id'>>;

export function newPipe(id: string, given: Given<PipeSection> = {}): PipeSection {
  return { kind: 'pipe', id, sizeId: null, bore: null, length: null, roughness: null, ...given };
}

export function newFitting(
  id: string,
  fitting: FittingSection['fitting'],
  given: Given<FittingSection> = {},
): FittingSection {
  return { kind: 'fitting', id, fitting, sizeId: null, bore: null, count: 1, k: null, ...given };
}

export function newEquipment(
  id: string,
  equipment: EquipmentSection['equipment'],
  given: Given<EquipmentSection> = {},
): EquipmentSection {
  return {
    kind: 'equipment',
    id,
    equipment,
    name: '',
    head: null,
    flow: null,
    exponent: null,
    area: null,
    dirtyHead: null,
    loading: null,
    media: null,
    ...given,
  };
}

export function newBranch(id: string, given: Given<BranchSection> = {}): BranchSection {
  return { id, name: '', lift: null, sections: [], ...given };
}

export function newParallel(id: string, given: Given<ParallelSection> = {}): ParallelSection {
  return { kind: 'parallel', id, name: '', branches: [], ...given };
}

export function newReading(id: string, given: Given<Reading> = {}): Reading {
  return {
    id,
    speed: null,
    flow: null,
    filterPressure: null,
    suctionVacuum: null,
    gaugeHeight: null,
    power: null,
    current: null,
    ...given,
  };
}

export function newNeed(
  id: string,
  kind: PadNeed['kind'],
  given: Partial<Omit<PadNeed, 'id' | 'kind'>> = {},
): PadNeed {
  return {
    id,
    kind,
    name: '',
    leastFlow: null,
    greatestFlow: null,
    minutes: null,
    windows: [],
    shortestRun: null,
    branchId: null,
    basis: null,
    ...given,
  };
}

export function newCover(id: string, given: Given<SuctionCover> = {}): SuctionCover {
  return { id, name: '', markedFlow: null, branchId: null, ...given };
}

export function newQuiet(id: string, start: number, end: number, speed: number | null): QuietHours {
  return { id, start, end, ceilingSpeed: speed };
}

export function newBlock(
  id: string,
  start: number,
  end: number,
  speed: number | null,
  reason = '',
): PadBlock {
  return { id, start, end, speed, reason };
}

/** A year of which nothing has been said. */
export const plainYear: PadYear = {
  plans: [],
  waterTemperatures: [],
  cleaningDays: null,
  frostHours: [],
  frostSpeed: null,
  emission: null,
  price: null,
  oldPower: null,
  oldMinutes: null,
  interest: null,
  lifetime: null,
};

/** A pad on which nothing is known yet. */
export function emptyPad(preset: Pad['units']['preset'] = 'us'): Pad {
  return {
    format: padFormat,
    version: padVersion,
    name: '',
    notes: '',
    units: { preset, overrides: {} },
    site: { altitude: null, waterTemperature: null, surfaceAbovePump: null },
    pool: { kind: 'known', volume: null },
    plumbing: { suction: [], discharge: [], staticHead: null },
    pump: {
      name: '',
      referenceSpeed: null,
      leastSpeed: null,
      topSpeed: null,
      speedStep: null,
      primingSpeed: null,
      primingMinutes: null,
      overrideSpeed: null,
      voltage: null,
      fixedPower: null,
      standbyPower: null,
      efficiency: null,
      driveEfficiency: null,
      knowledge: { kind: 'nameplate', power: null, powerMeans: null, flow: null, head: null },
    },
    readings: [],
    instruments: {
      filterGauge: { span: null, grade: null },
      vacuumGauge: { span: null, grade: null },
      meterShare: null,
      powerShare: null,
    },
    needs: [],
    limits: {
      suctionVelocity: null,
      dischargeVelocity: null,
      filterRate: null,
      heaterGreatestFlow: null,
      suctionCovers: [],
      coversBalanced: false,
      npshRequired: null,
      npshMargin: null,
      sources: {},
    },
    quiet: [],
    turnoverTarget: null,
    tariff: { name: '', currency: '', dailyCharge: null, seasons: [], holidays: [] },
    day: { date: null, blocks: [], compareWith: 'usual', oldBlocks: [] },
    year: plainYear,
  };
}
