import { flattenVertices } from '../geometry/arc';
import { boxesHolding } from '../geometry/box-index';
import { boxOf, locate, type Polygon } from '../geometry/polygon';
import type { Wall } from '../job/schema';
import { outlineOf } from '../survey/keep-out';
import { toHundredth, type Mm } from '../units';
import { tolerances } from './pull-range';
import type { HoldingZone } from './zone-ground';

interface WallPoint {
  readonly x: Mm;
  readonly y: Mm;
}

/** How far the finished face stands before the bare wall, mm; null: not known. `zone` undefined: the bare wall itself. */
export interface Level {
  readonly zone: HoldingZone | undefined;
  readonly height: Mm | null;
}

/** Where on a wall something can bear on it, and how far forward its face is there. */
export interface WallContact {
  /** False over an opening or a fitting, and beyond the wall. */
  isWall(at: WallPoint): boolean;
  levelAt(at: WallPoint): Level;
}

export function contactOf(wall: Wall, zones: readonly HoldingZone[]): WallContact {
  const whole: Polygon = { outer: flattenVertices(wall.outline, 'inscribed').ring, holes: [] };
  const objects = [...wall.openings, ...wall.fittings].map((placed): Polygon => ({
    outer: outlineOf(placed, 'circumscribed').ring,
    holes: [],
  }));
  const parts = zones.flatMap((zone) => zone.area.area.map((polygon) => ({ zone, polygon })));
  const objectsAt = finder(objects);
  const partsAt = finder(parts.map(({ polygon }) => polygon));
  return {
    isWall: (at) => {
      const point = { x: toHundredth(at.x), y: toHundredth(at.y) };
      return locate(point, whole) !== 'outside' && objectsAt(at) === undefined;
    },
    levelAt(at) {
      const i = partsAt(at);
      return i === undefined ? { zone: undefined, height: 0 } : levelOf(parts[i]!.zone);
    },
  };
}

export function levelOf(zone: HoldingZone): Level {
  return { zone, height: zone.buildUp.figures.thickness.value };
}

/** Whether what bears on all of them does not lie flat: they differ by more than a gap may. */
export function isUneven(levels: readonly Level[]): boolean {
  if (new Set(levels.map(({ zone }) => zone)).size < 2) return false;
  const heights = levels.map(({ height }) => height ?? NaN);
  return !(Math.max(...heights) - Math.min(...heights) <= tolerances.gap + 1e-9);
}

/** The first of some polygons that holds a point; edges belong to none. */
function finder(polygons: readonly Polygon[]): (at: WallPoint) => number | undefined {
  const holding = boxesHolding(polygons.map(({ outer }) => boxOf(outer)));
  return (at) => {
    const point = { x: toHundredth(at.x), y: toHundredth(at.y) };
    return holding(point).find((i) => locate(point, polygons[i]!) === 'inside');
  };
}
