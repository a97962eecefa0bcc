/** The local clock that a Green Button file describes: an offset and the rules of summer time. */
import { minutesTo1970, type ToLocal } from './series.ts';

/** LocalTimeParameters of ESPI; all in seconds but for the two rules. */
export interface ClockRules {
  readonly tzOffset: number;
  readonly dstOffset: number;
  /** Eight hexadecimal figures; null where there is no rule. */
  readonly dstStart: string | null;
  readonly dstEnd: string | null;
}

interface Rule {
  readonly month: number;
  /** 0: on the day of the month; 1: on the weekday on or after it; 2 to 6: first to fifth; 7: last. */
  readonly operator: number;
  readonly dayOfMonth: number;
  /** 1 Monday to 7 Sunday; 0 where a weekday does not matter. */
  readonly weekday: number;
  /** Seconds after midnight. */
  readonly second: number;
}

/**
 * Bits of a rule, from the least: seconds 12, hour 5, weekday 3, day of the month 5, operator 3,
 * month 4. Source: ESPI schema, DstRuleType (NAESB REQ.21), as in IEEE 2030.5; from memory.
 */
function readRule(text: string | null): Rule | null {
  if (text === null || !/^[0-9a-f]{8}$/i.test(text)) return null;
  const bits = Number.parseInt(text, 16);
  const part = (from: number, width: number) => Math.floor(bits / 2 ** from) % 2 ** width;
  const month = part(28, 4);
  if (month < 1 || month > 12) return null;
  return {
    month,
    operator: part(25, 3),
    dayOfMonth: part(20, 5),
    weekday: part(17, 3),
    second: 3600 * part(12, 5) + part(0, 12),
  };
}

const day = 86_400;

/** Seconds since 1970, on the wall clock, at which a rule takes hold in a year. */
function momentOf(rule: Rule, year: number): number {
  const first = Date.UTC(year, rule.month - 1, 1) / 1000;
  const length = (Date.UTC(year, rule.month, 1) / 1000 - first) / day;
  const weekdayOf = (date: number) =>
    ((new Date((first + (date - 1) * day) * 1000).getUTCDay() + 6) % 7) + 1;
  const onOrAfter = (date: number) => date + ((rule.weekday - weekdayOf(date) + 7) % 7);
  let date = Math.max(1, rule.dayOfMonth);
  if (rule.operator === 1) date = onOrAfter(date);
  if (rule.operator >= 2 && rule.operator <= 6) date = onOrAfter(1) + 7 * (rule.operator - 2);
  if (rule.operator === 7) date = onOrAfter(length - 6);
  return first + (date - 1) * day + rule.second;
}

/** From UTC to the local clock by these rules. */
export function clockOf(rules: ClockRules): ToLocal {
  const [start, end] = [readRule(rules.dstStart), readRule(rules.dstEnd)];
  const { tzOffset, dstOffset } = rules;
  const years = new Map<number, readonly [start: number, end: number]>();
  const isSummer = (standard: number): boolean => {
    if (start === null || end === null || dstOffset === 0) return false;
    const year = new Date(standard * 1000).getUTCFullYear();
    const bounds = years.get(year) ?? [momentOf(start, year), momentOf(end, year) - dstOffset];
    years.set(year, bounds);
    const [from, to] = bounds;
    return from < to ? standard >= from && standard < to : standard >= from || standard < to;
  };
  return (utcMinute) => {
    const standard = utcMinute * 60 + tzOffset;
    return minutesTo1970 + (standard + (isSummer(standard) ? dstOffset : 0)) / 60;
  };
}
