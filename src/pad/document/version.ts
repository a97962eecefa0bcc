/** The word every pad file starts with. */
export const padFormat = 'cubelaw-pad';

/** The version this program writes. Older ones are brought up by migrate.ts. */
export const padVersion = 2;
