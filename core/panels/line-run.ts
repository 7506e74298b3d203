import { boxOf, type Point, type Polygon, type Region, type Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { Pattern } from './grid';
import type { JointRule } from './redivide';

/** A zone whose panel lines go on elsewhere, or come from there. */
export interface LineRun {
  /** Where the lines come from another part: its start in this wall's frame. Absent in the first part, which finds one. */
  readonly start?: Point;
  /** Areas of the parts that go on from the first, one after the other, as they lie in its frame when folded out flat. */
  readonly parts: readonly Region[];
}

/**
 * The area of a zone with its other parts beside it, for a start that is the best of all of them.
 *
 * A start sees of a place only where it lies within the pitch, so every part is moved right by a whole and even number of
 * pitches: away from the part before, so that no panel is taken to reach round the corner, and with the middle of all
 * where it was within a pitch, so that symmetry is that of the parts folded out.
 */
export function withParts(area: ZoneArea, parts: readonly Region[], { pitchX }: Pattern): ZoneArea {
  let { left, right, bottom, top } = area.box;
  const moved: Polygon[] = [];
  for (const part of parts.filter(({ length }) => length > 0)) {
    const boxes = part.map(({ outer }) => boxOf(outer));
    const apart = right - Math.min(...boxes.map((box) => box.left)) + 1;
    const by = 2 * pitchX * Math.max(1, Math.ceil(apart / (2 * pitchX)));
    moved.push(...part.map((polygon) => movedRight(polygon, by)));
    left = Math.min(left, ...boxes.map((box) => box.left + by));
    right = Math.max(right, ...boxes.map((box) => box.right + by));
    bottom = Math.min(bottom, ...boxes.map((box) => box.bottom));
    top = Math.max(top, ...boxes.map((box) => box.top));
  }
  return { ...area, box: { left, right, bottom, top }, area: [...area.area, ...moved] };
}

/** Level joints go round corners: none of them is moved on one wall alone. */
export function keepingLevels(allowsJoint: JointRule | undefined): JointRule {
  return (axis, ...place) => axis === 'x' && (allowsJoint?.(axis, ...place) ?? true);
}

function movedRight({ outer, holes }: Polygon, by: Hundredth): Polygon {
  const move = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: x + by, y }));
  return { outer: move(outer), holes: holes.map(move) };
}
