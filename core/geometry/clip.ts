import ClipperLib from 'clipper-lib';
import type { Hundredth } from '../units';
import { doubleSignedArea, type Point, type Polygon, type Region, type Ring } from './polygon';

/*
 * The one file that knows clipper-lib. Coordinates are whole hundredths of a millimetre; a 400 m wall spans
 * 4·10⁷ of them, inside the ±47,453,132 in which the kernel's products stay exact.
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
  return run(ClipType.ctUnion, rings.map(toPath), [], PolyFillType.pftEvenOdd);
}

/**
 * Every point within `distance` of the region in the maximum norm for axis-parallel edges: corners are
 * mitred up to twice the distance, then squared off. Negative distances shrink.
 */
export function offsetMitred(region: Region, distance: Hundredth): Region {
  return offset(region, distance, JoinType.jtMiter);
}

/** Every point within `distance` of the region; arcs drawn inside their circle within 0.02 mm. */
export function offsetRound(region: Region, distance: Hundredth): Region {
  return offset(region, distance, JoinType.jtRound);
}

function clip(type: number, subject: Region, clipWith: Region): Region {
  return run(type, pathsOf(subject), pathsOf(clipWith), PolyFillType.pftNonZero);
}

function run(type: number, subject: Path[], clipWith: Path[], fill: number): Region {
  const clipper = new ClipperLib.Clipper();
  // Rings that touch themselves in a point come apart into simple ones; slits cannot arise.
  clipper.StrictlySimple = true;
  clipper.AddPaths(subject, PolyType.ptSubject, true);
  clipper.AddPaths(clipWith, PolyType.ptClip, true);
  const tree = new ClipperLib.PolyTree();
  clipper.Execute(type, tree, fill, fill);
  return fromTree(tree);
}

function offset(region: Region, distance: Hundredth, join: number): Region {
  if (distance === 0) return region;
  const clipper = new ClipperLib.ClipperOffset(2, 2);
  clipper.AddPaths(pathsOf(region), join, EndType.etClosedPolygon);
  const tree = new ClipperLib.PolyTree();
  clipper.Execute(tree, distance);
  return fromTree(tree);
}

function toPath(ring: Ring): Path {
  return ring.map(({ x, y }) => ({ X: x, Y: y }));
}

function pathsOf(region: Region): Path[] {
  return region.flatMap(({ outer, holes }) => [toPath(outer), ...holes.map(toPath)]);
}

interface TreeNode {
  m_polygon: Path;
  m_Childs: TreeNode[];
}

function fromTree(tree: unknown): Region {
  const polygons: Polygon[] = [];
  const collect = (node: TreeNode) => {
    for (const child of node.m_Childs) {
      const outer = toRing(child.m_polygon, true);
      if (outer.length >= 3) {
        const holes = child.m_Childs.map((hole) => toRing(hole.m_polygon, false));
        polygons.push({ outer, holes: holes.filter((hole) => hole.length >= 3) });
      }
      for (const hole of child.m_Childs) collect(hole);
    }
  };
  collect(tree as TreeNode);
  return polygons;
}

/** Points in line with both neighbours are dropped, so that equal shapes get equal corners. */
function toRing(path: Path, anticlockwise: boolean): Ring {
  const points: Point[] = path.map(({ X, Y }) => ({ x: X, y: Y }));
  const corners = points.filter((point, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    const after = points[(i + 1) % points.length]!;
    return (point.x - before.x) * (after.y - point.y) !== (point.y - before.y) * (after.x - point.x);
  });
  return doubleSignedArea(corners) > 0 === anticlockwise ? corners : corners.reverse();
}
