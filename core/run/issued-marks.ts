import * as v from 'valibot';
import type { Ring } from '../geometry/polygon';
import type { Job } from '../job/schema';
import type { IssuedMark } from '../panels/marks';
import { toHundredth } from '../units';

const ring = v.array(v.tuple([v.number(), v.number()]));

/** The part of issued results that marks are read from; a record may hold more. */
const issuedZones = v.object({
  walls: v.array(
    v.object({ id: v.string(), zones: v.array(v.object({ id: v.string(), panels: v.array(v.unknown()) })) }),
  ),
});
const issuedPanels = v.array(
  v.object({ mark: v.string(), outline: ring, holes: v.optional(v.array(ring), []) }),
);

/** Panels of every zone, unread, by record: a school asks for each of its zones in turn. */
const zonesByRecord = new WeakMap<object, ReadonlyMap<string, readonly unknown[]>>();

/** Marks of a zone's panels as the latest revision issued them; [] before the first. */
export function issuedMarks(job: Job, wallId: string, zoneId: string): IssuedMark[] {
  const results = job.revisions.at(-1)?.results;
  if (!results) return [];
  const panels = v.safeParse(issuedPanels, zonesOf(results).get(keyOf(wallId, zoneId)));
  if (!panels.success) return [];
  return panels.output.map(({ mark, outline, holes }) => ({
    mark,
    outline: { outer: toRing(outline), holes: holes.map(toRing) },
  }));
}

function zonesOf(results: object): ReadonlyMap<string, readonly unknown[]> {
  const known = zonesByRecord.get(results);
  if (known) return known;
  const record = v.safeParse(issuedZones, results);
  const zones = new Map(
    (record.success ? record.output.walls : []).flatMap((wall) =>
      wall.zones.map((zone) => [keyOf(wall.id, zone.id), zone.panels] as const),
    ),
  );
  zonesByRecord.set(results, zones);
  return zones;
}

function keyOf(wallId: string, zoneId: string): string {
  return JSON.stringify([wallId, zoneId]);
}

function toRing(points: readonly (readonly [number, number])[]): Ring {
  return points.map(([x, y]) => ({ x: toHundredth(x), y: toHundredth(y) }));
}
