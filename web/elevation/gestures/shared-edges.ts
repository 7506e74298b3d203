import { sharedLine, type SharedLine } from '../../../core/job/shared-edges';
import type { Wall } from '../../../core/job/schema';
import type { MmBox, ObjectRef } from '../../../core/job/shape';
import type { SnapLine } from '../snap';
import type { Handle } from './resized-box';

/** Lines that the edges under a handle share with other zones, as they are when the gesture begins. */
export interface Shared {
  readonly lines: readonly SharedLine[];
  /** The zones that move along. */
  readonly along: readonly ObjectRef[];
  /** A box whose shared edges go no further than every zone on them can. */
  within(to: MmBox): MmBox;
  /** Whether something could be snapped to that is not on a shared line itself, and so moves along. */
  stays(line: SnapLine): boolean;
}

/** Null where no zone touches the edges that the handle pulls. */
export function sharedEdges(wall: Wall, ref: ObjectRef, box: MmBox, handle: Handle): Shared | null {
  if (ref.kind !== 'zone') return null;
  const corner = {
    x: handle.x < 0 ? box.x : box.x + box.width,
    y: handle.y < 0 ? box.y : box.y + box.height,
  };
  const through = handle.x !== 0 && handle.y !== 0 ? corner : undefined;
  const across = handle.x === 0 ? null : sharedLine(wall, ref.id, handle.x < 0 ? 'left' : 'right', through);
  const up = handle.y === 0 ? null : sharedLine(wall, ref.id, handle.y < 0 ? 'bottom' : 'top', through);
  const lines = [across, up].flatMap((line) => line ?? []);
  if (lines.length === 0) return null;
  const ids = new Set(lines.flatMap(({ zones }) => zones).filter((id) => id !== ref.id));
  return {
    lines,
    along: [...ids].map((id) => ({ kind: 'zone', id })),
    within: (to) => {
      const x = across && held(across, [box.x, box.width], [to.x, to.width], handle.x < 0);
      const y = up && held(up, [box.y, box.height], [to.y, to.height], handle.y < 0);
      return {
        x: x ? x[0] : to.x,
        y: y ? y[0] : to.y,
        width: x ? x[1] : to.width,
        height: y ? y[1] : to.height,
      };
    },
    stays: ({ axis, at }) => !lines.some((line) => line.axis === axis && Math.abs(line.at - at) < 0.005),
  };
}

type Side = readonly [from: number, length: number];

/** One side of the box with its moving end held within the line's reach. */
function held({ at, least, most }: SharedLine, before: Side, to: Side, low: boolean): Side {
  const end = low ? to[0] : to[0] + to[1];
  const place = at + Math.min(most, Math.max(least, end - at));
  return low ? [place, before[0] + before[1] - place] : [before[0], place - before[0]];
}
