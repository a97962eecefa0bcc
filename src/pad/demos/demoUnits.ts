/** The units the examples are written in, as functions that give the stored value. */
import { toSI } from '#units/convert.ts';

export const ft = (value: number): number => toSI('length', value, 'ft');
export const ftHead = (value: number): number => toSI('head', value, 'ft');
export const gpm = (value: number): number => toSI('flow', value, 'gpm');
export const cubicMetresPerHour = (value: number): number => toSI('flow', value, 'm3/h');
export const ftPerSecond = (value: number): number => toSI('velocity', value, 'ft/s');
export const psi = (value: number): number => toSI('pressure', value, 'psi');
export const kilopascals = (value: number): number => toSI('pressure', value, 'kPa');
export const inchesOfMercury = (value: number): number => toSI('vacuum', value, 'inHg');

/** The first minute of an hour of the day. */
export const hour = (clock: number): number => clock * 60;
