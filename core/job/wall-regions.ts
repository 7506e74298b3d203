import { flattenCircle, flattenVertices } from '../geometry/arc';
import { boxOf, rectangle, type Box, type Polygon, type Region } from '../geometry/polygon';
import { toHundredth } from '../units';
import type { Fitting, Opening, Wall, Zone } from './schema';

/** Something on a wall as an area in hundredths, with the box that tells quickly what it cannot meet. */
export interface Placed<T> {
  readonly thing: T;
  readonly region: Region;
  readonly box: Box;
}

export interface WallRegions {
  readonly wall: Wall;
  readonly outline: Placed<Wall>;
  readonly zones: readonly Placed<Zone>[];
  readonly fittings: readonly Placed<Fitting>[];
}

/** The shapes of a sound wall (see `checkJob`) as drawn: arcs inscribed, without clearances. */
export function wallRegions(wall: Wall): WallRegions {
  return {
    wall,
    outline: placed(wall, polygonOf(wall.outline)),
    zones: wall.zones.map((zone) => placed(zone, polygonOf(zone.shape))),
    fittings: wall.fittings.map((fitting) => placed(fitting, polygonOfPlaced(fitting))),
  };
}

export function polygonOf(vertices: Zone['shape']): Polygon {
  return { outer: flattenVertices(vertices, 'inscribed').ring, holes: [] };
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

export function boxWithin(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.bottom >= outer.bottom &&
    inner.top <= outer.top
  );
}

function polygonOfPlaced(object: Opening | Fitting): Polygon {
  if (object.circle) {
    return { outer: flattenCircle(object.circle, object.circle.diameter, 'inscribed').ring, holes: [] };
  }
  if (object.shape) return polygonOf(object.shape);
  const { x = 0, y = 0, width = 0, height = 0 } = object;
  const [left, bottom] = [toHundredth(x), toHundredth(y)];
  return rectangle(left, bottom, toHundredth(x + width) - left, toHundredth(y + height) - bottom);
}

function placed<T>(thing: T, polygon: Polygon): Placed<T> {
  return { thing, region: [polygon], box: boxOf(polygon.outer) };
}
