import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/*
 * Contrast: WCAG 2.2, success criterion 1.4.3 and the definition of relative luminance.
 * Colour blindness: Machado, Oliveira and Fernandes 2009, matrices of full severity, from memory.
 * Difference: Euclidean in Oklab (Ottosson 2020, matrices from memory); 0.1 is our own threshold.
 */

type Rgb = readonly [number, number, number];
type Matrix = readonly [Rgb, Rgb, Rgb];

const sheet = readFileSync('src/styles/tokens.css', 'utf8');
const quantities = ['flow', 'head', 'power', 'velocity', 'money'] as const;
const looks = ['light', 'dark'] as const;

const sights: Record<string, Matrix> = {
  full: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  'red-blind': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'green-blind': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'blue-blind': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

for (const [index, look] of looks.entries()) {
  describe(`by ${look}`, () => {
    const texts = [...quantities.map((name) => `${name}-ink`), 'ink', 'ink-soft', 'accent'];
    for (const ink of texts) {
      it(`${ink} reads on every ground`, () => {
        for (const ground of ['ground', 'sheet', 'well']) {
          expect(contrast(token(ink, index), token(ground, index))).toBeGreaterThanOrEqual(4.5);
        }
      });
    }

    for (const meaning of ['good', 'warn', 'stop']) {
      it(`${meaning}-ink reads on its own ground and on paper`, () => {
        for (const ground of [`${meaning}-ground`, 'ground', 'sheet']) {
          const ratio = contrast(token(`${meaning}-ink`, index), token(ground, index));
          expect(ratio).toBeGreaterThanOrEqual(4.5);
        }
      });
    }

    for (const [sight, matrix] of Object.entries(sights)) {
      it(`quantities stay apart for ${sight} sight`, () => {
        const seen = quantities.map((name) => oklab(see(matrix, token(`${name}-ink`, index))));
        for (const [i, one] of seen.entries()) {
          for (const other of seen.slice(i + 1)) expect(distance(one, other)).toBeGreaterThan(0.1);
        }
      });
    }
  });
}

it('every quantity has a dash pattern of its own', () => {
  const dashes = quantities.map((name) => new RegExp(`--${name}-dash: ([^;]+);`).exec(sheet)?.[1]);
  expect(new Set(dashes).size).toBe(quantities.length);
  expect(dashes).not.toContain(undefined);
});

function token(name: string, index: number): Rgb {
  const pair = new RegExp(`--${name}: light-dark\\((#\\w{6}), (#\\w{6})\\)`).exec(sheet);
  const hex = pair?.[index + 1];
  if (hex === undefined) throw new Error(`No token --${name} with two colours.`);
  const part = (at: number) => linear(Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  return [part(1), part(3), part(5)];
}

function linear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function luminance([red, green, blue]: Rgb): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: Rgb, other: Rgb): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function times(matrix: Matrix, [x, y, z]: Rgb): Rgb {
  const row = ([a, b, c]: Rgb) => a * x + b * y + c * z;
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

function see(matrix: Matrix, colour: Rgb): Rgb {
  const [red, green, blue] = times(matrix, colour).map((part) => Math.min(1, Math.max(0, part)));
  return [red ?? 0, green ?? 0, blue ?? 0];
}

function oklab(colour: Rgb): Rgb {
  const [l, m, s] = times(
    [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005],
    ],
    colour,
  ).map(Math.cbrt);
  return times(
    [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766],
    ],
    [l ?? 0, m ?? 0, s ?? 0],
  );
}

function distance(one: Rgb, other: Rgb): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}
