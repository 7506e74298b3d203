import { intersection, union } from '../geometry/clip';
import type { Outline } from '../geometry/outline';
import type { Point, Polygon, Ring } from '../geometry/polygon';
import type { Rim } from '../job/schema';
import type { Hundredth } from '../units';
import { wholeClearance } from './keep-out';
import { sidesOfEdges } from './sides';
import type { RimSide, SurveyedWall } from './surveyed-wall';

/*
 * The rim is made of a strip along each edge and, where the wall turns back on itself, a mitre that belongs to
 * both edges:
 *
 *      ceiling strip
 *     ┌─────────────┬──┐           inside     M───┐  strip of edge 1
 *     │             │  │ right                │ × │
 *     │             ├──┤             ─────────┼───p
 *     └─────────────┴──┘              strip of edge 2
 *      strips overlap in corners
 */

/** A corner mitre may reach this many times the wider clearance, as grown keep-outs do. */
const MITRE_LIMIT = 2;

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly side: RimSide;
  readonly clearance: Hundredth;
  /** Unit vector into the wall. */
  readonly inward: { readonly x: number; readonly y: number };
}

/**
 * The bands no panel enters because they are too near to the wall's own edges.
 *
 * A band holds every point of the wall that is straight off an edge and nearer than its clearance. At hollow
 * corners between two edges with clearance it holds the mitre that joins their bands, at obtuse corners it runs
 * on to the next edge. Clearances are rounded up to whole hundredths; bands of level and upright edges are
 * exact, corners of others rounded to the nearest.
 *
 * @returns polygons within the wall, one or more a side, sides in the order floor, right, ceiling, left; bands
 *   of different sides overlap in corners; [] without clearances
 */
export function rimBands(outline: Outline, rim: Rim): SurveyedWall['rim'] {
  if (!Object.values(clearancesOf(rim)).some((clearance) => clearance > 0)) return [];
  const edges = edgesOf(outline, clearancesOf(rim));
  const bands: { side: RimSide; band: Polygon }[] = [];
  for (const side of ['floor', 'right', 'ceiling', 'left'] as const) {
    const strips = stripsOf(side, edges);
    if (strips.length === 0) continue;
    const within = intersection(strips.length > 1 ? union(strips) : strips, [
      { outer: outline.ring, holes: [] },
    ]);
    for (const band of within) bands.push({ side, band });
  }
  return bands;
}

function clearancesOf(rim: Rim): Record<RimSide, Hundredth> {
  return {
    floor: wholeClearance(rim.floor),
    right: wholeClearance(rim.right),
    ceiling: wholeClearance(rim.ceiling),
    left: wholeClearance(rim.left),
  };
}

function edgesOf(outline: Outline, clearances: Record<RimSide, Hundredth>): Edge[] {
  const { ring } = outline;
  return sidesOfEdges(outline).map((side, i) => {
    const from = ring[i]!;
    const to = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const inward = { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
    return { from, to, side, clearance: clearances[side], inward };
  });
}

function stripsOf(side: RimSide, edges: readonly Edge[]): Polygon[] {
  const strips: Polygon[] = [];
  edges.forEach((edge, i) => {
    const next = edges[(i + 1) % edges.length]!;
    if (edge.side === side && edge.clearance > 0) {
      add(strips, [edge.from, edge.to, offEnd(edge, edge.to), offEnd(edge, edge.from)]);
    }
    if (isHollow(edge, next)) {
      if (edge.clearance === 0 || next.clearance === 0) return;
      if (edge.side === side || next.side === side) add(strips, mitre(edge, next));
    } else {
      if (edge.side === side && edge.clearance > next.clearance) add(strips, runOn(edge, edge.to, next, 1));
      if (next.side === side && next.clearance > edge.clearance) add(strips, runOn(next, edge.to, edge, -1));
    }
  });
  return strips;
}

/** The wall has more than a half turn on its side of the corner between two edges. */
function isHollow(edge: Edge, next: Edge): boolean {
  return (
    (edge.to.x - edge.from.x) * (next.to.y - next.from.y) <
    (edge.to.y - edge.from.y) * (next.to.x - next.from.x)
  );
}

/** The wedge between the strips of two edges: up to the mitre, or cut off square. */
function mitre(edge: Edge, next: Edge): Ring {
  const corner = edge.to;
  const [n, m] = [edge.inward, next.inward];
  const cross = n.x * m.y - n.y * m.x;
  const x = (edge.clearance * m.y - next.clearance * n.y) / cross;
  const y = (next.clearance * n.x - edge.clearance * m.x) / cross;
  if (Math.hypot(x, y) <= MITRE_LIMIT * Math.max(edge.clearance, next.clearance)) {
    return [corner, offEnd(next, corner), rounded(corner.x + x, corner.y + y), offEnd(edge, corner)];
  }
  // Square: each strip runs on by what lets a line at its own distance touch the corner's circle.
  const run = Math.tan(Math.abs(Math.atan2(cross, n.x * m.x + n.y * m.y)) / 4);
  return [
    corner,
    offEnd(next, corner),
    beyond(next, corner, -run),
    beyond(edge, corner, run),
    offEnd(edge, corner),
  ];
}

/**
 * What a strip needs beyond its end at an obtuse corner, where its square end leaves a wedge before the other
 * edge: on to that edge, or where that is further than the mitre limit, as far again as the strip is wide.
 *
 * @param towards +1 where the strip's edge ends in the corner, −1 where it starts there
 */
function runOn(edge: Edge, corner: Point, other: Edge, towards: 1 | -1): Ring {
  const { clearance } = edge;
  const [along, away] = [directionOf(edge), directionOf(other)];
  const sine = along.x * away.y - along.y * away.x;
  const turn = towards * Math.atan2(sine * towards, along.x * away.x + along.y * away.y);
  const obtuse = Math.abs(turn) > 0 && Math.abs(turn) < Math.PI / 2 - 1e-9;
  if (!obtuse) return [corner, corner, corner];
  const end = offEnd(edge, corner);
  const reach = clearance / Math.abs(sine);
  if (reach <= MITRE_LIMIT * clearance) {
    return [corner, rounded(corner.x + towards * away.x * reach, corner.y + towards * away.y * reach), end];
  }
  return [
    corner,
    rounded(corner.x + towards * along.x * clearance, corner.y + towards * along.y * clearance),
    beyond(edge, corner, towards),
    end,
  ];
}

function directionOf({ inward }: Edge): { readonly x: number; readonly y: number } {
  return { x: inward.y, y: -inward.x };
}

/** The point of an edge's offset line across from one of its ends. */
function offEnd({ inward, clearance }: Edge, end: Point): Point {
  return rounded(end.x + inward.x * clearance, end.y + inward.y * clearance);
}

function beyond({ inward, clearance }: Edge, end: Point, run: number): Point {
  return rounded(
    end.x + (inward.x + inward.y * run) * clearance,
    end.y + (inward.y - inward.x * run) * clearance,
  );
}

function rounded(x: number, y: number): Point {
  return { x: Math.round(x) + 0, y: Math.round(y) + 0 };
}

/** Strips thinner than the rounding are nothing. */
function add(strips: Polygon[], ring: Ring): void {
  const first = ring[0]!;
  const area = ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + (a.x - first.x) * (b.y - first.y) - (b.x - first.x) * (a.y - first.y);
  }, 0);
  if (area !== 0) strips.push({ outer: area > 0 ? ring : [...ring].reverse(), holes: [] });
}
