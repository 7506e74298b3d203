import { isRectilinear, regionArea, type Region, type Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';
import {
  slabsOf,
  spansOf,
  stretchesIn,
  turned,
  type FilmDirection,
  type Slabs,
  type Stretch,
} from './strip-slabs';

/** How film is laid; hundredths. */
export interface FilmRules {
  readonly rollWidth: Hundredth;
  /** Of two strips at a seam, for the double cut. */
  readonly overlap: Hundredth;
  /** Over each edge of the region, cut off when the film has been laid. */
  readonly trim: Hundredth;
  /** What shows at least of a strip at an edge of the region across its run. */
  readonly leastStrip: Hundredth;
  /** No seam within any of these stretches across the run of upright and of level strips; ends are allowed. */
  readonly keepOff: Readonly<Record<FilmDirection, readonly Stretch[]>>;
}

export interface FilmStrip {
  /** Across its run, from seam to seam or edge: what shows of it. */
  readonly from: Hundredth;
  readonly to: Hundredth;
  /** What is cut from the roll, along its run, with trim; two where an opening goes right across the strip. */
  readonly pieces: readonly Stretch[];
}

export interface StripPlan {
  readonly direction: FilmDirection;
  readonly strips: readonly FilmStrip[];
  /** Where they meet, across their run. */
  readonly seams: readonly Hundredth[];
  /** Of all pieces, hundredths. */
  readonly length: Hundredth;
  /** Hundredths squared: taken from the roll, and of it what stays on the wall. */
  readonly taken: number;
  readonly covered: number;
  /** Whether no plan of this direction takes less film: proven where every edge is level or upright. */
  readonly exact: boolean;
}

/**
 * The plan of strips that takes least film from the roll, of equal ones the one with fewest strips.
 *
 * The problem. Strips lie side by side along one direction. Where two meet they overlap by `overlap`, half of it on
 * either side of the seam; over an edge of the region a strip reaches by `trim`, across and along. With that no strip is
 * wider than the roll. A seam lies at least half an overlap, and `leastStrip`, inside the region, and outside `keepOff`.
 * Where the region leaves a gap right across the run, a strip may end before it or go on over it. A strip takes from the
 * roll the length of what it covers with `trim` at every end; where that leaves a gap along it, it is cut into pieces.
 * Openings inside a piece are cut out and lost. Sought are the seams for which the pieces together are shortest.
 *
 * Why few places will do. Move any seam to the right: the strip on its right covers less, the one on its left covers
 * more only when its reach passes a corner. So of the best plans one has each seam half an overlap left of a corner's
 * abscissa, at the near side of a place to keep off, as far right as the end of the region lets it, or a full width
 * after the seam or end before it. Those places are tried, all of them, by dynamic programming from left to right. Of
 * sloping edges the length changes between corners too; there the same places are tried and `exact` is false.
 *
 * @param direction absent: whichever takes less film, upright if equal
 * @returns null where the roll is no wider than what overlaps and trim take, or every place for a seam is kept off
 */
export function planStrips(region: Region, rules: FilmRules, direction?: FilmDirection): StripPlan | null {
  if (direction) return planAlong(region, rules, direction);
  const upright = planAlong(region, rules, 'upright');
  const level = planAlong(region, rules, 'level');
  if (!upright || !level) return upright ?? level;
  const byLength = level.length - upright.length || level.strips.length - upright.strips.length;
  return byLength < 0 ? level : upright;
}

interface Node {
  readonly at: Hundredth;
  /** `seam`: strips on both sides; else the left or right end of a span of the region. */
  readonly kind: 'seam' | 'left' | 'right';
  best: { length: number; strips: number; before: Node | null } | null;
}

function planAlong(region: Region, rules: FilmRules, direction: FilmDirection): StripPlan | null {
  const own = turned(region, direction);
  const slabs = slabsOf(own);
  const spans = spansOf(slabs);
  if (spans.length === 0) return null;
  const half = Math.ceil(rules.overlap / 2);
  const margin = ({ kind }: Node) => (kind === 'seam' ? half : rules.trim);
  const reach = ({ at, kind }: Node, side: 1 | -1) => (kind === 'seam' ? at + side * half : at);
  const nodes = nodesOf(own, spans, rules, half, rules.keepOff[direction]);
  if (!nodes[0]) return null;
  nodes[0].best = { length: 0, strips: 0, before: null };
  for (const [i, node] of nodes.entries()) {
    if (i === 0) continue;
    if (node.kind === 'left') {
      node.best = improved(node.best, nodes[i - 1]!, 0, 0);
      continue;
    }
    for (let k = i - 1; k >= 0; k--) {
      const before = nodes[k]!;
      if (node.at - before.at + margin(before) + margin(node) > rules.rollWidth) {
        if (node.at - before.at > rules.rollWidth) break;
        continue;
      }
      if (before.kind === 'right' || !before.best) continue;
      const pieces = stretchesIn(slabs, reach(before, -1), reach(node, 1), rules.trim);
      node.best = improved(node.best, before, lengthOf(pieces), 1);
    }
  }
  return planOf(nodes, slabs, region, rules, direction, reach);
}

/** Of two ways of equal length and number the one found first stays: the widest strip as the last. */
function improved(best: Node['best'], before: Node, length: number, strips: number): Node['best'] {
  if (!before.best) return best;
  const way = { length: before.best.length + length, strips: before.best.strips + strips, before };
  if (best && (best.length < way.length || (best.length === way.length && best.strips < way.strips)))
    return best;
  return best && best.length === way.length && best.strips === way.strips
    ? // The later the seam before, the wider the strips that stand first.
      best.before!.at >= before.at
      ? best
      : way
    : way;
}

function planOf(
  nodes: readonly Node[],
  slabs: Slabs,
  region: Region,
  { trim, rollWidth }: FilmRules,
  direction: FilmDirection,
  reach: (node: Node, side: 1 | -1) => Hundredth,
): StripPlan | null {
  let node = nodes.at(-1)!;
  if (!node.best) return null;
  const { length } = node.best;
  const strips: FilmStrip[] = [];
  const seams: Hundredth[] = [];
  while (node.best?.before) {
    const before: Node = node.best.before;
    if (node.kind !== 'left') {
      const pieces = stretchesIn(slabs, reach(before, -1), reach(node, 1), trim);
      strips.unshift({ from: before.at, to: node.at, pieces });
      if (before.kind === 'seam') seams.unshift(before.at);
    }
    node = before;
  }
  return {
    direction,
    strips,
    seams,
    length,
    taken: length * rollWidth,
    covered: regionArea(region),
    exact: region.every(isRectilinear),
  };
}

/** More strips than this side by side are a typing error in the width of the roll. */
const MOST_STRIPS = 1000;

/** Ends of spans, and every place where a seam of a best plan can be; from left to right; [] for a roll too narrow. */
function nodesOf(
  region: Region,
  spans: readonly Stretch[],
  { rollWidth, trim, leastStrip }: FilmRules,
  half: Hundredth,
  keepOff: readonly Stretch[],
): Node[] {
  const step = rollWidth - 2 * half;
  const last = spans.at(-1)!.to;
  if (step * MOST_STRIPS < last - spans[0]!.from) return [];
  const places = new Set<Hundredth>();
  const addChain = (first: Hundredth) => {
    for (let at = first; at < last; at += step) places.add(at);
  };
  const inset = Math.max(half, leastStrip);
  for (const { from, to } of spans) {
    addChain(from + rollWidth - half - trim);
    addChain(to - inset);
  }
  for (const x of cornersOf(region)) addChain(x - half);
  for (const { from } of keepOff) addChain(from);
  const isAllowed = (at: Hundredth) =>
    spans.some(({ from, to }) => from + inset <= at && at <= to - inset && from < at && at < to) &&
    !keepOff.some(({ from, to }) => from < at && at < to);
  const node = (at: Hundredth, kind: Node['kind']): Node => ({ at, kind, best: null });
  return [
    ...spans.flatMap(({ from, to }) => [node(from, 'left'), node(to, 'right')]),
    ...[...places].filter(isAllowed).map((at) => node(at, 'seam')),
  ].sort((a, b) => a.at - b.at);
}

/** Abscissae of corners; those of a flattened curve turn too little to matter. */
function cornersOf(region: Region): Hundredth[] {
  const found = region.flatMap(({ outer, holes }) =>
    [outer, ...holes].flatMap((ring) => ring.filter((_, i) => turnsAt(ring, i)).map(({ x }) => x)),
  );
  return [...new Set(found)];
}

/** Sine of 15°. */
const LEAST_TURN = 0.26;

function turnsAt(ring: Ring, i: number): boolean {
  const [a, b, c] = [ring.at(i - 1)!, ring[i]!, ring[(i + 1) % ring.length]!];
  const [ux, uy, wx, wy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.abs(ux * wy - uy * wx) > LEAST_TURN * Math.hypot(ux, uy) * Math.hypot(wx, wy);
}

function lengthOf(pieces: readonly Stretch[]): Hundredth {
  return pieces.reduce((sum, { from, to }) => sum + to - from, 0);
}
