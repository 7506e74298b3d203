import type { Point } from '../geometry/polygon';
import type { Layout } from '../job/schema';
import type { BoardJoint, CrackPlaces, OpeningCorner } from '../survey/crack-places';
import { toHundredth, type Hundredth } from '../units';
import type { JointRule } from './redivide';
import type { JointRun, SeamAxis } from './seams';

/** How far joints of panels keep away from places where the wall cracks. */
export interface JointClearance {
  readonly places: CrackPlaces;
  readonly corners: Hundredth;
  readonly boardJoints: Hundredth;
}

/** What a layout asks for on a wall; undefined where it asks for nothing, or nothing on the wall cracks. */
export function jointClearance(
  { clearOfCorners = 0, clearOfBoardJoints = 0 }: Layout,
  places: CrackPlaces | undefined,
): JointClearance | undefined {
  if (!places) return undefined;
  const corners = clearOfCorners > 0 ? places.corners : [];
  const boardJoints = clearOfBoardJoints > 0 ? places.boardJoints : [];
  if (corners.length === 0 && boardJoints.length === 0) return undefined;
  return {
    places: { corners, boardJoints },
    corners: toHundredth(clearOfCorners),
    boardJoints: toHundredth(clearOfBoardJoints),
  };
}

/** A joint of panels that comes too near to a corner of an opening or runs too near beside a board joint. */
export type NearJoint = { readonly seam: JointRun; readonly distance: number } & (
  | { readonly kind: 'corner'; readonly corner: OpeningCorner }
  | { readonly kind: 'board-joint'; readonly joint: BoardJoint }
);

/** Every seam with every place that it is too near to, corners first. */
export function nearJointsAmong(seams: readonly JointRun[], clearance: JointClearance): NearJoint[] {
  const { places } = clearance;
  const byCorners = places.corners.flatMap((corner) =>
    seams.flatMap((seam): NearJoint[] => {
      const distance = distanceToCorner(seam, corner);
      return distance < clearance.corners ? [{ kind: 'corner', seam, corner, distance }] : [];
    }),
  );
  const byBoardJoints = places.boardJoints.flatMap((joint) =>
    seams.flatMap((seam): NearJoint[] => {
      const distance = distanceBeside(seam, joint);
      return distance < clearance.boardJoints ? [{ kind: 'board-joint', seam, joint, distance }] : [];
    }),
  );
  return [...byCorners, ...byBoardJoints];
}

/** For whoever moves joints: whether one may run somewhere. */
export function allowsJoint(clearance: JointClearance, gap: Hundredth): JointRule {
  return (axis, at, from, to) => nearJointsAmong([{ axis, at, gap, from, to }], clearance).length === 0;
}

/** From the strip of a joint to a corner, hundredths; 0 where it runs into it. */
export function distanceToCorner({ axis, at, gap, from, to }: JointRun, corner: Point): number {
  const along = axis === 'x' ? 'y' : 'x';
  const across = Math.max(at - corner[axis], corner[axis] - at - gap, 0);
  const beyond = Math.max(from - corner[along], corner[along] - to, 0);
  // Unlike hypot, the root of a whole square is whole: a joint at just the distance asked for is not too near.
  return Math.sqrt(across * across + beyond * beyond);
}

/**
 * Across a joint, from its strip to a board joint that runs alongside it, hundredths.
 *
 * @returns Infinity where they are not parallel within 5 degrees (common practice, no source), or nowhere abreast
 */
export function distanceBeside(seam: JointRun, joint: Pick<BoardJoint, 'from' | 'to'>): number {
  const { axis, at, gap } = seam;
  if (boardJointAxis(joint) !== axis) return Infinity;
  const along = axis === 'x' ? 'y' : 'x';
  const [a, b] = joint.from[along] < joint.to[along] ? [joint.from, joint.to] : [joint.to, joint.from];
  const from = Math.max(seam.from, a[along]);
  const to = Math.min(seam.to, b[along]);
  if (from >= to) return Infinity;
  const placeAt = (t: number) => a[axis] + ((b[axis] - a[axis]) * (t - a[along])) / (b[along] - a[along]);
  const [one, other] = [placeAt(from), placeAt(to)];
  return Math.max(at - Math.max(one, other), Math.min(one, other) - at - gap, 0);
}

/** `x` for a board joint that is upright within 5 degrees, `y` for a level one; undefined for a slanting one. */
export function boardJointAxis({ from, to }: Pick<BoardJoint, 'from' | 'to'>): SeamAxis | undefined {
  const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  if (dx <= mostSlant * dy) return 'x';
  return dy <= mostSlant * dx ? 'y' : undefined;
}

const mostSlant = Math.tan((5 * Math.PI) / 180);
