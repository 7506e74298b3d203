import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { placesOf, type CellPlace } from './corner-starts';
import { modulo, shiftOf } from './grid';
import { meetUpright, slopingChains, type SlopingChain } from './sloping-chains';
import type { StartQuestion } from './start-figures';
import { coursesOver } from './start-meter';

/*
 * Two sloping edges can each pass a corner of a cell at one and the same start, which then need be on no event of
 * either axis: a sheet that touches both sides of a gable. Seen from the start each edge is a slope in the plane of all
 * starts, and where two of them cross both corners lie on their edges.
 *
 *           ╱╲             ╱  ╲ the same
 *          ┌──┐           ╱╲╱╲ as starts:
 *         ╱│  │╲         ╱ ╱╲ ╲ they cross
 *        ╱ └──┘ ╲       ╱ ╱  ╲ ╲ in one
 */

/**
 * The starts, modulo the pitch, at which two chains each pass a corner of some cell. Where such a start lies between
 * hundredths, those beside it from which both corners lie within the area.
 */
export function* doubleCornerStarts(question: StartQuestion): Generator<Point, void, void> {
  const { area, pattern, leastWidth } = question;
  const { pitchX, pitchY, stagger } = pattern;
  const chains = slopingChains(area.area);
  const courses = coursesOver(area.box, pattern);
  for (const [i, one] of chains.entries()) {
    for (const other of chains.slice(i)) {
      // An edge is parallel to itself, and a quarter of an arc is not.
      if (one === other && one.points.length === 2) continue;
      for (const place of placesOf(one, pattern, leastWidth)) {
        for (const otherPlace of placesOf(other, pattern, leastWidth)) {
          for (let course = 0; course < (stagger === 0 ? 1 : courses); course++) {
            for (let up = 1 - courses; up < courses; up++) {
              const shift = shiftOf(pattern, course);
              const aside = shiftOf(pattern, course + up) - shift + otherPlace.x - place.x;
              const across = { x: aside, y: up * pitchY + otherPlace.y - place.y };
              for (const [x, y] of bothAtCorners(one, place, other, otherPlace, across, pitchX)) {
                const start = { x: x - place.x - shift, y: y - place.y };
                if (stagger !== 0 && Math.ceil((start.y - area.box.bottom) / pitchY) !== course) continue;
                yield { x: modulo(start.x, pitchX), y: modulo(start.y, pitchY) };
              }
            }
          }
        }
      }
    }
  }
}

/** Points on (or just within) the one chain, from which any number of pitches further and across lies the other. */
function* bothAtCorners(
  one: SlopingChain,
  place: CellPlace,
  other: SlopingChain,
  otherPlace: CellPlace,
  across: Point,
  pitchX: Hundredth,
): Generator<readonly [x: Hundredth, y: Hundredth], void, void> {
  const [left, right] = [one.points[0]!.x, one.points.at(-1)!.x];
  const [otherLeft, otherRight] = [other.points[0]!.x, other.points.at(-1)!.x];
  const first = Math.ceil((otherLeft - right - across.x) / pitchX);
  for (let n = first; otherRight - across.x - n * pitchX >= left; n++) {
    const aside = across.x + n * pitchX;
    const isApart = (x: number) => heightAt(one, x) - (heightAt(other, x + aside) - across.y);
    // Both only rise or only fall, so they cross where their difference changes its sign from corner to corner.
    const from = Math.max(left, otherLeft - aside);
    const to = Math.min(right, otherRight - aside);
    if (from > to) continue;
    const corners = [from, to];
    for (const { x } of one.points) if (x > from && x < to) corners.push(x);
    for (const { x } of other.points) if (x - aside > from && x - aside < to) corners.push(x - aside);
    corners.sort((a, b) => a - b);
    for (let i = 0; i + 1 < corners.length; i++) {
      const [a, b] = [isApart(corners[i]!), isApart(corners[i + 1]!)];
      if (a === b || Math.min(a, b) > 0 || Math.max(a, b) < 0) continue;
      const x = corners[i]! + ((corners[i + 1]! - corners[i]!) * a) / (a - b);
      for (const at of new Set([Math.floor(x), Math.ceil(x)])) {
        const [own, others] = [meetUpright(one, at), meetUpright(other, at + aside)];
        if (!own || !others || !place.where(own) || !otherPlace.where(others)) continue;
        const heights = [own.at, others.at - across.y];
        if (one.facesUp === other.facesUp)
          yield [at, one.facesUp ? Math.min(...heights) : Math.max(...heights)];
        else for (const y of new Set(heights)) yield [at, y];
      }
    }
  }
}

/** Of a point on the chain, ends included; not rounded. */
function heightAt({ points }: SlopingChain, x: number): number {
  const next = Math.max(
    1,
    points.findIndex((point) => point.x >= x),
  );
  const [a, b] = [points[next - 1]!, points[next]!];
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
