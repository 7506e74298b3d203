import type { Hundredth } from '../units';
import { flattenCircle } from './arc';
import { cornersAlong, LEAST_RADIUS } from './arc-chain';
import { difference, union } from './clip';
import type { Arc, Outline } from './outline';
import { doubleSignedArea, type Point, type Polygon, type Region, type Ring } from './polygon';

/*
 * What lies within a distance of an outline, on one side of it, is made of a strip along every edge and part of a ring along
 * every arc. Where two strips part they run on to their mitre:
 *
 *        ┌───────────────── m
 *        │    strip      ,  │
 *     ───┴──────────── p    │
 *          outline      │strip
 *
 * Growing is the outline with these, shrinking the outline without them, so that what falls apart or closes up on the way
 * needs no thought.
 */

export interface Circle {
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
}

export interface OffsetRegion {
  readonly region: Region;
  /** On which its rings may run, hundredths, not rounded. */
  readonly circles: readonly Circle[];
}

interface Direction {
  readonly x: number;
  readonly y: number;
}

interface Piece {
  /** Points of the ring from one corner to the next. */
  readonly chain: Ring;
  /** Out of the outline, square to the true edge, at its two ends. */
  readonly startNormal: Direction;
  readonly endNormal: Direction;
  readonly arc: (Circle & { readonly from: number; readonly sweep: number }) | null;
}

/**
 * The outline grown (distance above 0) or shrunk (below 0), measured square to its edges. Corners that open are mitred;
 * sharper than 60° (mitre limit 2) they are cut off square at the distance from their point. No point of the new edge is
 * nearer than the distance, by more than the rounding of its corners to 0.01 mm; arcs are drawn with chords within 0.02 mm.
 *
 * @returns [] if nothing is left
 */
export function offsetOutline(outline: Outline, distance: Hundredth): OffsetRegion {
  const whole: Polygon = { outer: outline.ring, holes: [] };
  const [first] = outline.arcs;
  if (first && first.edges === outline.ring.length) return offsetCircle(first, distance);
  const pieces = piecesOf(outline);
  const gaps = pieces.map((piece, i) => gapAt(piece, pieces[(i + 1) % pieces.length]!, distance));
  const parts = pieces.flatMap((piece, i) => stripOf(piece, gaps.at(i - 1)!, gaps[i]!, distance));
  const offset = pieces.flatMap(({ arc }) => {
    const radius = arc && offsetRadius(arc, distance);
    return arc && radius! >= LEAST_RADIUS ? [{ centre: arc.centre, radius: radius! }] : [];
  });
  const band = parts.length > 0 ? union(parts) : [];
  return {
    region: distance > 0 ? union([whole], band) : difference([whole], band),
    circles: [...outline.arcs.map(({ centre, radius }) => ({ centre, radius })), ...offset],
  };
}

function offsetCircle({ centre, radius }: Arc, distance: Hundredth): OffsetRegion {
  const wanted = radius + distance;
  if (wanted < LEAST_RADIUS) return { region: [], circles: [] };
  const middle = { x: centre.x / 100, y: centre.y / 100 };
  const { ring } = flattenCircle(middle, wanted / 50, distance > 0 ? 'circumscribed' : 'inscribed');
  return {
    region: [{ outer: ring, holes: [] }],
    circles: [
      { centre, radius },
      { centre, radius: wanted },
    ],
  };
}

function piecesOf({ ring, arcs }: Outline): Piece[] {
  const at = (i: number) => ring[i % ring.length]!;
  const pieces: Piece[] = [];
  for (let i = 0; i < ring.length;) {
    const arc = arcs.find(({ firstEdge }) => firstEdge === i);
    const edges = arc?.edges ?? 1;
    const chain = Array.from({ length: edges + 1 }, (_, k) => at(i + k));
    pieces.push(arc ? arcPiece(chain, arc) : straightPiece(chain));
    i += edges;
  }
  return pieces;
}

function straightPiece(chain: Ring): Piece {
  const [from, to] = [chain[0]!, chain.at(-1)!];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const normal = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  return { chain, startNormal: normal, endNormal: normal, arc: null };
}

function arcPiece(chain: Ring, { centre, radius }: Arc): Piece {
  const [a, b, next] = [chain[0]!, chain.at(-1)!, chain[1]!];
  const turnsLeft = (a.x - centre.x) * (next.y - a.y) - (a.y - centre.y) * (next.x - a.x) > 0;
  const from = Math.atan2(a.y - centre.y, a.x - centre.x);
  const turn = (Math.atan2(b.y - centre.y, b.x - centre.x) - from + 4 * Math.PI) % (2 * Math.PI);
  const sweep = turnsLeft ? turn : turn - 2 * Math.PI;
  const out = turnsLeft ? 1 : -1;
  const normal = (angle: number) => ({ x: out * Math.cos(angle), y: out * Math.sin(angle) });
  return {
    chain,
    startNormal: normal(from),
    endNormal: normal(from + sweep),
    arc: { centre, radius, from, sweep },
  };
}

/** Bulging arcs grow with their shape, hollow ones shrink. */
function offsetRadius({ radius, sweep }: NonNullable<Piece['arc']>, distance: Hundredth): number {
  return sweep > 0 ? radius + distance : radius - distance;
}

/** The corners between two pieces where their strips part: where the first one's runs on to, and where the second one's begins. */
interface Gap {
  readonly on: Point;
  readonly back: Point;
}

function gapAt({ chain, endNormal: n }: Piece, { startNormal: m }: Piece, distance: Hundredth): Gap | null {
  const corner = chain.at(-1)!;
  const cross = n.x * m.y - n.y * m.x;
  if (cross * distance <= 0) return null;
  const dot = n.x * m.x + n.y * m.y;
  if (dot >= -0.5) {
    const mitre = off(corner, { x: (n.x + m.x) / (1 + dot), y: (n.y + m.y) / (1 + dot) }, distance);
    return { on: mitre, back: mitre };
  }
  // Each strip runs on by what lets a line at its own distance touch the corner's circle.
  const run = Math.tan(Math.abs(Math.atan2(cross, dot)) / 4) * Math.sign(distance);
  return {
    on: off(corner, { x: n.x - n.y * run, y: n.y + n.x * run }, distance),
    back: off(corner, { x: m.x + m.y * run, y: m.y - m.x * run }, distance),
  };
}

function stripOf(piece: Piece, before: Gap | null, after: Gap | null, distance: Hundredth): Polygon[] {
  const { chain, startNormal, endNormal, arc } = piece;
  const [start, end] = [chain[0]!, chain.at(-1)!];
  const offStart = off(start, startNormal, distance);
  const offEnd = off(end, endNormal, distance);
  const cut = after ? polygonFrom([end, after.on, after.back]) : [];
  // A straight strip ends in the corners themselves, so that its edge is one line.
  if (!arc) return [...polygonFrom([start, end, after?.on ?? offEnd, before?.back ?? offStart]), ...cut];
  const ends = [
    ...cut,
    ...(after ? polygonFrom([end, offEnd, after.on]) : []),
    ...(before ? polygonFrom([start, before.back, offStart]) : []),
  ];
  const radius = offsetRadius(arc, distance);
  if (radius < LEAST_RADIUS) return [...ends, ...pastCentre(piece, arc.centre, distance)];
  const between = cornersAlong({ ...arc, radius }, radius > arc.radius ? 'outside' : 'inside');
  return [...ends, ...polygonFrom([...chain, offEnd, ...between.reverse(), offStart])];
}

/** Past an arc's centre nothing is nearest to the arc but what is near to its ends. */
function pastCentre({ chain }: Piece, centre: Direction, distance: Hundredth): Polygon[] {
  const middle = { x: Math.round(centre.x), y: Math.round(centre.y) };
  const about = ({ x, y }: Point): Polygon => ({
    outer: flattenCircle({ x: x / 100, y: y / 100 }, Math.abs(distance) / 50, 'circumscribed').ring,
    holes: [],
  });
  return [...polygonFrom([...chain, middle]), about(chain[0]!), about(chain.at(-1)!)];
}

function off({ x, y }: Point, along: Direction, distance: Hundredth): Point {
  return { x: Math.round(x + along.x * distance) + 0, y: Math.round(y + along.y * distance) + 0 };
}

/** Nothing where rounding leaves no area. */
function polygonFrom(ring: Ring): Polygon[] {
  const distinct = ring.filter(({ x, y }, i) => x !== ring.at(i - 1)!.x || y !== ring.at(i - 1)!.y);
  const area = doubleSignedArea(distinct);
  if (area === 0) return [];
  return [{ outer: area > 0 ? distinct : distinct.reverse(), holes: [] }];
}
