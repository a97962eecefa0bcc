/** The circuit a case describes, as the core takes it. */
import type { Branch, Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { type Water, water } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';
import type { KeyUnit } from '../keyUnits.ts';
import { unitSpelled } from '../polynomial.ts';
import { lossPart, systemParts } from './pumpText.ts';
import { boreInputs, boreOf, viscosityInputs, viscosityOf } from './shared.ts';

interface CaseUnits {
  readonly flow: KeyUnit;
  readonly head: KeyUnit;
}

/** "gpm, ft", in either order; without it, the units the answers are wanted in. */
export function unitsOfCase(given: Given): CaseUnits {
  const spelled = given.has('units')
    ? given
        .text('units')
        .split(/,|;| and /)
        .map(unitSpelled)
    : [];
  if (spelled.includes(undefined)) throw new NotUnderstood('the units of the case are not known');
  const find = (dimension: string) => spelled.find((unit) => unit?.dimension === dimension);
  const flow = find('flow') ?? given.expectedUnit('flow', 'branchFlow', 'branchFlows');
  const head = find('length') ?? given.expectedUnit('head');
  if (flow === undefined || head === undefined) {
    throw new NotUnderstood('the units of the case are not stated');
  }
  return { flow, head };
}

/** A coefficient of Q^n, from the units of the case to SI. */
function coefficientInSI(k: number, exponent: number, { flow, head }: CaseUnits): number {
  return (k * head.factor) / flow.factor ** exponent;
}

export const pipeFields = [...boreInputs, 'length', 'kFittings', 'k', 'roughness'];

/** What every pipe of a case shares. */
interface Surroundings {
  readonly units: CaseUnits;
  readonly roughness: number;
}

export function pipeParts(pipe: Given, id: string, roughness: number): readonly CircuitPart[] {
  const bore = boreOf(pipe);
  const k = (pipe.maybe('kFittings') ?? 0) + (pipe.maybe('k') ?? 0);
  return [
    {
      kind: 'pipe',
      id: `${id} pipe`,
      bore,
      length: pipe.maybe('length') ?? 0,
      roughness: pipe.maybe('roughness') ?? roughness,
    },
    { kind: 'fitting', id: `${id} fittings`, k, bore },
  ];
}

function seriesParts(given: Given, list: readonly Value[], id: string, around: Surroundings) {
  return list.flatMap((each, index) =>
    pipeParts(given.inside(each, pipeFields), `${id} ${index + 1}`, around.roughness),
  );
}

export const branchFields = [...pipeFields, 'series', 'equipment', 'staticHead'];

function branch(given: Given, value: Value, id: string, around: Surroundings): Branch {
  const inner = given.inside(value, branchFields);
  const own =
    inner.has('bore') || inner.has('nominal') ? pipeParts(inner, id, around.roughness) : [];
  const series = inner.has('series') ? seriesParts(inner, inner.list('series'), id, around) : [];
  const equipment = inner.has('equipment')
    ? equipmentParts(inner, inner.value('equipment'), id, around.units)
    : [];
  return { id, parts: [...own, ...series, ...equipment], lift: inner.maybe('staticHead') ?? 0 };
}

function parallelPart(given: Given, id: string, around: Surroundings): readonly CircuitPart[] {
  if (!given.has(id)) return [];
  const branches = given
    .list(id)
    .map((each, index) => branch(given, each, `${id} ${index + 1}`, around));
  return [{ kind: 'parallel', id, branches }];
}

/** One piece of equipment by its point and exponent, in the units of the case unless it says. */
function oneEquipment(given: Given, value: Value, id: string, units: CaseUnits): CircuitPart {
  const fields = ['h0', 'q0', 'referenceHead', 'referenceFlow', 'n', 'factor'];
  const inner = given.inside(value, fields);
  return {
    kind: 'equipment',
    id,
    referenceHead: inner.maybe('referenceHead') ?? inner.number('h0') * units.head.factor,
    referenceFlow: inner.maybe('referenceFlow') ?? inner.number('q0') * units.flow.factor,
    exponent: inner.maybe('n') ?? 2,
    factor: inner.maybe('factor') ?? 1,
  };
}

function equipmentParts(
  given: Given,
  value: Value,
  id: string,
  units: CaseUnits,
): readonly CircuitPart[] {
  const list = Array.isArray(value) ? (value as readonly Value[]) : [value];
  return list.map((each, index) => oneEquipment(given, each, `${id} unit ${index + 1}`, units));
}

/** Water of the stated viscosity; where no pipe is described its properties bear on nothing. */
export function waterOf(given: Given): Water {
  if (!viscosityInputs.some((id) => id !== 'density' && given.has(id))) {
    if (given.has('series') || parallels.some((id) => given.has(id))) {
      throw new NotUnderstood('neither viscosity nor temperature is given');
    }
    return water(20);
  }
  const base = water(given.maybe('temperature') ?? 20);
  const kinematicViscosity = viscosityOf(given);
  return { ...base, kinematicViscosity, dynamicViscosity: kinematicViscosity * base.density };
}

export const parallels = ['suctionParallel', 'parallel', 'returnParallel'];

export function circuit(given: Given): Circuit {
  const units = unitsOfCase(given);
  const around = { units, roughness: given.maybe('roughness') ?? smoothPlasticRoughness };
  const ks = ['k', 'equipmentK'].map((id) => given.maybe(id) ?? 0);
  const written = given.has('systemHead') ? systemParts(given) : undefined;
  const staticHead =
    written?.staticHead ??
    given.maybe('staticHead') ??
    (given.maybe('caseStaticHead') ?? 0) * units.head.factor;
  const pipes = given.has('series') ? seriesParts(given, given.list('series'), 'run', around) : [];
  const equipment = given.has('equipment')
    ? equipmentParts(given, given.value('equipment'), 'equipment', units)
    : [];
  return {
    suction: ['suctionParallel', 'parallel'].flatMap((id) => parallelPart(given, id, around)),
    discharge: [
      ...ks.map((k, index) => lossPart(`k ${index + 1}`, coefficientInSI(k, 2, units), 2)),
      ...equipment,
      ...(written?.parts ?? []),
      ...pipes,
      ...parallelPart(given, 'returnParallel', around),
    ],
    staticHead,
    water: waterOf(given),
  };
}
