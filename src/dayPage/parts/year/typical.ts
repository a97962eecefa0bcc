/**
 * A year to begin with where nobody has measured one. Invented, near what an unheated outdoor pool of
 * a mild region might see; the page says so.
 */
export const typicalYear = {
  /** Mean temperature of the water by month [degC]. */
  waterTemperatures: [7, 8, 11, 15, 20, 25, 28, 28, 24, 18, 12, 8],
  /** Hours of frost by month [h]. */
  frostHours: [120, 90, 30, 0, 0, 0, 0, 0, 0, 0, 30, 100],
} as const;
