/**
 * Liquid water at 0.1 MPa, by temperature: density, viscosity, heat capacity, vapour pressure.
 *
 * Nothing else in the core holds a density or a viscosity of its own.
 */
import { celsiusZero } from '#core/base/constants.ts';
import { requireBetween } from '#core/base/errors.ts';

/** Water as the pool holds it, all at one temperature and 0.1 MPa. */
export interface Water {
  /** Temperature [degC], 0 to 45. */
  readonly temperature: number;
  /** Density [kg/m3], about 990 to 1000. */
  readonly density: number;
  /** Dynamic viscosity [Pa s], about 0.0006 to 0.0018. */
  readonly dynamicViscosity: number;
  /** Kinematic viscosity [m2/s], dynamic viscosity over density, about 0.6e-6 to 1.8e-6. */
  readonly kinematicViscosity: number;
  /** Vapour pressure, absolute [Pa], about 600 to 9600. */
  readonly vapourPressure: number;
  /** Specific heat capacity at constant pressure [J/(kg K)], about 4180 to 4220. */
  readonly specificHeat: number;
}

/** One term of a published sum: coefficient times base to the exponent. */
type Term = readonly [coefficient: number, exponent: number];

// Specific gas constant of water [J/(kg K)], reducing temperature [K] and reference pressure [Pa]
// of IAPWS SR6-08(2011), with the two temperatures its reduced variables lean on [K].
const gasConstant = 461.51805;
const reducingTemperature = 10;
const referencePressure = 1e5;
const upperTemperature = 593;
const lowerTemperature = 232;

// IAPWS SR6-08(2011), equation for specific volume: terms in alpha, then in beta.
const volumeConstant = 1.93763157e-2;
const volumeAlpha: readonly Term[] = [
  [6.74458446e3, 4],
  [-2.22521604e5, 5],
  [1.00231247e8, 7],
  [-1.63552118e9, 8],
  [8.32299658e9, 9],
];
const volumeBeta: readonly Term[] = [
  [5.78545292e-3, 1],
  [-1.53195665e-2, 2],
  [3.11337859e-2, 3],
  [-4.23546241e-2, 4],
  [3.38713507e-2, 5],
  [-1.19946761e-2, 6],
];

// IAPWS SR6-08(2011), Gibbs energy: the terms whose second derivative is the heat capacity.
const heatConstant = -8.983025854;
const gibbsAlpha: readonly Term[] = [
  [-1.661470539e5, 4],
  [2.70878164e6, 5],
  [-1.557191544e8, 7],
];
const gibbsBeta: readonly Term[] = [
  [-8.237426256e-1, 2],
  [1.908956353, 3],
  [-2.017597384, 4],
  [8.546361348e-1, 5],
];

// IAPWS SR6-08(2011), viscosity: terms in T / 300 K [micropascal second].
const viscosityTerms: readonly Term[] = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
];

const coldest = -20;
const hottest = 110;

function sumOfTerms(terms: readonly Term[], base: number): number {
  let sum = 0;
  for (const [coefficient, exponent] of terms) sum += coefficient * base ** exponent;
  return sum;
}

/** Sum of n (n + 1) a x^(n + 2): the second derivative of a sum of terms in a reduced variable. */
function secondDerivative(terms: readonly Term[], base: number): number {
  let sum = 0;
  for (const [coefficient, exponent] of terms) {
    sum += exponent * (exponent + 1) * coefficient * base ** (exponent + 2);
  }
  return sum;
}

function liquidKelvin(temperature: number): number {
  return celsiusZero + requireBetween('temperature', temperature, coldest, hottest, 'degC');
}

/**
 * Density of liquid water at 0.1 MPa.
 *
 * Law: 1/rho = (R Tr / p0) (a5 + sum a alpha^n + sum b beta^m), alpha = 10/(593 - T), beta = 10/(T - 232), T in kelvin.
 * @param temperature Temperature [degC], -20 to 110.
 * @returns Density [kg/m3].
 * @throws CoreError when the temperature lies outside its range or is not a number.
 * Accuracy: gives the release's printed values at 260 K and 298.15 K to nine figures; within 1e-6 of IAPWS R6-95 at 26 degC.
 * Source: IAPWS SR6-08(2011), density; Patek et al., J. Phys. Chem. Ref. Data 38, 21 (2009), doi 10.1063/1.3043575.
 * @example liquidDensity(25) // 997.047013
 */
export function liquidDensity(temperature: number): number {
  const kelvin = liquidKelvin(temperature);
  const alpha = reducingTemperature / (upperTemperature - kelvin);
  const beta = reducingTemperature / (kelvin - lowerTemperature);
  const reducedVolume =
    volumeConstant + sumOfTerms(volumeAlpha, alpha) + sumOfTerms(volumeBeta, beta);
  return referencePressure / (gasConstant * reducingTemperature * reducedVolume);
}

/**
 * Dynamic viscosity of liquid water at 0.1 MPa.
 *
 * Law: mu = 1e-6 (280.68 t^-1.9 + 511.45 t^-7.7 + 61.131 t^-19.6 + 0.45903 t^-40), t = T / 300 K.
 * @param temperature Temperature [degC], -20 to 110.
 * @returns Dynamic viscosity [Pa s].
 * @throws CoreError when the temperature lies outside its range or is not a number.
 * Accuracy: gives the release's printed values at 260 K and 298.15 K to nine figures; within 6e-5 of IAPWS R12-08 at 26 degC.
 * Source: IAPWS SR6-08(2011), viscosity; Patek et al., J. Phys. Chem. Ref. Data 38, 21 (2009), doi 10.1063/1.3043575.
 * @example liquidViscosity(25) // 0.000889996774
 */
export function liquidViscosity(temperature: number): number {
  return 1e-6 * sumOfTerms(viscosityTerms, liquidKelvin(temperature) / 300);
}

/**
 * Specific heat capacity of liquid water at constant pressure, 0.1 MPa.
 *
 * Law: cp = -R (c3 + tau (sum n (n + 1) a alpha^(n + 2) + sum m (m + 1) b beta^(m + 2))), tau = T / 10 K.
 * @param temperature Temperature [degC], -20 to 110.
 * @returns Specific heat capacity [J/(kg K)].
 * @throws CoreError when the temperature lies outside its range or is not a number.
 * Accuracy: gives the release's printed values at 260 K and 298.15 K to nine figures.
 * Source: IAPWS SR6-08(2011), isobaric heat capacity; Patek et al., J. Phys. Chem. Ref. Data 38, 21 (2009), doi 10.1063/1.3043575.
 * @example liquidSpecificHeat(25) // 4181.446
 */
export function liquidSpecificHeat(temperature: number): number {
  const kelvin = liquidKelvin(temperature);
  const tau = kelvin / reducingTemperature;
  const alpha = reducingTemperature / (upperTemperature - kelvin);
  const beta = reducingTemperature / (kelvin - lowerTemperature);
  const curvature = secondDerivative(gibbsAlpha, alpha) + secondDerivative(gibbsBeta, beta);
  return -gasConstant * (heatConstant + tau * curvature);
}

/**
 * Vapour pressure of water: the absolute pressure at which it boils.
 *
 * Law: p = 1e6 (2C / (-B + (B^2 - 4AC)^(1/2)))^4, with A, B, C quadratics in v = T + n9 / (T - n10), T in kelvin.
 * @param temperature Temperature [degC], 0 to 373.
 * @returns Vapour pressure, absolute [Pa].
 * @throws CoreError when the temperature lies outside its range or is not a number.
 * Accuracy: gives the release's printed values at 300 K and 500 K to nine figures; within 1e-4 of IAPWS R6-95 at 26 degC.
 * Source: IAPWS R7-97(2012), region 4, equations 29 and 30, table 34.
 * @example vapourPressure(26.85) // 3536.58941
 */
export function vapourPressure(temperature: number): number {
  const kelvin = celsiusZero + requireBetween('temperature', temperature, 0, 373, 'degC');
  const v = kelvin - 0.23855557567849 / (kelvin - 0.65017534844798e3);
  const a = (v + 0.11670521452767e4) * v - 0.72421316703206e6;
  const b = (-0.17073846940092e2 * v + 0.1202082470247e5) * v - 0.32325550322333e7;
  const c = (0.1491510861353e2 * v - 0.48232657361591e4) * v + 0.40511340542057e6;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  return 1e6 * root ** 4;
}

/**
 * Everything the core needs to know about pool water at one temperature.
 *
 * Law: the formulas of this module together; kinematic viscosity = dynamic viscosity / density.
 * @param temperature Temperature [degC], 0 to 45.
 * @returns The water's properties, each with its unit on the field [see Water].
 * @throws CoreError when the temperature lies outside its range or is not a number: pools freeze below it and nobody bathes above it.
 * Accuracy: that of the single formulas; pressure from 0.05 to 0.5 MPa moves density by less than 2e-4 (not corrected).
 * Source: IAPWS SR6-08(2011) and R7-97(2012) region 4.
 * @example water(20).kinematicViscosity * 1e6 // 1.0033667563
 */
export function water(temperature: number): Water {
  requireBetween('temperature', temperature, 0, 45, 'degC');
  const density = liquidDensity(temperature);
  const dynamicViscosity = liquidViscosity(temperature);
  return {
    temperature,
    density,
    dynamicViscosity,
    kinematicViscosity: dynamicViscosity / density,
    vapourPressure: vapourPressure(temperature),
    specificHeat: liquidSpecificHeat(temperature),
  };
}
