import { difference } from '../geometry/clip';
import { openBySquare } from '../geometry/open-by-square';
import {
  boxOf,
  distanceToSegment,
  polygonArea,
  type Point,
  type Polygon,
  type Ring,
} from '../geometry/polygon';
import type { Hundredth } from '../units';
import { leastLostArea, roundingOfCurves, type NarrowPlace } from './narrow-place';

/** A lost part touches an edge if it lies along it for more than 0.1 mm. */
const leastContact = 10;
const leastOpposition = Math.cos(Math.PI / 6) - 1e-9;

/**
 * The narrowest place of a panel with sloping or curved edges, as `narrowPlace` says. Worked out on a finer
 * raster than hundredths, since 0.005 mm along a long sloping edge is more area than a lost part needs.
 */
export function lostToSquare(panel: Polygon, leastWidth: Hundredth): NarrowPlace | null {
  const box = boxOf(panel.outer);
  const extent = Math.max(box.right - box.left, box.top - box.bottom) + 2 * leastWidth;
  // The kernel is exact up to 4.7·10⁷.
  const scale = Math.max(1, Math.min(100, Math.floor(4e7 / extent)));
  const fine = (ring: Ring): Ring =>
    ring.map(({ x, y }) => ({ x: (x - box.left) * scale, y: (y - box.bottom) * scale }));
  const shape: Polygon = { outer: fine(panel.outer), holes: panel.holes.map(fine) };

  const side = Math.max(1, leastWidth - roundingOfCurves) * scale;
  const lost = difference([shape], openBySquare([shape], side, roundingOfCurves * scale));
  let narrowest: NarrowPlace | null = null;
  for (const part of lost) {
    if (polygonArea(part) <= leastLostArea * scale * scale || !touchesOpposite(part, shape, scale)) continue;
    const place = placeOf(part, box.left, box.bottom, scale);
    if (!narrowest || place.width < narrowest.width) narrowest = place;
  }
  return narrowest;
}

interface Edge {
  readonly a: Point;
  readonly b: Point;
}

function touchesOpposite(part: Polygon, panel: Polygon, scale: number): boolean {
  const partEdges = edgesOf(part).filter(
    ({ a, b }) => Math.hypot(b.x - a.x, b.y - a.y) > leastContact * scale,
  );
  const touched = edgesOf(panel).filter(({ a, b }) =>
    partEdges.some(
      (edge) =>
        distanceToSegment(edge.a, a, b) <= roundingOfCurves * scale &&
        distanceToSegment(edge.b, a, b) <= roundingOfCurves * scale,
    ),
  );
  return touched.some((one, i) => touched.slice(i + 1).some((other) => areOpposite(one, other)));
}

/** Whether the directions of two edges are within 30° of opposite. */
function areOpposite(one: Edge, other: Edge): boolean {
  const [ux, uy] = [one.b.x - one.a.x, one.b.y - one.a.y];
  const [vx, vy] = [other.b.x - other.a.x, other.b.y - other.a.y];
  return -(ux * vx + uy * vy) >= leastOpposition * Math.hypot(ux, uy) * Math.hypot(vx, vy);
}

function edgesOf({ outer, holes }: Polygon): Edge[] {
  return [outer, ...holes].flatMap((ring) => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]! })));
}

function placeOf(part: Polygon, left: Hundredth, bottom: Hundredth, scale: number): NarrowPlace {
  const box = boxOf(part.outer);
  const coarse = (value: number) => Math.round(value / scale);
  return {
    width: coarse(Math.min(box.right - box.left, box.top - box.bottom)),
    at: {
      x: left + coarse((box.left + box.right) / 2),
      y: bottom + coarse((box.bottom + box.top) / 2),
    },
  };
}
