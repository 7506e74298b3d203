import type { Point2, PointPair } from './homography';

/** More say nothing new, and triples of points are looked at one by one. */
export const mostPoints = 40;

/** A point this near the line through two others, in parts of the longest side of the three, is taken to lie on it. */
const flat = 0.01;

/** Why these pairs give no view, in a sentence, or null. Points are counted from 1. */
export function faultOfPairs(pairs: readonly PointPair[]): string | null {
  if (pairs.some(({ px, at }) => ![...px, ...at].every(Number.isFinite)))
    return 'A point has no place: give each its place in the photo and on the wall.';
  if (pairs.length < 4)
    return `${pairs.length === 0 ? 'No point is' : pairs.length === 1 ? 'One point is' : `${pairs.length} points are`} marked: mark at least four.`;
  if (pairs.length > mostPoints) return `${pairs.length} points are marked: ${mostPoints} are the most.`;
  return coincident(pairs) ?? turning(pairs) ?? inLine(pairs);
}

function coincident(pairs: readonly PointPair[]): string | null {
  for (let i = 0; i < pairs.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [pairs[j]!, pairs[i]!];
      if (distance(a.px, b.px) < 0.5)
        return `Points ${j + 1} and ${i + 1} lie at the same place in the photo: move one of them.`;
      if (distance(a.at, b.at) < 0.01)
        return `Points ${j + 1} and ${i + 1} have the same place on the wall: change one of them.`;
    }
  }
  return null;
}

/**
 * A camera before the wall sees every three points turn the same way as they do on the wall; in px, y down, the sign of
 * their area is the other one.
 */
function turning(pairs: readonly PointPair[]): string | null {
  let same = 0;
  let turned = 0;
  forTriples(pairs.length, (i, j, k) => {
    const seen = height(pairs[i]!.px, pairs[j]!.px, pairs[k]!.px);
    const lies = height(pairs[i]!.at, pairs[j]!.at, pairs[k]!.at);
    if (Math.abs(seen) < flat || Math.abs(lies) < flat) return;
    if (seen > 0 === lies > 0) turned++;
    else same++;
  });
  if (turned === 0) return null;
  return same === 0
    ? 'The points run the wrong way round, as if seen in a mirror: check which corner is which.'
    : 'The lines between the points cross in the photo where they do not on the wall: check which corner is which.';
}

/** There must be four points, no three of them in one line, neither in the photo nor on the wall. */
function inLine(pairs: readonly PointPair[]): string | null {
  let first: readonly [number, number, number] | null = null;
  const count = pairs.length;
  const lined = new Set<number>();
  forTriples(count, (i, j, k) => {
    const isFlat = (['px', 'at'] as const).some(
      (plane) => Math.abs(height(pairs[i]![plane], pairs[j]![plane], pairs[k]![plane])) < flat,
    );
    if (!isFlat) return;
    first ??= [i, j, k];
    lined.add((i * count + j) * count + k);
  });
  if (!first) return null;
  const isFree = (i: number, j: number, k: number) => !lined.has((i * count + j) * count + k);
  for (let l = 3; l < count; l++) {
    let found = false;
    forTriples(l, (i, j, k) => {
      found ||= isFree(i, j, k) && isFree(i, j, l) && isFree(i, k, l) && isFree(j, k, l);
    });
    if (found) return null;
  }
  const [i, j, k] = first as readonly [number, number, number];
  return `Points ${i + 1}, ${j + 1} and ${k + 1} lie in one line: move one of them, or mark one more point away from it.`;
}

/** Every i < j < k below the count. */
function forTriples(count: number, visit: (i: number, j: number, k: number) => void): void {
  for (let k = 2; k < count; k++) for (let j = 1; j < k; j++) for (let i = 0; i < j; i++) visit(i, j, k);
}

/** Height of a triangle over its longest side, in parts of that side; negative if it runs clockwise (y up). */
function height(a: Point2, b: Point2, c: Point2): number {
  const doubled = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  return doubled / Math.max(distance(a, b), distance(b, c), distance(c, a)) ** 2;
}

function distance(a: Point2, b: Point2): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
