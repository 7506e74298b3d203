import { describe, expect, it } from 'vitest';
import { criticalPath } from '../../core/programme/critical-path';
import type { Network } from '../../core/programme/network';
import {
  arrowsOf,
  coursePage,
  fromArrows,
  fromNames,
  hendrickson,
  taha,
  taylorFirst,
  taylorSecond,
} from './published-networks';

function rowsOf(network: Network): number[][] {
  return criticalPath(network).timings.map(({ start, finish, latestStart, latestFinish, totalFloat }) => [
    start,
    finish,
    latestStart,
    latestFinish,
    totalFloat,
  ]);
}

function criticalOf(network: Network, names: readonly string[]): string[] {
  return criticalPath(network).timings.flatMap(({ critical }, i) => (critical ? [names[i]!] : []));
}

describe.each([
  ['first', taylorFirst, 20, ['1-3', '3-4', '4-5', '5-6']],
  ['second', taylorSecond, 38, ['1-3', '3-5', '5-7', '7-8', '8-9']],
] as const)('Taylor, Introduction to Management Science, chapter 8, %s full table', (_, rows, end, path) => {
  const network = fromArrows(arrowsOf(rows));

  it('has the printed ES, EF, LS, LF and slack of every activity', () => {
    expect(rowsOf(network)).toEqual(rows.map((row) => row.slice(2)));
    expect(criticalPath(network).end).toBe(end);
  });

  it('has the printed critical path', () => {
    expect(
      criticalOf(
        network,
        rows.map(([name]) => name),
      ),
    ).toEqual(path);
  });
});

describe('Hendrickson, Project Management for Construction, chapter 10: nine activities', () => {
  const rows = hendrickson.map(([name, duration, after]) => [name, duration, after] as const);
  const names = hendrickson.map(([name]) => name);

  it('takes the published 30 days along A-C-F-I', () => {
    expect(criticalPath(fromNames(rows)).end).toBe(30);
    expect(criticalOf(fromNames(rows), names)).toEqual(['A', 'C', 'F', 'I']);
  });

  it('has dates and floats as worked by hand', () => {
    const network = fromNames(rows);
    expect(rowsOf(network)).toEqual(hendrickson.map((row) => row.slice(3, 8)));
    expect(criticalPath(network).timings.map(({ freeFloat }) => freeFloat)).toEqual(
      hendrickson.map((row) => row[8]),
    );
  });

  it('takes 34 days with four days between F and I, and D, E, G, H, B gain float (worked by hand)', () => {
    const { timings, end } = criticalPath(fromNames(rows, { FI: 4 }));
    expect(end).toBe(34);
    const floats = Object.fromEntries(names.map((name, i) => [name, timings[i]!.totalFloat]));
    expect(floats).toEqual({ A: 0, B: 9, C: 0, D: 15, E: 5, F: 0, G: 5, H: 8, I: 0 });
  });
});

describe('Taha, Operations Research, 6.5: six events', () => {
  const network = fromArrows(arrowsOf(taha as readonly (readonly [string, number, ...number[]])[]));

  it('takes 25 days along 1-2-4-5-6; floats by the usual definitions', () => {
    expect(criticalPath(network).end).toBe(25);
    expect(
      criticalOf(
        network,
        taha.map(([name]) => name),
      ),
    ).toEqual(['1-2', '2-4', '4-5', '5-6']);
    expect(rowsOf(network)).toEqual(taha.map((row) => row.slice(2, 7)));
    expect(criticalPath(network).timings.map(({ freeFloat }) => freeFloat)).toEqual(
      taha.map((row) => row[7]),
    );
  });
});

describe('an open course page, table 2', () => {
  it('takes 16 hours along A-B-D-E-G; F and C have an hour of slack', () => {
    const network = fromNames(coursePage);
    const names = coursePage.map(([name]) => name);
    expect(criticalPath(network).end).toBe(16);
    expect(criticalOf(network, names)).toEqual(['A', 'B', 'D', 'E', 'G']);
    const { timings } = criticalPath(network);
    expect([timings[2]!.totalFloat, timings[3]!.totalFloat]).toEqual([1, 1]);
  });
});

describe('Columbia construction scheduling course: after A, wait four days before D starts', () => {
  it('adds the lag to the finish of A', () => {
    const { timings } = criticalPath(
      fromNames(
        [
          ['A', 3, ''],
          ['D', 2, 'A'],
        ],
        { AD: 4 },
      ),
    );
    expect(timings[1]!.start).toBe(timings[0]!.finish + 4);
  });
});
