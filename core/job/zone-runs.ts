import { toHundredth, type Hundredth } from '../units';
import { endsOf, riseOf, wallAfter } from './corners';
import type { Job, Layout, Wall, Zone } from './schema';

/** A zone that stands in a run, and how the first part's wall frame is carried into its own. */
export interface RunPart {
  readonly wall: Wall;
  readonly zone: Zone;
  /** Added to a point of the first part's wall frame, hundredths. */
  readonly dx: Hundredth;
  readonly dy: Hundredth;
}

/** Parts of one zone on wall after wall whose panel lines continue, from the left; two at least. */
export type ZoneRun = readonly RunPart[];

/**
 * The runs of panel lines round corners.
 *
 * Lines are counted on the faces of the walls, as if the corner were folded out flat, less what a part says is to be
 * skipped; levels go over by the difference of the walls' datums. A zone that runs on all the way round a room begins
 * on the wall listed first.
 *
 * @returns by wall and zone (`runKey`), every part of a run with the same list; zones whose lines stand by themselves have none
 */
export function zoneRuns(job: Job): ReadonlyMap<string, ZoneRun> {
  const runs = new Map<string, ZoneRun>();
  const links = linksOf(job);
  if (links.size === 0) return runs;
  const followers = new Set([...links.values()].map(({ wall, zone }) => runKey(wall.id, zone.id)));
  const start = (wall: Wall, zone: Zone) => {
    const run: RunPart[] = [{ wall, zone, dx: 0, dy: 0 }];
    for (;;) {
      const last = run.at(-1)!;
      const next = links.get(runKey(last.wall.id, last.zone.id));
      if (!next || run.some((part) => part.zone === next.zone && part.wall === next.wall)) break;
      const skip = last.zone.runsOn?.skip ?? 0;
      run.push({
        ...next,
        dx:
          last.dx +
          toHundredth(endsOf(next.wall).left) -
          toHundredth(endsOf(last.wall).right) +
          toHundredth(skip),
        dy: last.dy - toHundredth(riseOf(last.wall)),
      });
    }
    if (run.length > 1) for (const part of run) runs.set(runKey(part.wall.id, part.zone.id), run);
  };
  const all = job.walls.flatMap((wall) => wall.zones.map((zone) => ({ wall, zone })));
  for (const { wall, zone } of all) {
    const key = runKey(wall.id, zone.id);
    if (links.has(key) && !followers.has(key)) start(wall, zone);
  }
  for (const { wall, zone } of all) {
    const key = runKey(wall.id, zone.id);
    if (links.has(key) && !runs.has(key)) start(wall, zone);
  }
  return runs;
}

export function runKey(wallId: string, zoneId: string): string {
  return JSON.stringify([wallId, zoneId]);
}

/** The zone that a zone runs on to; undefined where there is none, or the wall's corner leads elsewhere. */
export function nextPart(job: Job, wall: Wall, { runsOn }: Zone): { wall: Wall; zone: Zone } | undefined {
  if (!runsOn || wall.corner?.to !== runsOn.wall) return undefined;
  const other = wallAfter(job, wall);
  const zone = other?.zones.find(({ id }) => id === runsOn.zone);
  return other && zone && { wall: other, zone };
}

/** The zone of which this one is the part round the corner. */
export function partBefore(job: Job, wallId: string, zoneId: string): { wall: Wall; zone: Zone } | undefined {
  for (const wall of job.walls) {
    if (wall.corner?.to !== wallId) continue;
    const zone = wall.zones.find(({ runsOn }) => runsOn?.wall === wallId && runsOn.zone === zoneId);
    if (zone) return { wall, zone };
  }
  return undefined;
}

/** What two parts must have in common for the lines of the one to be those of the other. */
export function haveSamePattern(a: Layout, b: Layout): boolean {
  return (
    a.stock === b.stock &&
    (a.turned ?? false) === (b.turned ?? false) &&
    a.jointGap === b.jointGap &&
    a.stagger === b.stagger &&
    !mixesFormats(a) &&
    !mixesFormats(b)
  );
}

export function mixesFormats({ stock, stocks }: Layout): boolean {
  return (stocks ?? []).some((id) => id !== stock);
}

/** Links whose lines continue, by the key of the part on the left. */
function linksOf(job: Job): Map<string, { wall: Wall; zone: Zone }> {
  const links = new Map<string, { wall: Wall; zone: Zone }>();
  for (const wall of job.walls) {
    for (const zone of wall.zones) {
      if (zone.runsOn?.lines !== 'continue' || !zone.layout) continue;
      const next = nextPart(job, wall, zone);
      if (next?.zone.layout && haveSamePattern(zone.layout, next.zone.layout))
        links.set(runKey(wall.id, zone.id), next);
    }
  }
  return links;
}
