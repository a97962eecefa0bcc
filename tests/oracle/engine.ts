/**
 * The same circuits in a general water-network engine (npm epanet-js, OWA-EPANET), as an oracle that
 * shares no line with the core. Networks are written as an input file in litres per second.
 */
import { LinkProperty, Project, Workspace } from 'epanet-js';
import type { Branch, Circuit, CircuitPart, ParallelPart } from '#core/hydraulics/circuitParts.ts';
import { flowArea } from '#core/hydraulics/pipe.ts';

/** Three points of H = A - B Q^C, the first at no flow [m3/s, m]. */
export type ThreePoints = readonly [Point, Point, Point];
interface Point {
  readonly flow: number;
  readonly head: number;
}

const gravity = 9.80665;
const litres = 1000;

/** A straight chain of parts between two groups, all K of it on its first pipe of that bore. */
interface Line {
  readonly bore: number;
  length: number;
  roughness: number;
  k: number;
}

interface Network {
  readonly junctions: string[];
  readonly reservoirs: string[];
  readonly pipes: string[];
  nodes: number;
  links: number;
}

/** Equipment with exponent 2 as a K on the bore of the line that it stands in. */
function equipmentK(part: Extract<CircuitPart, { kind: 'equipment' }>, bore: number): number {
  if (part.exponent !== 2) throw new Error('the engine is given quadratic equipment only');
  const perFlow = (part.factor * part.referenceHead) / part.referenceFlow ** 2;
  return perFlow * 2 * gravity * flowArea(bore) ** 2;
}

function linesOf(parts: readonly Exclude<CircuitPart, ParallelPart>[]): Line[] {
  const lines: Line[] = [];
  const lineOf = (bore: number) => {
    const found = lines.find((line) => line.bore === bore);
    if (found !== undefined) return found;
    const line = { bore, length: 0, roughness: 0, k: 0 };
    lines.push(line);
    return line;
  };
  for (const part of parts) {
    if (part.kind === 'equipment') continue;
    const line = lineOf(part.bore);
    if (part.kind === 'fitting') line.k += part.k;
    else {
      line.length += part.length;
      line.roughness = part.roughness;
    }
  }
  const first = lines[0];
  for (const part of parts) {
    if (part.kind !== 'equipment') continue;
    if (first === undefined) throw new Error('equipment needs a pipe beside it');
    first.k += equipmentK(part, first.bore);
  }
  return lines;
}

function addNode(network: Network): string {
  network.nodes += 1;
  const id = `n${network.nodes}`;
  network.junctions.push(`${id} -50 0`);
  return id;
}

function addReservoir(network: Network, head: number): string {
  network.nodes += 1;
  const id = `r${network.nodes}`;
  network.reservoirs.push(`${id} ${head}`);
  return id;
}

function addPipe(network: Network, from: string, to: string, line: Line, checked: boolean): void {
  network.links += 1;
  const { length, bore, roughness, k } = line;
  const status = checked ? 'CV' : 'Open';
  network.pipes.push(
    `p${network.links} ${from} ${to} ${length} ${bore * 1000} ${roughness * 1000} ${k} ${status}`,
  );
}

/** Lays parts from one node to the next; `to` may be given, or a new node is made. */
function addParts(
  network: Network,
  parts: readonly CircuitPart[],
  from: string,
  to: string | undefined,
  cv = false,
): string {
  const chunks: (ParallelPart | Exclude<CircuitPart, ParallelPart>[])[] = [];
  for (const part of parts) {
    const last = chunks.at(-1);
    if (part.kind === 'parallel') chunks.push(part);
    else if (Array.isArray(last)) last.push(part);
    else chunks.push([part]);
  }
  let here = from;
  chunks.forEach((chunk, index) => {
    const end = index === chunks.length - 1 && to !== undefined ? to : addNode(network);
    if (Array.isArray(chunk)) addChain(network, here, end, linesOf(chunk), cv);
    else for (const branch of chunk.branches) addParts(network, branch.parts, here, end, cv);
    here = end;
  });
  return here;
}

function addChain(network: Network, from: string, to: string, lines: Line[], cv: boolean): void {
  let here = from;
  lines.forEach((line, index) => {
    const end = index === lines.length - 1 ? to : addNode(network);
    addPipe(network, here, end, line, cv);
    here = end;
  });
}

/** The last group of the discharge may end each branch at a height of its own. */
function addReturns(network: Network, branches: readonly Branch[], from: string): void {
  for (const branch of branches) {
    addParts(network, branch.parts, from, addReservoir(network, branch.lift), true);
  }
}

function inputText(points: ThreePoints, circuit: Circuit): string {
  const network: Network = { junctions: [], reservoirs: [], pipes: [], nodes: 0, links: 0 };
  const pool = addReservoir(network, 0);
  const inlet = addParts(network, circuit.suction, pool, undefined);
  const outlet = addNode(network);
  const last = circuit.discharge.at(-1);
  const lifted = last?.kind === 'parallel' && last.branches.some((branch) => branch.lift > 0);
  if (lifted) {
    const before = addParts(network, circuit.discharge.slice(0, -1), outlet, undefined);
    addReturns(network, last.branches, before);
  } else {
    const end = addReservoir(network, circuit.staticHead);
    addParts(network, circuit.discharge, outlet, end);
  }
  const curve = points.map(({ flow, head }) => `curve ${flow * litres} ${head}`);
  return [
    '[JUNCTIONS]',
    ...network.junctions,
    '[RESERVOIRS]',
    ...network.reservoirs,
    '[PIPES]',
    ...network.pipes,
    '[PUMPS]',
    `pump ${inlet} ${outlet} HEAD curve`,
    '[CURVES]',
    ...curve,
    '[OPTIONS]',
    'UNITS LPS',
    'HEADLOSS D-W',
    `VISCOSITY ${circuit.water.kinematicViscosity}`,
    'ACCURACY 1e-6',
    'TRIALS 200',
    '[TIMES]',
    'DURATION 0',
    '[END]',
  ].join('\n');
}

/** A network held open, so that only the speed changes between solves. */
export interface EngineModel {
  /** Flow [m3/s] at a speed ratio [-]. */
  flowAt(ratio: number): number;
  close(): void;
}

/** Opens a circuit in the engine. */
export async function openEngine(points: ThreePoints, circuit: Circuit): Promise<EngineModel> {
  const workspace = new Workspace();
  await workspace.loadModule();
  const project = new Project(workspace);
  workspace.writeFile('circuit.inp', inputText(points, circuit));
  project.open('circuit.inp', 'report.rpt', 'out.bin');
  project.openH();
  const pump = project.getLinkIndex('pump');
  return {
    flowAt(ratio) {
      project.setLinkValue(pump, LinkProperty.InitSetting, ratio);
      project.initH(10);
      project.runH();
      return project.getLinkValue(pump, LinkProperty.Flow) / litres;
    },
    close() {
      project.closeH();
      project.close();
    },
  };
}
