import type { Hundredth } from '../units';
import type { Ring } from '../geometry/polygon';
import { leastLostArea } from './narrow-place';

interface Vector {
  readonly x: number;
  readonly y: number;
}

/** An edge of the panel: its direction and inward normal of length 1, and its distance along that normal. */
interface Side {
  readonly from: Vector;
  readonly direction: Vector;
  readonly normal: Vector;
  readonly length: number;
}

const leastOpposition = Math.cos(Math.PI / 6) - 1e-9;
/** What an edge must lie along a lost part to be touched, with a margin on either side of 0.1 mm; hundredths. */
const contact = { none: 5, sure: 20 };

/**
 * Whether a convex panel is a sliver, worked out in plain numbers, a hundred times as fast as by clipping; or
 * undefined where it is too near to call. What a square reaches in a convex panel is convex too, and lies along
 * some of the panel's edges. Round the panel, the lost parts are what stands between one such edge and the next:
 *
 *     ╲ lost          the lost corner touches the end of the first edge, every edge
 *      ╲______        between that the square does not reach, and the start of the next
 *       └ square
 *
 * @param ring convex, anticlockwise
 * @param side of the square, hundredths
 */
export function isConvexSliver(ring: Ring, side: Hundredth): boolean | undefined {
  const sides = sidesOf(ring);
  const places = sides.reduce((left: readonly Vector[], edge) => clipBy(edge, left, side), boxAround(ring));
  if (places.length === 0) return judge(sides, Math.abs(shoelace(ring)));

  const reached = hull(
    places.flatMap(({ x, y }) => [
      { x, y },
      { x: x + side, y },
      { x: x + side, y: y + side },
      { x, y: y + side },
    ]),
  );
  const contacts = sides.map((edge) => contactOf(edge, reached));
  const first = contacts.findIndex((found) => found !== null);
  if (first < 0) return undefined;
  let verdict: boolean | undefined = false;
  for (let step = 0, k = first; step < sides.length;) {
    const from = contacts[k]!;
    const touched: Side[] = [];
    const outline: Vector[] = [from.end];
    const startRest = sides[k]!.length - from.to;
    if (startRest > contact.none) touched.push(sides[k]!);
    let unsure = startRest > contact.none && startRest < contact.sure;
    let next = k;
    do {
      next = (next + 1) % sides.length;
      step++;
      outline.push(sides[next]!.from);
      if (!contacts[next]) touched.push(sides[next]!);
    } while (!contacts[next]);
    const until = contacts[next]!;
    if (until.from > contact.none) touched.push(sides[next]!);
    unsure ||= until.from > contact.none && until.from < contact.sure;
    outline.push(until.start);
    if (hasOpposites(touched)) {
      // Back along what the square reaches, from the start of the next contact to the end of this one.
      for (let i = until.startIndex; i !== from.endIndex; i = (i + reached.length - 1) % reached.length) {
        outline.push(reached[i]!);
      }
      const area = Math.abs(shoelace(outline)) / 2;
      if (area > leastLostArea / 2) {
        if (unsure || area < leastLostArea * 2) verdict = verdict === true ? true : undefined;
        else return true;
      }
    }
    k = next;
  }
  return verdict;
}

/** Whether no corner turns right. */
export function isConvex(ring: Ring): boolean {
  return ring.every((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length]!;
    const c = ring[(i + 1) % ring.length]!;
    return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= 0;
  });
}

/** All of the panel is lost: it depends on its edges alone, unless it is about as small as is overlooked. */
function judge(sides: readonly Side[], doubleArea: number): boolean | undefined {
  if (doubleArea / 2 < leastLostArea * 2) return undefined;
  return hasOpposites(sides.filter(({ length }) => length > contact.sure));
}

function sidesOf(ring: Ring): Side[] {
  return ring.map((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    return { from, direction, normal: { x: -direction.y, y: direction.x }, length };
  });
}

function boxAround(ring: Ring): Vector[] {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

/** Places of the square's lower left corner for which the whole square keeps to one side's inside. */
function clipBy({ from, normal }: Side, places: readonly Vector[], side: number): Vector[] {
  const needed = side * (Math.max(0, -normal.x) + Math.max(0, -normal.y));
  const depth = ({ x, y }: Vector) => (x - from.x) * normal.x + (y - from.y) * normal.y - needed;
  const kept: Vector[] = [];
  places.forEach((place, i) => {
    const next = places[(i + 1) % places.length]!;
    const [here, there] = [depth(place), depth(next)];
    if (here >= 0) kept.push(place);
    if (here >= 0 !== there >= 0) {
      const share = here / (here - there);
      kept.push({ x: place.x + share * (next.x - place.x), y: place.y + share * (next.y - place.y) });
    }
  });
  return kept;
}

/** Where a side lies along what the square reaches; null if nowhere. Distances along the side. */
function contactOf({ from, direction, normal }: Side, reached: readonly Vector[]) {
  let [least, most, startIndex, endIndex] = [Infinity, -Infinity, -1, -1];
  reached.forEach(({ x, y }, i) => {
    if ((x - from.x) * normal.x + (y - from.y) * normal.y > 0.01) return;
    const along = (x - from.x) * direction.x + (y - from.y) * direction.y;
    if (along < least) [least, startIndex] = [along, i];
    if (along > most) [most, endIndex] = [along, i];
  });
  if (startIndex < 0) return null;
  return {
    from: least,
    to: most,
    start: reached[startIndex]!,
    end: reached[endIndex]!,
    startIndex,
    endIndex,
  };
}

function hasOpposites(sides: readonly Side[]): boolean {
  return sides.some(({ direction: a }, i) =>
    sides.slice(i + 1).some(({ direction: b }) => -(a.x * b.x + a.y * b.y) >= leastOpposition),
  );
}

/** Convex hull, anticlockwise. Source: A. M. Andrew, Another efficient algorithm for convex hulls (1979). */
function hull(points: Vector[]): Vector[] {
  points.sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (ordered: readonly Vector[]) => {
    const chain: Vector[] = [];
    for (const point of ordered) {
      while (chain.length >= 2 && cross(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
      chain.push(point);
    }
    chain.pop();
    return chain;
  };
  return [...half(points), ...half([...points].reverse())];
}

function cross(a: Vector, b: Vector, c: Vector): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** Twice the signed area. */
function shoelace(points: readonly Vector[]): number {
  const [origin] = points;
  return points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length]!;
    return sum + (a.x - origin!.x) * (b.y - origin!.y) - (b.x - origin!.x) * (a.y - origin!.y);
  }, 0);
}
