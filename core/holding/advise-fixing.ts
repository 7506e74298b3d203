import { changeHung } from '../job/hung';
import { addFixingPoint, newFixingPoint } from '../job/ground';
import type { FixingPoint } from '../job/ground-schema';
import type { HungItem } from '../job/hung-schema';
import { nameOfFixingPoint } from '../job/names';
import { findWall } from '../job/shape';
import type { Job, Wall } from '../job/schema';

/** What magnets cannot carry is screwed: how, and the change that records it. */
export interface FixingAdvice {
  readonly words: string;
  readonly also: string;
  readonly change: (job: Job) => Job;
}

const strength =
  'Screws, ground and what they carry are for whoever answers for the fixing; find cables and pipes before drilling.';

/** To what lies under the item already, or to a pattress that is put into the survey there. */
export function adviseFixing(wall: Wall, item: HungItem): FixingAdvice {
  const there = (wall.fixingPoints ?? []).find((point) => liesUnder(point, item));
  if (there)
    return {
      words: `Screw it to ${nameOfFixingPoint(there)}, which lies under it.`,
      also: strength,
      change: (job) => changeHung(job, wall.id, item.id, { fixingPoints: [there.id] }),
    };
  return {
    words: 'Screw it to a fixing point: a pattress under it.',
    also: `The pattress is put into the survey under the item; it has to be drawn and fixed before steel hides it. ${strength}`,
    change(job) {
      const now = findWall(job, wall.id);
      if (!now) return job;
      const middle = { x: item.x + item.width / 2, y: item.y + item.height / 2 };
      const usual = newFixingPoint(now, 'pattress', middle);
      const width = Math.max(item.width, Math.min(usual.width, 2 * item.width));
      // Screws want wood behind the whole of what is screwed on.
      const point = { ...usual, x: middle.x - width / 2, y: item.y, width, height: item.height };
      return changeHung(addFixingPoint(job, wall.id, point), wall.id, item.id, { fixingPoints: [point.id] });
    },
  };
}

function liesUnder({ kind, x, y, width, height = 0 }: FixingPoint, item: HungItem): boolean {
  // Of a hole the middle is given, of the others the lower left corner.
  const [left, bottom, w, h] = kind === 'hole' ? [x, y, 0, 0] : [x, y, width, height];
  return (
    left <= item.x + item.width &&
    left + w >= item.x &&
    bottom <= item.y + item.height &&
    bottom + h >= item.y
  );
}
