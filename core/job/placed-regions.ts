import { flattenCircle, flattenVertices } from '../geometry/arc';
import { boxOf, rectangle, type Box, type Polygon, type Region } from '../geometry/polygon';
import { toHundredth } from '../units';
import type { Fitting, Opening, Zone } from './schema';

/** Something on a wall as an area in hundredths, with the box that tells quickly what it cannot meet. */
export interface Placed<T> {
  readonly thing: T;
  readonly region: Region;
  readonly box: Box;
}

/** As drawn: arcs inscribed. */
export function polygonOf(vertices: Zone['shape']): Polygon {
  return { outer: flattenVertices(vertices, 'inscribed').ring, holes: [] };
}

/** A zone without its holes taken out. */
export function placedZone(zone: Zone): Placed<Zone> {
  return placed(zone, polygonOf(zone.shape));
}

export function placedFitting(fitting: Fitting): Placed<Fitting> {
  return placed(fitting, polygonOfPlaced(fitting));
}

export function placedOpening(opening: Opening): Placed<Opening> {
  return placed(opening, polygonOfPlaced(opening));
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
