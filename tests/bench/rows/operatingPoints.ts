import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { speedSweep } from '#core/pump/operatingPoint.ts';
import { pumpFromThreePoints } from '#core/pump/pump.ts';
import { branched, pumpPoints, series } from '../../oracle/circuits.ts';
import { openEngine } from '../../oracle/engine.ts';
import type { Row, RowMaker } from '../row.ts';

const speeds = 64;
const ratios = Array.from({ length: speeds }, (_, i) => 0.3 + (0.7 * i) / (speeds - 1));
const curve = pumpFromThreePoints(pumpPoints);

async function against(name: string, circuit: Circuit, reach: number): Promise<Row> {
  const engine = await openEngine(pumpPoints, circuit);
  return {
    name,
    unit: 'operating points',
    reach,
    ways: [
      {
        name: 'core',
        units: speeds,
        run: () =>
          speedSweep(curve, circuit, ratios).reduce(
            (sum, point) => sum + (point.kind === 'flowing' ? point.flow : 0),
            0,
          ),
      },
      {
        name: 'engine',
        units: speeds,
        run: () => ratios.reduce((sum, ratio) => sum + engine.flowAt(ratio), 0),
      },
    ],
    close: engine.close,
  };
}

export const rows: readonly RowMaker[] = [
  () => against('series circuit, loaded filter, 27 degC', series, 8),
  () => against('two suction lines, three returns', branched, 3),
];
