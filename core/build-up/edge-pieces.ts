import type { Outline } from '../geometry/outline';
import {
  boxesMeet,
  boxOf,
  distanceToSegment,
  type Box,
  type Point,
  type Region,
  type Ring,
} from '../geometry/polygon';
import type { Zone } from '../job/schema';
import { pointOf } from '../job/shape';
import type { EdgeCause } from '../survey/surveyed-wall';
import { toHundredth, toMm, type Mm } from '../units';
import type { ZoneArea } from '../zones/zone-area';

/** A straight stretch of the edge of a zone's area that ends where it is for one reason. Wall frame, hundredths. */
export interface EdgePiece {
  readonly from: Point;
  readonly to: Point;
  readonly length: Mm;
  readonly cause: EdgeCause;
  /** Number of the edge of the zone's shape that it was drawn along, from 1; null where it was not, or of a hole. */
  readonly edge: number | null;
}

/** Rounding may put an edge this far off what cut it. */
const REACH = 2;

/**
 * The edge of a zone's area in pieces, ring by ring; the area is on the left of each piece. What stands on the wall comes
 * before lines that someone drew, as in `ZoneArea.boundaries`.
 *
 * @param beside other zones: a piece ends where one of theirs begins, but they are not its cause
 */
export function edgePieces(area: ZoneArea, beside: Region = []): EdgePiece[][] {
  const boundaries = area.boundaries.map(({ cause, polygon }) => ({
    cause,
    box: boxOf(polygon.outer),
    segments: [polygon.outer, ...polygon.holes].flatMap(segmentsOf),
  }));
  for (const { outer } of beside) {
    boundaries.push({
      cause: { kind: 'zone', id: area.zone.id },
      box: boxOf(outer),
      segments: segmentsOf(outer),
    });
  }
  const drawn = drawnEdges(area.zone, area.shape);
  return area.area
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((ring) => segmentsOf(ring).flatMap((segment) => piecesOf(segment, boundaries, drawn, area)));
}

interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly box: Box;
}

function segmentsOf(ring: Ring): Segment[] {
  return ring.map((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    return { from, to, box: boxOf([from, to]) };
  });
}

interface Boundary {
  readonly cause: EdgeCause;
  readonly box: Box;
  readonly segments: readonly Segment[];
}

/** Cut at the ends of every boundary that runs along it, so that each piece has one cause. */
function piecesOf(
  { from, to, box }: Segment,
  boundaries: readonly Boundary[],
  drawn: readonly DrawnEdge[],
  area: ZoneArea,
): EdgePiece[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const along = (p: Point) => (p.x - from.x) * ux + (p.y - from.y) * uy;
  const off = (p: Point) => Math.abs((p.y - from.y) * ux - (p.x - from.x) * uy);
  const beside = boundaries.flatMap(({ cause, box: all, segments }) => {
    if (!boxesMeet(all, box, REACH)) return [];
    const found = segments.filter(
      (other) => boxesMeet(other.box, box, REACH) && off(other.from) <= REACH && off(other.to) <= REACH,
    );
    return found.map((other) => ({ from: along(other.from), to: along(other.to), cause }));
  });
  const cuts = beside
    .flatMap((other) => [other.from, other.to])
    .filter((t) => t > REACH && t < length - REACH);
  const ends = [0, ...cuts.sort((a, b) => a - b), length].filter(
    (t, i, all) => i === 0 || t - all[i - 1]! > REACH,
  );
  if (ends.at(-1) !== length) ends[ends.length - 1] = length;
  const at = (t: number): Point => ({ x: Math.round(from.x + ux * t), y: Math.round(from.y + uy * t) });
  return ends.slice(1).map((end, i): EdgePiece => {
    const start = ends[i]!;
    const middle = (start + end) / 2;
    const reason = beside.find(
      (other) => Math.min(other.from, other.to) <= middle && middle <= Math.max(other.from, other.to),
    );
    const cause = reason?.cause ?? { kind: 'zone', id: area.zone.id };
    const edge = drawnAt(at(middle), drawn);
    return { from: at(start), to: at(end), length: toMm(end - start), cause, edge };
  });
}

interface DrawnEdge {
  readonly edge: number;
  readonly segments: readonly Segment[];
}

/** Edges of the shape by the number of the corner that they begin at as listed, whichever way round that is. */
function drawnEdges(zone: Zone, { ring, arcs }: Outline): DrawnEdge[] {
  const segments = segmentsOf(ring);
  const isArc = new Map<number, number>();
  arcs.forEach(({ firstEdge, edges }, a) => {
    for (let i = 0; i < edges; i++) isArc.set((firstEdge + i) % ring.length, a);
  });
  const groups: Segment[][] = [];
  segments.forEach((segment, i) => {
    const arc = isArc.get(i);
    if (arc !== undefined && i > 0 && isArc.get(i - 1) === arc) groups.at(-1)!.push(segment);
    else groups.push([segment]);
  });
  const count = zone.shape.length;
  if (groups.length !== count) return [];
  const second = pointOf(zone.shape[1]!);
  const { to } = groups[0]!.at(-1)!;
  const isForward = to.x === toHundredth(second.x) && to.y === toHundredth(second.y);
  return groups.map((group, i) => ({ edge: isForward ? i + 1 : count - i, segments: group }));
}

function drawnAt(point: Point, drawn: readonly DrawnEdge[]): number | null {
  const found = drawn.find(({ segments }) =>
    segments.some(
      ({ from, to, box }) =>
        boxesMeet(box, { left: point.x, right: point.x, bottom: point.y, top: point.y }, REACH) &&
        distanceToSegment(point, from, to) <= REACH,
    ),
  );
  return found?.edge ?? null;
}
