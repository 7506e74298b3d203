import fc from 'fast-check';
import { workCalendar, type CalendarDays } from '../../core/programme/calendar';
import type { Network, NetworkLink, NetworkTask } from '../../core/programme/network';
import { calendarDays } from './random-calendar';

export interface RandomNetwork {
  readonly network: Network;
  /** By task. */
  readonly days: readonly CalendarDays[];
}

export const roundTheClockDays: CalendarDays = { from: 0, to: 1440, weekdays: [1, 2, 3, 4, 5, 6, 7] };

interface Options {
  readonly most: number;
  readonly longest: number;
  readonly calendars: fc.Arbitrary<CalendarDays>;
  readonly windows: boolean;
}

/** Links lead from lower to higher numbers; a third of the tasks need no crew and go round the clock. */
export function randomNetwork({ most, longest, calendars, windows }: Options): fc.Arbitrary<RandomNetwork> {
  return fc.integer({ min: 1, max: most }).chain((count) => {
    const task = fc.record({
      work: fc.integer({ min: 0, max: longest }),
      unbroken: fc.boolean(),
      waits: fc.integer({ min: 0, max: 2 }),
    });
    const link = fc.record({
      a: fc.nat(count - 1),
      b: fc.nat(count - 1),
      lag: fc.integer({ min: 0, max: longest }),
      working: fc.boolean(),
      most: fc.option(fc.integer({ min: 0, max: 3000 })),
    });
    return fc
      .tuple(
        calendars,
        fc.array(task, { minLength: count, maxLength: count }),
        fc.array(link, { maxLength: count * 2 }),
        fc.integer({ min: -3000, max: 3000 }),
      )
      .map(([crewDays, tasks, links, begin]): RandomNetwork => {
        const calendar = workCalendar(crewDays);
        const clock = workCalendar(roundTheClockDays);
        const all = tasks.map(({ work, unbroken, waits }): NetworkTask =>
          waits === 0 ? { calendar: clock, work } : { calendar, work, unbroken, crew: true },
        );
        const forward = links.flatMap(({ a, b, lag, working, most: wait }): NetworkLink[] => {
          if (a === b) return [];
          const ends = { from: Math.min(a, b), to: Math.max(a, b) };
          if (working) return [{ ...ends, lag, lagRuns: 'working' }];
          return [{ ...ends, lag, ...(windows && wait !== null && { most: lag + wait }) }];
        });
        return {
          network: { begin, tasks: all, links: forward },
          days: tasks.map(({ waits }) => (waits === 0 ? roundTheClockDays : crewDays)),
        };
      });
  });
}

export const small = { most: 8, longest: 600, calendars: calendarDays, windows: false } as const;
