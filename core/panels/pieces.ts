import { intersection } from '../geometry/clip';
import {
  polygonArea,
  rectangleOfBox,
  type Box,
  type Polygon,
  type Region,
  type Ring,
} from '../geometry/polygon';
import { edgesInBand, isInside, passesThrough, type AreaEdges } from './area-edges';
import { blocksInBox, fromLowestLeft, partsOf, polygonOfPart } from './blocks';
import { piecesAlongChains } from './pieces-along-chains';

/** Cuts one cell out of an area: its connected pieces, lowest first, then leftmost. */
export type CutCell = (cell: Box) => Polygon[];

/**
 * Cuts cells of one course out of an area. Where none of the area's sloping edges passes through a cell the
 * pieces are exact, so that the pieces of a rectilinear area add up to it to the last hundredth; elsewhere
 * corners are rounded to whole hundredths, and pieces thinner than that are left out.
 *
 * @param bottom, top the course; every cell has these as its lower and upper edge
 */
export function cutCourse(area: Region, edges: AreaEdges, bottom: number, top: number): CutCell {
  const band = edgesInBand(edges, bottom, top);
  let bandArea: Region | undefined;
  return (cell) => {
    if (!band.sloping.some((edge) => passesThrough(edge, cell))) return exactPieces(band, cell);
    const pieces = piecesAlongChains(band, cell);
    if (pieces) return keepThick(pieces).sort(lowestFirst);
    bandArea ??= intersection(area, [rectangleOfBox(reach(edges, bottom, top))]);
    return keepThick(intersection(bandArea, [rectangleOfBox(cell)])).sort(lowestFirst);
  };
}

function keepThick(pieces: Region): Polygon[] {
  return pieces
    .filter((piece) => {
      const area = polygonArea(piece);
      // No root is drawn for the many that are thick beyond doubt.
      return area > boxesOfEdges(piece) || area >= perimeter(piece) / 2;
    })
    .map(({ outer, holes }) => ({ outer: fromLowestLeft(outer), holes: holes.map(fromLowestLeft) }));
}

/** The sides of the boxes round all edges together: never less than half the perimeter. */
function boxesOfEdges({ outer, holes }: Polygon): number {
  let sum = 0;
  for (const ring of holes.length === 0 ? [outer] : [outer, ...holes]) {
    let a = ring.at(-1)!;
    for (const b of ring) {
      sum += Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
      a = b;
    }
  }
  return sum;
}

function exactPieces(edges: AreaEdges, cell: Box): Polygon[] {
  const { left, bottom, right, top } = cell;
  const isCut =
    edges.vertical.some(({ at, from, to }) => at > left && at < right && from < top && to > bottom) ||
    edges.horizontal.some(({ at, from, to }) => at > bottom && at < top && from < right && to > left);
  if (isCut) return partsOf(blocksInBox(edges, cell)).map(polygonOfPart).sort(lowestFirst);
  return isInside(edges, (left + right) / 2, (bottom + top) / 2) ? [rectangleOfBox(cell)] : [];
}

function lowestFirst(a: Polygon, b: Polygon): number {
  return a.outer[0]!.y - b.outer[0]!.y || a.outer[0]!.x - b.outer[0]!.x;
}

function perimeter({ outer, holes }: Polygon): number {
  const length = (ring: Ring) =>
    ring.reduce((sum, { x, y }, i) => {
      const next = ring[(i + 1) % ring.length]!;
      return sum + Math.hypot(next.x - x, next.y - y);
    }, 0);
  return [outer, ...holes].reduce((sum, ring) => sum + length(ring), 0);
}

/** The band, as wide as the edges reach. */
function reach({ vertical, sloping }: AreaEdges, bottom: number, top: number): Box {
  let left = Infinity;
  let right = -Infinity;
  for (const x of [...vertical.map(({ at }) => at), ...sloping.flatMap(({ a, b }) => [a.x, b.x])]) {
    left = Math.min(left, x);
    right = Math.max(right, x);
  }
  return { left, bottom, right, top };
}
