import type { Wall } from '../../core/job/schema';
import type { NamedChange } from '../job/changes/named-change';
import { setLayout } from '../job/changes/zones';
import { lengthFigure } from '../look/figures';
import type { JointMarked } from './tape-marks';
import type { Axis } from './typed-figure';

/**
 * The change that brings a joint of a zone's panels to a typed figure: the start becomes a picked point. Without
 * stagger every joint can be the start itself; with it the start shifts as far as the joint, as the courses
 * are counted from it.
 *
 * @param from where the joint stands, mm from the datum
 * @param to the typed figure, mm from the datum
 */
export function changeForJoint(
  wall: Wall,
  axis: Axis,
  { id, start }: JointMarked,
  from: number,
  to: number,
): NamedChange {
  const staggered = (wall.zones.find((zone) => zone.id === id)?.layout?.stagger ?? 0) !== 0;
  const at = staggered ? tidy(start[axis] + to - from) : to;
  const picked = axis === 'x' ? { x: at, y: start.y } : { x: start.x, y: at };
  return {
    name: `Start panels of ${id} at ${lengthFigure(at)}`,
    change: setLayout(wall.id, id, { start: picked }).change,
  };
}

/** To 0.01 mm, the step of the clipping kernel. */
function tidy(length: number): number {
  return Math.round(length * 100) / 100;
}
