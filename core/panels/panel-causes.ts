import { distanceToBoundary, type Box, type Point, type Polygon, type Ring } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { ZoneArea } from '../zones/zone-area';

/** Corners of sloping edges are rounded to whole hundredths, on either side of the boundary they lie on. */
const tolerance = 2;

/**
 * Why each edge of a panel is where it is; ring 0 is the outside, ring i its i-th hole. An edge on the rim of
 * the panel's cell is the stock sheet's own, even where an opening happens to end there too: nothing is cut.
 */
export function causesOf(panel: Polygon, { zone, boundaries }: ZoneArea, cell: Box): EdgeCause[][] {
  const causeOf = (a: Point, b: Point): EdgeCause => {
    if (
      (a.x === b.x && (a.x === cell.left || a.x === cell.right)) ||
      (a.y === b.y && (a.y === cell.bottom || a.y === cell.top))
    ) {
      return { kind: 'stock-edge' };
    }
    const points = [a, b, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }];
    const boundary = boundaries.find(({ polygon }) =>
      points.every((point) => distanceToBoundary(point, polygon) <= tolerance),
    );
    return boundary?.cause ?? { kind: 'zone', id: zone.id };
  };
  const ofRing = (ring: Ring) => ring.map((point, i) => causeOf(point, ring[(i + 1) % ring.length]!));
  return [ofRing(panel.outer), ...panel.holes.map(ofRing)];
}
