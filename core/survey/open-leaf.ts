import type { Box } from '../geometry/polygon';
import { endsOf, usualAngle, wallAfter, wallBefore } from '../job/corners';
import type { Corner, Job, Opening, Wall } from '../job/schema';
import { boxOfObject } from '../job/shape';

/** A door's leaf as it lies against its wall, hundredths, wall frame. */
export interface OpenLeaf {
  /** What it covers, to the wall's end where it reaches beyond that. */
  readonly box: Box;
  /** Where the handle touches; null where there is no wall behind it. */
  readonly handle: Box | null;
}

/**
 * How far open a leaf goes when nothing stops it: right round its hinges until it lies against the wall beside them.
 *
 *        ┌──────┐┌ ─ ─ ─┐
 *        │      ││      │        the opening, and the leaf laid over the wall to the right of its hinges
 *        │○     ││    ╳ │        ╳ where the handle touches
 *        │      ││      │
 *     ───┴──────┴┴──────┴───
 *
 * The leaf is taken to be as wide as its opening.
 *
 * @returns undefined for what is no door, for a door that opens away or has a stop, and where a wall that is met in
 *   an internal corner stops the leaf while it still stands off this one
 */
export function openLeafOf(job: Job, wall: Wall, door: Opening): OpenLeaf | undefined {
  if (door.kind !== 'door' || door.swing === 'away' || door.stop) return undefined;
  const { x, y, width, height } = boxOfObject(door);
  const { left, right } = endsOf(wall);
  const hingesRight = door.hinge === 'right';
  const room = hingesRight ? right - (x + width) : x - left;
  const corner = hingesRight ? wallAfter(job, wall) && wall.corner : wallBefore(job, wall)?.corner;
  if (room <= 0 || (corner && standsOff(corner, room, width))) return undefined;

  /** A stretch of the wall, by how far it is from the hinges. */
  const stretch = (near: number, far: number, bottom: number, top: number): Box => {
    const [from, to] = hingesRight ? [x + width + near, x + width + far] : [x - far, x - near];
    return {
      left: toHundredth(from),
      right: toHundredth(to),
      bottom: toHundredth(bottom),
      top: toHundredth(top),
    };
  };
  const [near, far] = [width - backset.most, width - backset.least];
  const at = door.handle ?? usualHandle;
  const handleMeets = near > 0 && far <= room && at < height;
  return {
    box: stretch(0, Math.min(width, room), y, y + height),
    handle: handleMeets ? stretch(near, far, y + at - handleReach, y + at + handleReach) : null,
  };
}

/**
 * Whether the leaf's edge meets the next wall before the leaf lies flat. In a right or wider corner it does where it is
 * wider than what is left of the wall; in a narrower one that next wall leans over the hinges, and as near as a square
 * to it from them is near enough.
 */
function standsOff({ kind, angle = usualAngle }: Corner, room: number, leaf: number): boolean {
  if (kind !== 'internal') return false;
  return leaf > (angle < 90 ? room * Math.sin((angle * Math.PI) / 180) : room);
}

/** From the leaf's edge to the middle of its handle, mm: common practice in Europe, no source. */
const backset = { least: 55, most: 65 };

/** Half of how high the handle's neck is, mm: common practice, no source. */
const handleReach = 10;

/** Above the door's foot, mm, where nothing is given: common practice, no source. */
const usualHandle = 1050;

function toHundredth(length: number): number {
  return Math.round(length * 100);
}
