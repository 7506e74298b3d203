import {
  distanceToBoundary,
  locate,
  polygonArea,
  type Point,
  type Polygon,
} from '../../core/geometry/polygon';
import type { Panel } from '../../core/panels/panel';
import type { Wall } from '../../core/job/schema';
import { objectsOf, pointOf, type MmPoint, type ObjectRef } from '../../core/job/shape';
import { toHundredth } from '../../core/units';
import type { Selection, StationName } from '../job/open-job.svelte';
import { polygonOf } from './rings';

export type Hit = NonNullable<Selection>;

/**
 * What lies under a point of the wall, what a hand most likely means first: whatever contains the point, the
 * smallest first (a socket before the zone it sits in), then what it misses by no more than `tolerance`.
 *
 * @param point wall frame, mm
 * @param tolerance mm; a few px on the screen at the view's scale
 * @param panels of this wall, as worked out; only looked at where they can be chosen
 */
export function hitsAt(
  wall: Wall,
  point: MmPoint,
  tolerance: number,
  station: StationName,
  panels: readonly Panel[] = [],
): Hit[] {
  const at = { x: toHundredth(point.x), y: toHundredth(point.y) };
  const reach = tolerance * 100;
  const found: { hit: Hit; area: number; distance: number }[] = [];
  const look = (hit: Hit, polygon: Polygon) => {
    const distance = distanceTo(at, polygon, reach);
    if (distance <= reach) found.push({ hit, area: polygonArea(polygon), distance });
  };
  for (const kind of kindsAt(station)) {
    if (kind === 'panel') for (const { mark, outline } of panels) look({ kind, id: mark }, outline);
    else for (const object of objectsOf(wall, kind)) look({ kind, id: object.id }, polygonOf(object));
  }
  found.sort((a, b) => Math.sign(a.distance) - Math.sign(b.distance) || a.area - b.area);
  return found.map(({ hit }) => hit);
}

/** The corner of the wall's outline nearest to a point, within `reach` mm. */
export function outlineCornerAt(wall: Wall, point: MmPoint, reach: number): number | null {
  return nearestWithin(wall.outline.map(pointOf), point, reach);
}

/** Index of the nearest of several places within `reach` mm. */
export function nearestWithin(places: readonly MmPoint[], point: MmPoint, reach: number): number | null {
  let best: number | null = null;
  let least = reach;
  places.forEach(({ x, y }, i) => {
    const distance = Math.hypot(x - point.x, y - point.y);
    if (distance <= least) {
      best = i;
      least = distance;
    }
  });
  return best;
}

/**
 * Which of several hits a tap chooses: the first, or, if one of them is chosen already, the one after it, so
 * that tapping again goes through everything that lies there.
 */
export function nextHit(hits: readonly Hit[], chosen: Selection): Hit | null {
  const at = hits.findIndex((hit) => hit.kind === chosen?.kind && hit.id === chosen.id);
  return hits[(at + 1) % (hits.length || 1)] ?? null;
}

/** What a station lets be chosen. */
function kindsAt(station: StationName): readonly (ObjectRef['kind'] | 'panel')[] {
  if (station === 'survey') return ['fitting', 'opening'];
  if (station === 'hanging') return ['hung', 'fitting', 'opening', 'zone'];
  if (station === 'zones' || station === 'price') return ['fitting', 'opening', 'zone'];
  return ['fitting', 'opening', 'panel', 'zone'];
}

/** 0 inside and on the boundary; Infinity where the polygon's box alone is out of reach. */
function distanceTo(point: Point, polygon: Polygon, reach: number): number {
  if (!nearBox(point, polygon, reach)) return Infinity;
  return locate(point, polygon) === 'outside' ? distanceToBoundary(point, polygon) : 0;
}

function nearBox({ x, y }: Point, { outer }: Polygon, reach: number): boolean {
  let [left, right, low, high] = [true, true, true, true];
  for (const corner of outer) {
    if (x >= corner.x - reach) left = false;
    if (x <= corner.x + reach) right = false;
    if (y >= corner.y - reach) low = false;
    if (y <= corner.y + reach) high = false;
  }
  return !(left || right || low || high);
}
