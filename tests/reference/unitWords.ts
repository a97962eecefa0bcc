/** How keys spell units otherwise than the table of units does. */

/** Words and longer spellings of units, and what keys mostly write. */
const sameUnit: Readonly<Record<string, string>> = {
  gallon: 'gal',
  gallons: 'gal',
  usgal: 'gal',
  litre: 'l',
  litres: 'l',
  liter: 'l',
  liters: 'l',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inches: 'in',
  watt: 'w',
  watts: 'w',
  horsepower: 'hp',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  minute: 'min',
  minutes: 'min',
  sec: 's',
  second: 's',
  seconds: 's',
  celsius: 'c',
  fahrenheit: 'f',
  kelvin: 'k',
  volt: 'v',
  volts: 'v',
  amp: 'a',
  amps: 'a',
  lbs: 'lb',
  grams: 'g',
  gram: 'g',
  percentage: 'percent',
  kgal: '1000_gal',
  kilogallon: '1000_gal',
};

/** A unit in the shortest words, without "per" and "us", as the table of units is searched. */
export const unitWords = (spelling: string): string =>
  spelling
    .split('_')
    .filter((word) => !['per', 'us', 'deg'].includes(word))
    .map((word) => (Object.hasOwn(sameUnit, word) ? sameUnit[word] : word))
    .join('_');
