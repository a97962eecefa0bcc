import type { CalendarDate } from '#core/calendar.ts';

/** Day to be priced while no clock has been read yet; any would do. */
export const someDay: CalendarDate = { year: 2027, month: 7, day: 14 };
