/** The parts of the course, in teaching order. */
export const units = [
  { id: 'water-in-pipes', name: 'Water in pipes' },
  { id: 'the-pump', name: 'The pump' },
  { id: 'the-pool', name: 'The pool' },
  { id: 'the-day', name: 'The day and its price' },
  { id: 'capstone', name: 'Capstone' },
] as const;

/** Short name of a unit of the course. */
export type UnitId = (typeof units)[number]['id'];

/** Every short name, for checks of front matter. */
export const unitIds = units.map(({ id }) => id);
