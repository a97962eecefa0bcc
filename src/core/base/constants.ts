/** Standard acceleration of gravity [m/s2], exact by definition (NIST SP 811, B.8). */
export const standardGravity = 9.80665;

/** Celsius reading of absolute zero [K], exact by definition (NIST SP 811, B.8). */
export const celsiusZero = 273.15;

/** Minutes in a day [min]. */
export const minutesPerDay = 1440;

/** Joules in a kilowatt-hour [J/kWh], exact by definition (NIST SP 811, B.8). */
export const joulesPerKilowattHour = 3.6e6;
