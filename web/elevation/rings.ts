import { flattenCircle, flattenVertices } from '../../core/geometry/arc';
import { rectangle, type Polygon } from '../../core/geometry/polygon';
import type { Vertex, Zone } from '../../core/job/schema';
import type { Placed, WallObject } from '../../core/job/shape';
import { toHundredth } from '../../core/units';

const polygons = new WeakMap<object, Polygon>();

/** An opening, fitting or zone as drawn, in hundredths, wall frame; kept while the object stays the same. */
export function polygonOf(object: WallObject): Polygon {
  return remembered(object, () => {
    const placed = object as Placed;
    if (placed.circle) {
      return { outer: flattenCircle(placed.circle, placed.circle.diameter, 'inscribed').ring, holes: [] };
    }
    if (object.shape) {
      const holes = (object as Zone).holes ?? [];
      return { outer: ringOf(object.shape as Vertex[]), holes: holes.map(ringOf) };
    }
    const { x = 0, y = 0, width = 0, height = 0 } = placed;
    return rectangle(toHundredth(x), toHundredth(y), toHundredth(width), toHundredth(height));
  });
}

/** The outline of a wall, likewise. */
export function polygonOfVertices(vertices: readonly Vertex[]): Polygon {
  return remembered(vertices, () => ({ outer: ringOf(vertices), holes: [] }));
}

function remembered(key: object, make: () => Polygon): Polygon {
  const known = polygons.get(key);
  if (known) return known;
  const polygon = make();
  polygons.set(key, polygon);
  return polygon;
}

function ringOf(vertices: readonly Vertex[]) {
  return flattenVertices(vertices, 'inscribed').ring;
}
