import { moveSharedLine, type SharedLine } from '../../../core/job/shared-edges';
import type { Wall } from '../../../core/job/schema';
import { boxOfObject, findObject, type MmBox, type ObjectRef } from '../../../core/job/shape';
import { growRun } from '../../../core/job/grow-run';
import type { ZoneGrowth } from '../../../core/job/zone-edges';
import type { NamedChange } from './named-change';
import { stretchTo } from './objects';

/** A zone, with its parts round corners one length, made wider, higher or smaller by moving its edges outwards by so much, or inwards. */
export function resizeZone(wallId: string, zoneId: string, growth: ZoneGrowth): NamedChange {
  return {
    name: `Change size of zone ${zoneId}`,
    change: (job) => growRun(job, wallId, zoneId, growth),
  };
}

/** A zone into another box, and every zone on the lines that it shares with its edges. */
export function stretchTogether(
  wall: Wall,
  ref: ObjectRef,
  box: MmBox,
  lines: readonly SharedLine[],
): NamedChange {
  const before = boxOfObject(findObject(wall, ref)!);
  const { name, change } = stretchTo(wall, ref, box);
  const others = new Set(lines.flatMap(({ zones }) => zones).filter((id) => id !== ref.id));
  return {
    name: `${name}, ${[...others].join(', ')} with it`,
    change: (job) =>
      lines.reduce((moved, line) => {
        const [low, high] = line.axis === 'x' ? endsOf(box.x, box.width) : endsOf(box.y, box.height);
        const [wasLow] = line.axis === 'x' ? endsOf(before.x, before.width) : endsOf(before.y, before.height);
        const place = Math.abs(wasLow - line.at) < 0.005 ? low : high;
        return moveSharedLine(moved, wall.id, line, place - line.at, ref.id);
      }, change(job)),
  };
}

function endsOf(from: number, length: number): readonly [number, number] {
  return [from, from + length];
}
