import { flattenVertices } from '../geometry/arc';
import { boxesMeet, boxOf, locate, type Box, type Point, type Ring } from '../geometry/polygon';
import type { Wall } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import { outlineOf } from './keep-out';

/** A joint of the ground between boards; hundredths, wall frame. */
export interface BoardJoint {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
}

/** A corner of an opening as it was surveyed, without its clearance. */
export interface OpeningCorner extends Point {
  readonly opening: string;
  /** Of the opening. */
  readonly kind: string;
}

/** Where a wall's surface cracks, so that joints of panels are better kept away from there. */
export interface CrackPlaces {
  readonly corners: readonly OpeningCorner[];
  readonly boardJoints: readonly BoardJoint[];
}

/** Flatter than this, a corner is the beginning of an arch; degrees. Common practice, no source. */
const leastTurn = 30;

/**
 * The corners of a wall's openings, as far as they lie within it, and the joints between its boards; of both what is
 * within reach of a box.
 */
export function crackPlaces(wall: Wall, box: Box, reach: Hundredth): CrackPlaces {
  const whole = { outer: flattenVertices(wall.outline, 'inscribed').ring, holes: [] };
  const isNear = (points: readonly Point[]) => boxesMeet(boxOf(points), box, reach);
  const corners = wall.openings.flatMap((opening) =>
    sharpCorners(outlineOf(opening, 'inscribed').ring)
      // A crack begins where the wall goes on all round the corner: not at a door's foot.
      .filter((corner) => isNear([corner]) && locate(corner, whole) === 'inside')
      .map(({ x, y }) => ({ opening: opening.id, kind: opening.kind, x, y })),
  );
  const boardJoints = (wall.lines ?? [])
    .filter(({ kind }) => kind === 'board-joint')
    .map(({ id, from, to }) => ({
      id,
      from: { x: toHundredth(from[0]), y: toHundredth(from[1]) },
      to: { x: toHundredth(to[0]), y: toHundredth(to[1]) },
    }))
    .filter(({ from, to }) => isNear([from, to]));
  return { corners, boardJoints };
}

/** Corners that point out of the opening, into the wall; the ring runs anticlockwise. */
function sharpCorners(ring: Ring): Point[] {
  return ring.filter((corner, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    const after = ring[(i + 1) % ring.length]!;
    const [ax, ay] = [corner.x - before.x, corner.y - before.y];
    const [bx, by] = [after.x - corner.x, after.y - corner.y];
    const turn = (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI;
    return turn >= leastTurn;
  });
}
