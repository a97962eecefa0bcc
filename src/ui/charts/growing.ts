import { useRef } from 'preact/hooks';
import type { Side } from './Frame.tsx';

/**
 * A side that must grow with what is drawn on it: it never shrinks while the picture stands, and it
 * tells where it ended before it grew, so that a picture drawn smaller does not pass for less.
 * Another `key` begins anew.
 */
export function useGrowing(wished: Side, key: string): Side {
  const kept = useRef({ key, side: wished });
  if (kept.current.key !== key) kept.current = { key, side: wished };
  const { side } = kept.current;
  if (wished.axis.max > side.axis.max) {
    kept.current.side = { ...wished, former: side.axis.max };
  }
  return kept.current.side;
}
