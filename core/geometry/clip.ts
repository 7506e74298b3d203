import ClipperLib from 'clipper-lib';
import type { Hundredth } from '../units';
import { hasSlit } from './slits';
import {
  doubleSignedArea,
  isRectilinear,
  perimeter,
  type Point,
  type Polygon,
  type Region,
  type Ring,
} from './polygon';

/*
 * The one file that knows clipper-lib. What every function here promises:
 *
 * - Corners are whole hundredths of a millimetre. Corners of rectilinear regions are corners or crossings of
 *   their sources, so their areas add up exactly; a crossing of sloping edges is rounded to the nearest.
 * - Every operation works about the lower left corner of what it is given: moved input gives the same result,
 *   moved. Spans up to 400 m (4·10⁷) stay inside the ±47,453,132 in which the kernel's products are exact.
 * - Equal regions are equal data: no corner in line with its neighbours, no spike, each ring from its lowest,
 *   then leftmost corner, rings in the order of those corners.
 * - Input rings follow the invariants of `Polygon`; where rounding made one cross itself by a hair, the part
 *   that came out the wrong way round is dropped.
 *
 * - In rectilinear regions no two edges run along each other: what touches along an edge is one, and no slit is
 *   left between parts.
 *
 * - Pieces and holes thinner than a hundredth, which only the rounding of sloping edges leaves, are dropped.
 *
 * Not promised: that sloping edges keep their slope to more than the rounding of their ends, nor that areas which
 * share part of a sloping edge always become one.
 */

type Path = { X: number; Y: number }[];
const { ClipType, PolyFillType, PolyType, JoinType, EndType } = ClipperLib;

/** The part of either. Touching areas become one. */
export function union(...regions: Region[]): Region {
  return clip(ClipType.ctUnion, regions.flat(), []);
}

/** `subject` less every other region. */
export function difference(subject: Region, ...others: Region[]): Region {
  return clip(ClipType.ctDifference, subject, others.flat());
}

/** The part of both. Where two areas only touch, nothing. */
export function intersection(a: Region, b: Region): Region {
  return clip(ClipType.ctIntersection, a, b);
}

/** The even-odd reading of rings that may lie in each other: how an outline with holes becomes a region. */
export function regionOfRings(rings: readonly Ring[]): Region {
  return run(ClipType.ctUnion, rings, [], PolyFillType.pftEvenOdd);
}

/**
 * The region grown with mitred corners: edges move out by `distance`, corners sharper than 60° (mitre limit 2)
 * are cut off square at `distance` from their point. Contains every point within `distance` of the region, to
 * the rounding of its corners; exact for rectilinear regions. Negative distances shrink.
 */
export function offsetMitred(region: Region, distance: Hundredth): Region {
  return offset(region, distance, JoinType.jtMiter);
}

/** Every point within `distance` of the region; round corners are drawn with chords within 0.02 mm. */
export function offsetRound(region: Region, distance: Hundredth): Region {
  return offset(region, distance, JoinType.jtRound);
}

function clip(type: number, subject: Region, clipWith: Region): Region {
  if (subject.length === 0 && type !== ClipType.ctUnion) return [];
  return run(type, pathsOf(subject), pathsOf(clipWith), PolyFillType.pftPositive);
}

function run(type: number, subject: readonly Ring[], clipWith: readonly Ring[], fill: number): Region {
  const region = execute(type, subject, clipWith, fill);
  // Going over it again joins what shares an edge and takes slits apart.
  return hasSlit(region) ? execute(ClipType.ctUnion, pathsOf(region), [], PolyFillType.pftPositive) : region;
}

function execute(type: number, subject: readonly Ring[], clipWith: readonly Ring[], fill: number): Region {
  const origin = lowerLeft([...subject, ...clipWith]);
  const clipper = new ClipperLib.Clipper();
  // Rings that touch themselves in a point come apart into simple ones.
  clipper.StrictlySimple = true;
  clipper.AddPaths(toPaths(subject, origin), PolyType.ptSubject, true);
  clipper.AddPaths(toPaths(clipWith, origin), PolyType.ptClip, true);
  const tree = new ClipperLib.PolyTree();
  clipper.Execute(type, tree, fill, fill);
  return fromTree(tree, origin);
}

function offset(region: Region, distance: Hundredth, join: number): Region {
  if (distance === 0 || region.length === 0) return region;
  const rings = pathsOf(region);
  const origin = lowerLeft(rings);
  const clipper = new ClipperLib.ClipperOffset(2, 2);
  clipper.AddPaths(toPaths(rings, origin), join, EndType.etClosedPolygon);
  const tree = new ClipperLib.PolyTree();
  clipper.Execute(tree, distance);
  return fromTree(tree, origin);
}

function pathsOf(region: Region): Ring[] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes]);
}

function lowerLeft(rings: readonly Ring[]): Point {
  let x = Infinity;
  let y = Infinity;
  for (const ring of rings) {
    for (const point of ring) {
      if (point.x < x) x = point.x;
      if (point.y < y) y = point.y;
    }
  }
  return x === Infinity ? { x: 0, y: 0 } : { x, y };
}

function toPaths(rings: readonly Ring[], origin: Point): Path[] {
  return rings.map((ring) => ring.map(({ x, y }) => ({ X: x - origin.x, Y: y - origin.y })));
}

interface TreeNode {
  m_polygon: Path;
  m_Childs: TreeNode[];
}

function fromTree(tree: unknown, origin: Point): Region {
  const polygons: Polygon[] = [];
  const collect = (node: TreeNode) => {
    for (const child of node.m_Childs) {
      const outer = toRing(child.m_polygon, origin, true);
      if (!isResidue(outer)) {
        const holes = child.m_Childs.map((hole) => toRing(hole.m_polygon, origin, false));
        polygons.push({ outer, holes: holes.filter((hole) => !isResidue(hole)).sort(byFirstCorner) });
      }
      for (const hole of child.m_Childs) collect(hole);
    }
  };
  collect(tree as TreeNode);
  return polygons.sort((a, b) => byFirstCorner(a.outer, b.outer));
}

/**
 * Whether a ring encloses nothing but what rounding left between two sloping edges: on average thinner than a
 * hundredth. A level or upright strip is at least one hundredth wide and stays.
 */
function isResidue(ring: Ring): boolean {
  if (ring.length < 3) return true;
  const double = Math.abs(doubleSignedArea(ring));
  const polygon = { outer: ring, holes: [] };
  return double < 0.99 * perimeter(polygon) && !isRectilinear(polygon);
}

function toRing(path: Path, origin: Point, anticlockwise: boolean): Ring {
  const corners = cornersOnly(path.map(({ X, Y }) => ({ x: X + origin.x, y: Y + origin.y })));
  if (doubleSignedArea(corners) > 0 !== anticlockwise) corners.reverse();
  let first = 0;
  corners.forEach((corner, i) => {
    if (isBefore(corner, corners[first]!)) first = i;
  });
  return [...corners.slice(first), ...corners.slice(0, first)];
}

/**
 * Points without a turn dropped: repeated ones, those in line with both neighbours, tips of spikes. Dropping
 * one may undo the turn of the one before it, so that one is looked at again.
 */
function cornersOnly(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    while (kept.length >= 2 && !turns(kept.at(-2)!, kept.at(-1)!, point)) kept.pop();
    if (kept.length !== 1 || kept[0]!.x !== point.x || kept[0]!.y !== point.y) kept.push(point);
  }
  let start = 0;
  for (;;) {
    const left = kept.length - start;
    if (left < 3) return [];
    if (!turns(kept.at(-2)!, kept.at(-1)!, kept[start]!)) kept.pop();
    else if (!turns(kept.at(-1)!, kept[start]!, kept[start + 1]!)) start += 1;
    else return kept.slice(start);
  }
}

function turns(a: Point, b: Point, c: Point): boolean {
  return (b.x - a.x) * (c.y - b.y) !== (b.y - a.y) * (c.x - b.x);
}

function byFirstCorner(a: Ring, b: Ring): number {
  return a[0]!.y - b[0]!.y || a[0]!.x - b[0]!.x;
}

function isBefore(a: Point, b: Point): boolean {
  return a.y < b.y || (a.y === b.y && a.x < b.x);
}
