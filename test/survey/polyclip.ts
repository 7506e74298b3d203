import * as polyclip from 'polyclip-ts';
import type { Polygon, Region, Ring } from '../../core/geometry/polygon';

/*
 * polyclip-ts 0.16.8 (MIT): a general-purpose clipping library on other principles (a Martinez–Rueda sweep in
 * arbitrary precision), for answers that owe nothing to the kernel.
 */

type Geometry = polyclip.Geom;

export function toGeometry(region: Region): Geometry {
  return region.map(({ outer, holes }) => [outer, ...holes].map(pairs));
}

export function geometryOf(polygon: Polygon): Geometry {
  return [polygon.outer, ...polygon.holes].map(pairs);
}

function pairs(ring: Ring): [number, number][] {
  return ring.map(({ x, y }) => [x, y]);
}

export function less(subject: Geometry, ...others: Geometry[]): Geometry {
  return isEmpty(subject) ? [] : polyclip.difference(subject, ...others.filter((other) => !isEmpty(other)));
}

export function both(a: Geometry, b: Geometry): Geometry {
  return isEmpty(a) || isEmpty(b) ? [] : polyclip.intersection(a, b);
}

function isEmpty(geometry: Geometry): boolean {
  return geometry.length === 0;
}

/** Area by the shoelace formula: each ring counts by its own direction, as the library orients them. */
export function areaOf(geometry: Geometry): number {
  let double = 0;
  for (const polygon of geometry as [number, number][][][]) {
    polygon.forEach((ring, i) => {
      const [x0, y0] = ring[0]!;
      let own = 0;
      for (let k = 0; k + 1 < ring.length; k++) {
        const [ax, ay] = ring[k]!;
        const [bx, by] = ring[k + 1]!;
        own += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
      }
      double += i === 0 ? Math.abs(own) : -Math.abs(own);
    });
  }
  return double / 2;
}
