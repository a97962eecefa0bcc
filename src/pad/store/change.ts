import { batch } from '@preact/signals';

/**
 * Sets signals in one batch. What a listener throws is reported once all are set: it must not keep the
 * caller from storing what the reader entered.
 */
export function change(set: () => void): void {
  try {
    batch(set);
  } catch (error) {
    reportError(error);
  }
}
