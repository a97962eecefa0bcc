/**
 * The one error the core throws when a caller breaks a function's contract.
 *
 * It always carries the field at fault, the value given and what is allowed, so that a caller can
 * turn it into a sentence in the reader's own unit. A physical impossibility (a pump too slow to
 * lift water) is not an error: functions report it as a value.
 */
export class CoreError extends Error {
  readonly field: string;
  readonly value: unknown;
  readonly allowed: string;

  constructor(field: string, value: unknown, allowed: string) {
    super(`${field} is ${String(value)}; it must be ${allowed}.`);
    this.name = 'CoreError';
    this.field = field;
    this.value = value;
    this.allowed = allowed;
  }
}

/**
 * Gives back `value` when it is finite and within [min, max]; throws a CoreError otherwise.
 * @internal
 */
export function requireBetween(
  field: string,
  value: number,
  min: number,
  max: number,
  unit: string,
): number {
  if (!Number.isFinite(value) || value < min || value > max) {
    throw new CoreError(field, value, `a number from ${min} to ${max} ${unit}`.trim());
  }
  return value;
}

/**
 * Gives back `value` when it is finite and greater than zero; throws a CoreError otherwise.
 * @internal
 */
export function requirePositive(field: string, value: number, unit: string): number {
  if (!Number.isFinite(value) || value <= 0) {
    throw new CoreError(field, value, `a number greater than 0 ${unit}`.trim());
  }
  return value;
}

/**
 * Gives back `value` when it is finite and not negative; throws a CoreError otherwise.
 * @internal
 */
export function requireNotNegative(field: string, value: number, unit: string): number {
  if (!Number.isFinite(value) || value < 0) {
    throw new CoreError(field, value, `0 ${unit} or more`.replace('  ', ' '));
  }
  return value;
}
