/**
 * Exact sizes of trade units in SI, written as the products that define them.
 * Source: NIST SP 811 (2008), appendix B.8, unless a line says otherwise.
 */

/** Inch [m]. */
export const inch = 0.0254;
/** International foot [m]. */
export const foot = 12 * inch;
/** US gallon [m3]: 231 cubic inches. */
export const gallon = 231 * inch ** 3;
/** Litre [m3]. */
export const litre = 1e-3;
/** Minute [s]. */
export const minute = 60;
/** Hour [s]. */
export const hour = 3600;
/** Avoirdupois pound [kg]. */
export const pound = 0.45359237;
/** Pound-force [N]: the pound times standard gravity. */
export const poundForce = 4.4482216152605;
/** Pound-force per square inch [Pa]. */
export const psi = poundForce / inch ** 2;
/** Conventional inch of mercury [Pa]; a seven-figure convention, not an exact product. */
export const inchOfMercury = 3386.389;
/** Mechanical horsepower [W]: 550 foot pounds-force a second. */
export const horsepower = 550 * foot * poundForce;
/** International Table British thermal unit [J]: 2326 J/kg per Btu/lb, times the pound. */
export const britishThermalUnit = 2326 * pound;
/** Kilowatt hour [J]. */
export const kilowattHour = 1000 * hour;
/** US gallon per minute [m3/s]. */
export const gallonPerMinute = (231 * inch ** 3) / minute;
/** Degree Fahrenheit as a difference [K]. */
export const fahrenheitDegree = 5 / 9;
