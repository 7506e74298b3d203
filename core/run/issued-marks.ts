import * as v from 'valibot';
import type { Ring } from '../geometry/polygon';
import type { Job } from '../job/schema';
import type { IssuedMark } from '../panels/marks';
import { toHundredth } from '../units';

const ring = v.array(v.tuple([v.number(), v.number()]));

/** The part of issued results that marks are read from; a record may hold more. */
const issuedResults = v.object({
  walls: v.array(
    v.object({
      id: v.string(),
      zones: v.array(
        v.object({
          id: v.string(),
          panels: v.array(
            v.object({ mark: v.string(), outline: ring, holes: v.optional(v.array(ring), []) }),
          ),
        }),
      ),
    }),
  ),
});

/** Marks of a zone's panels as the latest revision issued them; [] before the first. */
export function issuedMarks(job: Job, wallId: string, zoneId: string): IssuedMark[] {
  const record = v.safeParse(issuedResults, job.revisions.at(-1)?.results);
  if (!record.success) return [];
  const zone = record.output.walls
    .find((wall) => wall.id === wallId)
    ?.zones.find((entry) => entry.id === zoneId);
  return (zone?.panels ?? []).map(({ mark, outline, holes }) => ({
    mark,
    outline: { outer: toRing(outline), holes: holes.map(toRing) },
  }));
}

function toRing(points: readonly (readonly [number, number])[]): Ring {
  return points.map(([x, y]) => ({ x: toHundredth(x), y: toHundredth(y) }));
}
