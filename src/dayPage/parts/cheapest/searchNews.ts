import type { CheapestDay } from '#core/planner/cheapestDay.ts';
import type { SearchProgress } from '#core/planner/fewChanges.ts';

/** What the worker sends back. */
export type SearchNews =
  | { readonly kind: 'progress'; readonly progress: SearchProgress }
  | { readonly kind: 'done'; readonly found: CheapestDay }
  | { readonly kind: 'failed' };
