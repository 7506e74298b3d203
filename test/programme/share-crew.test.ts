import { describe, expect, it } from 'vitest';
import { roundTheClock } from '../../core/programme/calendar';
import { criticalPath } from '../../core/programme/critical-path';
import type { Network, NetworkTask } from '../../core/programme/network';
import { shareCrew } from '../../core/programme/share-crew';
import { at, fiveDays, moment } from './moments';

const crew = (hours: number, more: Partial<NetworkTask> = {}): NetworkTask => ({
  calendar: fiveDays,
  work: hours * 60,
  crew: true,
  ...more,
});
const monday = at('2026-03-02 08:00');
const friday = at('2026-03-06 08:00');
const datesOf = (network: Network) =>
  shareCrew(network).timings.map(({ start, finish }) => `${moment(start)} to ${moment(finish)}`);

describe('one crew in two zones (worked by hand)', () => {
  it('works in the one while the other dries', () => {
    const dates = datesOf({
      begin: monday,
      tasks: [crew(2), crew(1), crew(2), crew(1)],
      links: [
        { from: 0, to: 1, lag: 240 },
        { from: 2, to: 3, lag: 240 },
      ],
    });
    expect(dates).toEqual([
      '2026-03-02 08:00 to 2026-03-02 10:00',
      '2026-03-02 14:00 to 2026-03-02 15:00',
      '2026-03-02 10:00 to 2026-03-02 12:00',
      '2026-03-02 16:00 to 2026-03-02 17:00',
    ]);
  });

  it('fills the gap that a wait leaves with what is less urgent', () => {
    const { timings } = shareCrew({
      begin: monday,
      tasks: [crew(1), crew(6), crew(2)],
      links: [{ from: 0, to: 1, lag: 180 }],
    });
    expect(timings.map(({ start }) => moment(start))).toEqual([
      '2026-03-02 08:00',
      '2026-03-02 13:00',
      '2026-03-02 09:00',
    ]);
    expect(timings.map(({ critical }) => critical)).toEqual([true, true, false]);
  });
});

describe('what is not interrupted', () => {
  it('waits for the morning if the day is too short for it', () => {
    const tasks = [crew(6), crew(3, { unbroken: true })];
    expect(datesOf({ begin: monday, tasks, links: [{ from: 0, to: 1 }] })[1]).toBe(
      '2026-03-03 08:00 to 2026-03-03 11:00',
    );
  });

  it('begins with a day if it is longer than one', () => {
    const tasks = [crew(1), crew(10, { unbroken: true })];
    expect(datesOf({ begin: monday, tasks, links: [{ from: 0, to: 1 }] })[1]).toBe(
      '2026-03-03 08:00 to 2026-03-04 10:00',
    );
  });
});

describe('greatest waits (worked by hand)', () => {
  it('move the first coat past the weekend, when nobody would lay the second in time', () => {
    const coats: Network = {
      begin: friday,
      tasks: [crew(4), crew(2, { unbroken: true }), crew(2, { unbroken: true })],
      links: [
        { from: 0, to: 1 },
        { from: 1, to: 2, lag: 6 * 60, most: 24 * 60 },
      ],
    };
    // After Friday 14:00 the second coat would have to come on Saturday.
    const { timings, missed } = shareCrew(coats);
    expect(missed.size).toBe(0);
    expect(moment(timings[1]!.start)).toBe('2026-03-09 08:00');
    expect(moment(timings[2]!.start)).toBe('2026-03-10 08:00');
    expect(criticalPath(coats).timings.map(({ start }) => start)).toEqual(timings.map(({ start }) => start));
    // The first task could be done at leisure: the coat waits for the weekend, not for it.
    expect(timings[0]!.critical).toBe(false);
  });

  it('are said to be missed where no shifting helps, and nothing is put off for them', () => {
    const { timings, missed } = shareCrew({
      begin: monday,
      tasks: [crew(1), crew(3, { unbroken: true })],
      links: [{ from: 0, to: 1, lag: 6 * 60, most: 8 * 60 }],
    });
    expect([...missed]).toEqual([{ from: 0, to: 1, lag: 360, most: 480 }]);
    expect(timings.map(({ start }) => moment(start))).toEqual(['2026-03-02 08:00', '2026-03-03 08:00']);
  });

  it('shorter than the least wait are missed at once', () => {
    const link = { from: 0, to: 1, lag: 360, most: 120 };
    const network: Network = { begin: monday, tasks: [crew(1), crew(1)], links: [link] };
    expect([...shareCrew(network).missed]).toEqual([link]);
    expect([...criticalPath(network).missed]).toEqual([link]);
  });

  it('that cross one another do not stop the plan', () => {
    const event: NetworkTask = { calendar: roundTheClock, work: 0 };
    const { timings } = shareCrew({
      begin: monday,
      tasks: [event, event, crew(1), crew(1), crew(1)],
      links: [
        { from: 0, to: 2, most: 6000 },
        { from: 0, to: 3, most: 6000 },
        { from: 1, to: 4, most: 6000 },
        { from: 1, to: 2 },
        { from: 2, to: 4 },
      ],
    });
    expect(timings).toHaveLength(5);
    expect(timings[4]!.start).toBeGreaterThanOrEqual(timings[2]!.finish);
  });
});

describe('a ring of links', () => {
  it('is a fault of whoever made it', () => {
    const network = {
      begin: 0,
      tasks: [crew(1), crew(1)],
      links: [
        { from: 0, to: 1 },
        { from: 1, to: 0 },
      ],
    };
    expect(() => criticalPath(network)).toThrow('ring');
  });
});
