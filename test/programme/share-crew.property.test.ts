import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalPath, type Schedule } from '../../core/programme/critical-path';
import type { CalendarDays } from '../../core/programme/calendar';
import type { Network } from '../../core/programme/network';
import { shareCrew } from '../../core/programme/share-crew';
import { worksAt } from './naive-calendar';
import { randomNetwork, small } from './random-network';

const withWindows = randomNetwork({ ...small, most: 9, windows: true });

/** What is wrong with a schedule, looked at from the tasks and links alone. */
function faultsOf(network: Network, days: readonly CalendarDays[], { timings, missed }: Schedule): string[] {
  const faults: string[] = [];
  timings.forEach(({ start, finish }, i) => {
    const { work, crew } = network.tasks[i]!;
    let worked = 0;
    for (let minute = start; minute < finish; minute++) worked += Number(worksAt(days[i]!, minute));
    if (worked !== work) faults.push(`task ${i} works ${worked} of ${work} minutes`);
    if (start < network.begin) faults.push(`task ${i} begins before all`);
    timings.forEach((other, j) => {
      const both = crew && work > 0 && j > i && network.tasks[j]!.crew && network.tasks[j]!.work > 0;
      if (both && other.start < finish && start < other.finish) faults.push(`the crew is at ${i} and ${j}`);
    });
  });
  for (const link of network.links) {
    const { from, to, lag = 0, lagRuns, most } = link;
    const { finish } = timings[from]!;
    const { start } = timings[to]!;
    let waited = 0;
    for (let minute = finish; minute < start; minute++) {
      waited += lagRuns === 'working' ? Number(worksAt(days[to]!, minute)) : 1;
    }
    if (start < finish || waited < lag) faults.push(`link ${from} to ${to} waits ${waited} of ${lag}`);
    if (most !== undefined && !missed.has(link) && start > finish + most) faults.push(`${to} is late`);
  }
  return faults;
}

describe('tasks that share a crew', () => {
  it('keep every link, every kept greatest wait and the working hours; the crew is at one task at a time', () => {
    fc.assert(
      fc.property(withWindows, ({ network, days }) => {
        expect(faultsOf(network, days, shareCrew(network))).toEqual([]);
      }),
      { numRuns: 400, seed: 31 },
    );
  });

  it('keep them without a crew too', () => {
    fc.assert(
      fc.property(withWindows, ({ network, days }) => {
        const alone = { ...network, tasks: network.tasks.map((task) => ({ ...task, crew: false })) };
        expect(faultsOf(alone, days, criticalPath(alone))).toEqual([]);
      }),
      { numRuns: 300, seed: 32 },
    );
  });

  it('end no sooner than if nobody had to wait for the crew, and leave no float negative', () => {
    fc.assert(
      fc.property(randomNetwork(small), ({ network }) => {
        const shared = shareCrew(network);
        expect(shared.end).toBeGreaterThanOrEqual(criticalPath(network).end);
        for (const { totalFloat, freeFloat } of shared.timings) {
          expect(freeFloat).toBeGreaterThanOrEqual(0);
          expect(totalFloat).toBeGreaterThanOrEqual(freeFloat);
        }
        expect(shared.timings.some(({ critical }) => critical)).toBe(true);
      }),
      { numRuns: 300, seed: 33 },
    );
  });

  it('are late within a greatest wait only where the two alone would be', () => {
    const pair = randomNetwork({ ...small, most: 2, windows: true });
    fc.assert(
      fc.property(pair, ({ network, days }) => {
        const { missed } = shareCrew(network);
        for (const { from, to, lag = 0, most } of missed) {
          // Every beginning of the earlier task within three weeks, minute by minute in quarters of an hour.
          for (let notBefore = network.begin; notBefore < network.begin + 3 * 7 * 1440; notBefore += 15) {
            const tasks = network.tasks.map((task, i) => (i === from ? { ...task, notBefore } : task));
            const links = network.links
              .filter((link) => link.to === to)
              .map((link) => ({ ...link, most: undefined }));
            const { timings } = criticalPath({ ...network, tasks, links });
            expect(timings[to]!.start).toBeGreaterThan(timings[from]!.finish + most!);
          }
          expect(days[to]).toBeDefined();
          expect(most).toBeGreaterThanOrEqual(lag);
        }
      }),
      { numRuns: 60, seed: 34 },
    );
  });
});
