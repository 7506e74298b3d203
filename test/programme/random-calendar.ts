import fc from 'fast-check';
import type { CalendarDays } from '../../core/programme/calendar';

/** Hours in quarters, perhaps over midnight; any weekdays; holidays about the days that tests look at. */
export const calendarDays: fc.Arbitrary<CalendarDays> = fc
  .record({
    from: fc.integer({ min: 0, max: 95 }),
    length: fc.integer({ min: 4, max: 95 }),
    pause: fc.integer({ min: 0, max: 3 }),
    weekdays: fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }),
    holidays: fc.array(fc.integer({ min: -16, max: 30 }), { maxLength: 12 }),
  })
  .map(({ from, length, pause, weekdays, holidays }) => ({
    from: from * 15,
    to: (from + length) * 15,
    pause: pause * 15,
    weekdays,
    holidays,
  }));
