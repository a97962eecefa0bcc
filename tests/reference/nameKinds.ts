/** What a name stands for, and one line of the tables of names. */
import type { Dimension } from './keyUnits.ts';

/**
 * `number` is a bare number or a ratio in whatever unit, `ratio` one whose unit must be spelled out
 * (a bare "speed" is not a ratio). `text` stands for words, `structure` for lists and objects, which
 * rules read themselves.
 */
export type Kind = Dimension | 'number' | 'text' | 'structure' | 'flag';

/** An empty spelling is a key that is nothing but a unit, such as "hours" or "inhg". */
export type NameRow = readonly [name: string, kind: Kind, ...spellings: string[]];
