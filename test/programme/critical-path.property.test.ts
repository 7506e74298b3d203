import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { workBefore, type CalendarDays } from '../../core/programme/calendar';
import { criticalPath } from '../../core/programme/critical-path';
import type { Network, NetworkTask } from '../../core/programme/network';
import { worksAt } from './naive-calendar';
import { randomNetwork, roundTheClockDays, small } from './random-network';

const clock = randomNetwork({ ...small, calendars: fc.constant(roundTheClockDays) }).map(({ network }) => ({
  ...network,
  // A lag of working minutes is one of any minutes where work never rests.
  tasks: network.tasks.map(({ calendar, work }) => ({ calendar, work })),
}));

/** Every path of a network from its first task to its last, by following every link. */
function allPaths({ tasks, links }: Network): number[][] {
  const goOn = (path: readonly number[]): number[][] => {
    const next = links.filter(({ from }) => from === path.at(-1));
    return [[...path], ...next.flatMap(({ to }) => goOn([...path, to]))];
  };
  return tasks.flatMap((_, task) => goOn([task]));
}

/** The longest way along a path of tasks, between two of which may lie several links. */
function lengthOf({ tasks, links }: Network, path: readonly number[]): number {
  return path.reduce((sum, task, i) => {
    const lags = links.filter(({ from, to }) => from === path[i - 1] && to === task);
    return sum + tasks[task]!.work + Math.max(0, ...lags.map(({ lag = 0 }) => lag));
  }, 0);
}

describe('the critical path method, against all paths one by one', () => {
  it('begins each task after the longest path to it and ends after the longest of all', () => {
    fc.assert(
      fc.property(clock, (network) => {
        const { timings, end } = criticalPath(network);
        const paths = allPaths(network).map((path) => ({ path, length: lengthOf(network, path) }));
        const longest = Math.max(...paths.map(({ length }) => length));
        expect(end - network.begin).toBe(longest);
        timings.forEach((timing, task) => {
          const to = paths.filter(({ path }) => path.at(-1) === task);
          const from = paths.filter(({ path }) => path[0] === task);
          const before = Math.max(...to.map(({ length }) => length));
          const after = Math.max(...from.map(({ length }) => length));
          expect(timing.finish - network.begin).toBe(before);
          expect(end - timing.latestStart).toBe(after);
          const through = before + after - network.tasks[task]!.work;
          expect(timing.totalFloat).toBe(longest - through);
          expect(timing.critical).toBe(through === longest);
          expect(timing.freeFloat).toBeLessThanOrEqual(timing.totalFloat);
        });
      }),
      { numRuns: 300, seed: 21 },
    );
  });
});

/** When a task is done if it begins as early as it can, minute by minute. */
function naive(task: NetworkTask, days: CalendarDays, ready: number): { start: number; finish: number } {
  if (task.work === 0) return { start: ready, finish: ready };
  const shift = days.to - days.from - (days.pause ?? 0);
  for (let start = ready; ; start++) {
    if (!worksAt(days, start)) continue;
    let finish = start;
    for (let worked = 0; worked < task.work; finish++) worked += Number(worksAt(days, finish));
    if (!task.unbroken) return { start, finish };
    const dayBegan = lastBeginning(days, start);
    if (task.work <= shift ? finish <= midnightOf(days, start) + days.to : start === dayBegan) {
      return { start, finish };
    }
  }
}

/** Of the working day that a moment lies in. */
function midnightOf(days: CalendarDays, minute: number): number {
  return Math.floor((minute - days.from) / 1440) * 1440;
}

/** When the working day began that a moment lies in. */
function lastBeginning(days: CalendarDays, moment: number): number {
  let minute = midnightOf(days, moment) + days.from;
  // A short day can begin with its break.
  while (!worksAt(days, minute)) minute++;
  return minute;
}

function naiveLag(days: CalendarDays, finish: number, lag: number, runs?: string): number {
  if (runs !== 'working') return finish + lag;
  let minute = finish;
  for (let worked = 0; worked < lag; minute++) worked += Number(worksAt(days, minute));
  return minute;
}

describe('earliest dates with calendars, against counting minutes', () => {
  it('are those of going through the minutes one by one', () => {
    fc.assert(
      fc.property(randomNetwork(small), ({ network, days }) => {
        const { timings } = criticalPath(network);
        const finishes: number[] = [];
        network.tasks.forEach((task, i) => {
          const ready = network.links
            .filter(({ to }) => to === i)
            .map(({ from, lag = 0, lagRuns }) => naiveLag(days[i]!, finishes[from]!, lag, lagRuns));
          const placed = naive(task, days[i]!, Math.max(network.begin, ...ready));
          finishes.push(placed.finish);
          expect({ start: timings[i]!.start, finish: timings[i]!.finish }).toEqual(placed);
        });
      }),
      { numRuns: 150, seed: 22 },
    );
  });

  it('leave every task its total float: so far it can move without moving the end, and no minute more', () => {
    fc.assert(
      fc.property(randomNetwork(small), fc.nat(7), ({ network }, pick) => {
        const { timings, end } = criticalPath(network);
        const task = pick % network.tasks.length;
        const movedTo = (notBefore: number) =>
          criticalPath({
            ...network,
            tasks: network.tasks.map((other, i) => (i === task ? { ...other, notBefore } : other)),
          }).end;
        expect(movedTo(timings[task]!.latestStart)).toBe(end);
        expect(movedTo(timings[task]!.latestStart + 1)).toBeGreaterThan(end);
      }),
      { numRuns: 300, seed: 23 },
    );
  });

  it('moving a task by its free float moves nothing else', () => {
    fc.assert(
      fc.property(randomNetwork(small), fc.nat(7), ({ network }, pick) => {
        const { timings } = criticalPath(network);
        const task = pick % network.tasks.length;
        const { start, freeFloat, totalFloat } = timings[task]!;
        fc.pre(freeFloat > 0);
        expect(freeFloat).toBeLessThanOrEqual(totalFloat);
        const { calendar } = network.tasks[task]!;
        let notBefore = start;
        while (workBefore(calendar, notBefore) < workBefore(calendar, start) + freeFloat) notBefore++;
        const moved = criticalPath({
          ...network,
          tasks: network.tasks.map((other, i) => (i === task ? { ...other, notBefore } : other)),
        }).timings;
        moved.forEach((timing, i) => i !== task && expect(timing.start).toBe(timings[i]!.start));
      }),
      { numRuns: 300, seed: 24 },
    );
  });
});
