/** Where the browser keeps the pad last worked on. */
export const padKey = 'cubelaw-pad';
/** Which pad of the shelf is open: in a tab for itself, and in the browser for the next visit. */
export const openKey = 'cubelaw-open';
