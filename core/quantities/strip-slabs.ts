import type { Point, Polygon, Region, Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** Which way strips run. */
export type FilmDirection = 'upright' | 'level';

/** A stretch along the strips, hundredths. */
export interface Stretch {
  readonly from: Hundredth;
  readonly to: Hundredth;
}

/** Part of a region between two edges of it, over one slab; heights at the slab's left and right side. */
interface Field {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

interface Slab {
  readonly left: Hundredth;
  readonly right: Hundredth;
  readonly fields: readonly Field[];
}

/** A region cut at the abscissa of every corner, so that between two cuts it is bounded by straight edges alone. */
export type Slabs = readonly Slab[];

/** A region so that strips run along y: as it is, or with x and y exchanged. */
export function turned(region: Region, direction: FilmDirection): Region {
  return direction === 'upright' ? region : region.map(turn);
}

/** @param region strips run along y here; see `turned` */
export function slabsOf(region: Region): Slabs {
  const cuts = [...new Set(region.flatMap(pointsOf).map(({ x }) => x))].sort((a, b) => a - b);
  const edges = region.flatMap(edgesOf);
  return cuts.slice(1).map((right, i): Slab => {
    const left = cuts[i]!;
    const across = edges.filter(([a, b]) => a.x <= left && b.x >= right);
    const lines = across
      .map(([a, b]): readonly [number, number] => [heightAt(a, b, left), heightAt(a, b, right)])
      .sort((a, b) => a[0] + a[1] - b[0] - b[1]);
    const fields: Field[] = [];
    for (let k = 0; k + 1 < lines.length; k += 2) fields.push({ low: lines[k]!, high: lines[k + 1]! });
    return { left, right, fields };
  });
}

/**
 * What a strip from `left` to `right` has to cover along its run: each part of the region with `trim` at both ends, as
 * one where two come together; whole hundredths, ascending.
 */
export function stretchesIn(slabs: Slabs, left: Hundredth, right: Hundredth, trim: Hundredth): Stretch[] {
  const found: Stretch[] = [];
  for (const slab of slabs) {
    const [a, b] = [Math.max(left, slab.left), Math.min(right, slab.right)];
    if (a >= b) continue;
    const at = (side: readonly [number, number], x: number) =>
      side[0] + ((side[1] - side[0]) * (x - slab.left)) / (slab.right - slab.left);
    for (const { low, high } of slab.fields) {
      const from = Math.floor(Math.min(at(low, a), at(low, b)) + 1e-6) - trim;
      const to = Math.ceil(Math.max(at(high, a), at(high, b)) - 1e-6) + trim;
      found.push({ from, to });
    }
  }
  found.sort((a, b) => a.from - b.from);
  const joined: { from: Hundredth; to: Hundredth }[] = [];
  for (const { from, to } of found) {
    const last = joined.at(-1);
    if (last && from <= last.to) last.to = Math.max(last.to, to);
    else joined.push({ from, to });
  }
  return joined;
}

/** Where the region has something across the run of the strips: stretches of slabs that are not empty. */
export function spansOf(slabs: Slabs): Stretch[] {
  const spans: { from: Hundredth; to: Hundredth }[] = [];
  for (const { left, right, fields } of slabs) {
    if (fields.length === 0) continue;
    const last = spans.at(-1);
    if (last && last.to === left) last.to = right;
    else spans.push({ from: left, to: right });
  }
  return spans;
}

function pointsOf({ outer, holes }: Polygon): Point[] {
  return [outer, ...holes].flat();
}

/** From left to right; upright edges bound no field. */
function edgesOf({ outer, holes }: Polygon): (readonly [Point, Point])[] {
  return [outer, ...holes].flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      if (a.x === b.x) return [];
      return [a.x < b.x ? ([a, b] as const) : ([b, a] as const)];
    }),
  );
}

function heightAt(a: Point, b: Point, x: number): number {
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

/** x and y exchanged; the rings are turned round so that they keep their direction. */
function turn({ outer, holes }: Polygon): Polygon {
  const swap = (ring: Ring): Point[] => ring.map(({ x, y }) => ({ x: y, y: x })).reverse();
  return { outer: swap(outer), holes: holes.map(swap) };
}
