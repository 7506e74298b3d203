import { roundTheClock } from '../../core/programme/calendar';
import type { Network, NetworkLink } from '../../core/programme/network';

/** An activity between two events: tail, head, duration. */
export type Arrow = readonly [tail: number, head: number, duration: number];

/** Activities on arrows as activities on nodes: each follows all that end where it begins. */
export function fromArrows(arrows: readonly Arrow[]): Network {
  const links = arrows.flatMap(([tail], to) =>
    arrows.flatMap(([, head], from): NetworkLink[] => (head === tail ? [{ from, to }] : [])),
  );
  return { begin: 0, tasks: arrows.map(([, , work]) => ({ calendar: roundTheClock, work })), links };
}

export type Named = readonly [name: string, duration: number, after: string];

export function fromNames(rows: readonly Named[], lags: Readonly<Record<string, number>> = {}): Network {
  const numbers = new Map(rows.map(([name], i) => [name, i]));
  const links = rows.flatMap(([name, , after]) =>
    [...after].map((before): NetworkLink => ({
      from: numbers.get(before)!,
      to: numbers.get(name)!,
      lag: lags[before + name] ?? 0,
    })),
  );
  return { begin: 0, tasks: rows.map(([, work]) => ({ calendar: roundTheClock, work })), links };
}

/** Activity, duration, ES, EF, LS, LF, total float. */
type ArrowRow = readonly [string, ...(readonly [number, number, number, number, number, number])];

/** B. W. Taylor III, Introduction to Management Science, chapter 8, solutions, first full table: 20 units, critical 1-3-4-5-6. */
export const taylorFirst: readonly ArrowRow[] = [
  ['1-2', 7, 0, 7, 2, 9, 2],
  ['1-3', 10, 0, 10, 0, 10, 0],
  ['2-4', 6, 7, 13, 9, 15, 2],
  ['3-4', 5, 10, 15, 10, 15, 0],
  ['3-5', 4, 10, 14, 14, 18, 4],
  ['4-5', 3, 15, 18, 15, 18, 0],
  ['5-6', 2, 18, 20, 18, 20, 0],
];

/** The same, second full table: 38 units, critical 1-3-5-7-8-9, one dummy 4-5. */
export const taylorSecond: readonly ArrowRow[] = [
  ['1-2', 8, 0, 8, 1, 9, 1],
  ['1-3', 10, 0, 10, 0, 10, 0],
  ['1-4', 9, 0, 9, 6, 15, 6],
  ['2-5', 6, 8, 14, 9, 15, 1],
  ['2-6', 4, 8, 12, 16, 20, 8],
  ['3-5', 5, 10, 15, 10, 15, 0],
  ['4-5', 0, 9, 9, 15, 15, 6],
  ['4-7', 7, 9, 16, 20, 27, 11],
  ['5-7', 12, 15, 27, 15, 27, 0],
  ['5-8', 15, 15, 30, 16, 31, 1],
  ['6-9', 18, 12, 30, 20, 38, 8],
  ['7-8', 4, 27, 31, 27, 31, 0],
  ['8-9', 7, 31, 38, 31, 38, 0],
];

/** Name, duration, predecessors, ES, EF, LS, LF, total and free float. */
type NodeRow = readonly [
  string,
  number,
  string,
  ...(readonly [number, number, number, number, number, number]),
];

/**
 * C. Hendrickson, Project Management for Construction, chapter 10, example: nine activities, 30 days, critical A-C-F-I.
 * Durations, predecessors and the 30 days are published; dates and floats are own arithmetic, as the copy read has wrong ones.
 */
export const hendrickson: readonly NodeRow[] = [
  ['A', 4, '', 0, 4, 0, 4, 0, 0],
  ['B', 3, '', 0, 3, 9, 12, 9, 9],
  ['C', 8, 'A', 4, 12, 4, 12, 0, 0],
  ['D', 7, 'A', 4, 11, 15, 22, 11, 10],
  ['E', 9, 'BC', 12, 21, 13, 22, 1, 0],
  ['F', 12, 'BC', 12, 24, 12, 24, 0, 0],
  ['G', 2, 'DE', 21, 23, 22, 24, 1, 1],
  ['H', 5, 'DE', 21, 26, 25, 30, 4, 4],
  ['I', 6, 'FG', 24, 30, 24, 30, 0, 0],
];

/** H. A. Taha, Operations Research, 6.5, six events: durations as published, dates by own arithmetic; the last column is free float. */
export const taha: readonly (readonly [...ArrowRow, number])[] = [
  ['1-2', 5, 0, 5, 0, 5, 0, 0],
  ['1-3', 6, 0, 6, 5, 11, 5, 2],
  ['2-3', 3, 5, 8, 8, 11, 3, 0],
  ['2-4', 8, 5, 13, 5, 13, 0, 0],
  ['3-5', 2, 8, 10, 11, 13, 3, 3],
  ['3-6', 11, 8, 19, 14, 25, 6, 6],
  ['4-5', 0, 13, 13, 13, 13, 0, 0],
  ['4-6', 1, 13, 14, 24, 25, 11, 11],
  ['5-6', 12, 13, 25, 13, 25, 0, 0],
];

/** Open course page on the critical path method, table 2: 16 hours, critical A-B-D-E-G, slack of F and C 1. */
export const coursePage: readonly Named[] = [
  ['A', 6, ''],
  ['B', 2, 'A'],
  ['F', 2, 'A'],
  ['C', 2, 'F'],
  ['D', 3, 'B'],
  ['E', 4, 'CD'],
  ['G', 1, 'E'],
];

export function arrowsOf(rows: readonly (readonly [string, number, ...number[]])[]): Arrow[] {
  return rows.map(([name, duration]) => {
    const [tail, head] = name.split('-').map(Number);
    return [tail!, head!, duration];
  });
}
