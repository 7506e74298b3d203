import { Matrix, solve } from 'ml-matrix';
import type { Vertex, Wall } from '../job/schema';
import { pointOf } from '../job/shape';
import { isBetween } from './check-measures';

/** Standard deviations, mm: a tape read with care, an edge only drawn, a place only drawn. Common practice, no source. */
const measured = 1;
const drawnEdge = 100;
const drawnPlace = 10_000;
/** The first edge keeps its direction: the floor stays level. */
const direction = 0.01;
const rounds = 30;
/** The work grows with the third power of the corners. */
const mostCorners = 60;

/** An outline fitted to its measures. */
export interface FittedOutline {
  readonly outline: readonly Vertex[];
  /** How far the corner that moves most moves, mm. */
  readonly mostMoved: number;
  /** Root mean square of what the measures still miss, mm. */
  readonly residual: number;
}

/**
 * The outline with its corners moved so that the check measures are met as nearly as may be: least squares of the misfits,
 * each by what it may be off; edges that nobody measured keep their length where they can. The first corner stays, the
 * first edge keeps its direction.
 *
 * @returns why not, in a sentence, where an edge is an arc, nothing was measured, or the measures suit no wall
 * Source: adjustment of a trilateration net by observation equations, Gauss–Newton; C. D. Ghilani, Adjustment
 * Computations, ch. 14 (from memory).
 */
export function fitOutline(wall: Wall): FittedOutline | { readonly fault: string } {
  const { outline } = wall;
  const corners = outline.map(pointOf);
  const count = corners.length;
  const measures = (wall.checkMeasures ?? []).filter(
    ({ from, to }) => from !== to && from <= count && to <= count,
  );
  if (outline.some((vertex) => !Array.isArray(vertex)))
    return { fault: 'An outline with an arc cannot be fitted: move its corners by hand.' };
  if (count > mostCorners)
    return {
      fault: `An outline of more than ${mostCorners} corners cannot be fitted: move its corners by hand.`,
    };
  if (measures.length === 0)
    return { fault: 'Type a measure between two corners first, such as a diagonal.' };

  const start = corners.flatMap(({ x, y }) => [x, y]);
  const lengths = [
    ...measures.map(({ from, to, length }) => ({ a: from - 1, b: to - 1, length, sigma: measured })),
    ...corners.flatMap((_, a) => {
      const b = (a + 1) % count;
      if (measures.some((one) => isBetween(one, a + 1, b + 1))) return [];
      return [{ a, b, length: distance(start, a, b), sigma: drawnEdge }];
    }),
  ];
  let places = start;
  for (let round = 0; round < rounds; round++) {
    const rows: number[][] = [];
    const misfits: number[] = [];
    const observe = (entries: readonly (readonly [number, number])[], misfit: number, sigma: number) => {
      const row = new Array<number>(2 * count).fill(0);
      for (const [at, value] of entries) row[at] = value / sigma;
      rows.push(row);
      misfits.push(misfit / sigma);
    };
    for (const { a, b, length, sigma } of lengths) {
      const now = distance(places, a, b);
      if (now === 0) return { fault: noWall };
      const [ux, uy] = [
        (places[2 * b]! - places[2 * a]!) / now,
        (places[2 * b + 1]! - places[2 * a + 1]!) / now,
      ];
      observe(
        [
          [2 * a, -ux],
          [2 * a + 1, -uy],
          [2 * b, ux],
          [2 * b + 1, uy],
        ],
        length - now,
        sigma,
      );
    }
    places.forEach((place, i) => observe([[i, 1]], start[i]! - place, i < 2 ? direction : drawnPlace));
    const first = distance(start, 0, 1);
    const [nx, ny] = [-(start[3]! - start[1]!) / first, (start[2]! - start[0]!) / first];
    const astray = nx * (places[2]! - places[0]!) + ny * (places[3]! - places[1]!);
    observe(
      [
        [0, -nx],
        [1, -ny],
        [2, nx],
        [3, ny],
      ],
      -astray,
      direction,
    );
    const steps = solve(new Matrix(rows), Matrix.columnVector(misfits)).to1DArray();
    places = places.map((place, i) => place + steps[i]!);
    if (!places.every(Number.isFinite)) return { fault: noWall };
    if (Math.max(...steps.map(Math.abs)) < 1e-6) return fitted(places, start, measures);
  }
  return { fault: noWall };
}

const noWall = 'No wall has these measures: look for one that was misread.';

function fitted(
  places: readonly number[],
  start: readonly number[],
  measures: readonly { from: number; to: number; length: number }[],
): FittedOutline {
  const rounded = places.map((place) => Math.round(place * 100) / 100 + 0);
  const outline = rounded.flatMap((x, i): Vertex[] => (i % 2 === 0 ? [[x, rounded[i + 1]!]] : []));
  const moved = outline.map((_, i) =>
    Math.hypot(rounded[2 * i]! - start[2 * i]!, rounded[2 * i + 1]! - start[2 * i + 1]!),
  );
  const misses = measures.map(({ from, to, length }) => length - distance(rounded, from - 1, to - 1));
  return {
    outline,
    mostMoved: Math.max(...moved),
    residual: Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length),
  };
}

function distance(places: readonly number[], a: number, b: number): number {
  return Math.hypot(places[2 * b]! - places[2 * a]!, places[2 * b + 1]! - places[2 * a + 1]!);
}
