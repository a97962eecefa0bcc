/** Where the browser keeps the pad. */
export const padKey = 'cubelaw-pad';
