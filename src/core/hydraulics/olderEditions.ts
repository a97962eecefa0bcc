/**
 * Figures of older editions that are still met: in handbooks on the shelf and in pipe in the ground.
 * Everything else in the core rests on the present edition.
 */
import { CoreError } from '#core/base/errors.ts';

// Crane TP-410 page A-26, older printings: nominal size [in], fully turbulent friction factor [-].
// Read in a scan, but for 2.5, 4 and 6 in, which are from memory.
const olderFriction: readonly (readonly [number, number])[] = [
  [0.75, 0.025],
  [1, 0.023],
  [1.25, 0.022],
  [1.5, 0.021],
  [2, 0.019],
  [2.5, 0.018],
  [3, 0.018],
  [4, 0.017],
  [5, 0.016],
  [6, 0.015],
];

// DIN 8062 dimension chart, series 4 (10 bar) and 5 (16 bar): outside diameter, walls [mm]. Up to
// 90 mm EN ISO 1452-2 has the same walls.
const olderWalls: readonly (readonly [number, number, number])[] = [
  [50, 2.4, 3.7],
  [63, 3, 4.7],
  [75, 3.6, 5.6],
  [90, 4.3, 6.7],
  [110, 5.3, 8.2],
];

/**
 * Fully turbulent friction factor that older printings of Crane's handbook tabulate.
 *
 * Law: the printed table; the 2009 edition prints about 0.001 less, as its formula gives.
 * @param nominalInches Nominal size of pipe [in], one of 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6.
 * @returns Friction factor f_T [-], printed to 0.001.
 * @throws CoreError when the size is not in the table.
 * Accuracy: as printed.
 * Source: Crane TP-410, page A-26, printings before 2009.
 * @example olderTurbulentFriction(2) // 0.01900
 */
export function olderTurbulentFriction(nominalInches: number): number {
  const row = olderFriction.find(([nominal]) => nominal === nominalInches);
  if (!row) throw new CoreError('nominalInches', nominalInches, 'a size of the table');
  return row[1];
}

/**
 * Least wall of metric PVC-U pressure pipe laid to the older standard.
 *
 * Law: the printed table.
 * @param outsideMillimetres Outside diameter [mm], one of 50, 63, 75, 90, 110.
 * @param series Pressure class [-], pn10 or pn16.
 * @returns Wall [m], printed to 0.1 mm.
 * @throws CoreError when the size is not in the table.
 * Accuracy: as printed.
 * Source: DIN 8062, 1988, dimension chart (read in a scan; year from memory).
 * @example olderWall(110, 'pn10') // 0.005300
 */
export function olderWall(outsideMillimetres: number, series: 'pn10' | 'pn16'): number {
  const row = olderWalls.find(([outside]) => outside === outsideMillimetres);
  if (!row) throw new CoreError('outsideMillimetres', outsideMillimetres, 'a size of the table');
  return (series === 'pn10' ? row[1] : row[2]) / 1000;
}
