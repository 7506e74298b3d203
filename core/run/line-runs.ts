import type { Point, Region, Ring } from '../geometry/polygon';
import type { Job, Wall } from '../job/schema';
import { runKey, zoneRuns, type RunPart, type ZoneRun } from '../job/zone-runs';
import type { LineRun } from '../panels/line-run';
import type { Steps } from '../panels/pace';
import type { ZoneLayout } from '../panels/panel';
import { surveyWall } from '../survey/survey';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from '../zones/zone-area';
import { zoneAreas } from '../zones/zone-areas';

/** A wall's survey and the areas of its zones. */
export interface MeasuredWall {
  readonly survey: SurveyedWall;
  readonly areas: readonly ZoneArea[];
}

/** The walls of a job, each measured once when it is asked for, and how zones hang together round corners. */
export interface LineRuns {
  measure(wall: Wall): MeasuredWall;
  /** The other walls that a wall's panels depend on, in listed order. */
  tiedWalls(wall: Wall): readonly Wall[];
  runOf(wall: Wall, area: ZoneArea): ZoneRun | undefined;
}

/** @param surveyed a wall's survey, where it is known already */
export function lineRuns(job: Job, surveyed: (wall: Wall) => SurveyedWall = surveyWall): LineRuns {
  const runs = zoneRuns(job);
  const measured = new Map<Wall, MeasuredWall>();
  return {
    measure(wall) {
      let found = measured.get(wall);
      if (!found) {
        const survey = surveyed(wall);
        measured.set(wall, (found = { survey, areas: zoneAreas(survey) }));
      }
      return found;
    },
    tiedWalls(wall) {
      if (runs.size === 0) return [];
      const tied = new Set<Wall>();
      for (const { id } of wall.zones) {
        for (const part of runs.get(runKey(wall.id, id)) ?? []) tied.add(part.wall);
      }
      tied.delete(wall);
      return job.walls.filter((other) => tied.has(other));
    },
    runOf: (wall, { zone }) => runs.get(runKey(wall.id, zone.id)),
  };
}

/**
 * What a zone's layout takes from its run: the first part is laid with the areas of all others in view, the others start
 * where its start is carried to.
 *
 * @param layOut lays out the first part, or knows its layout
 */
export function* lineRunOf(
  run: ZoneRun | undefined,
  wall: Wall,
  { zone }: ZoneArea,
  runs: LineRuns,
  layOut: (wall: Wall, area: ZoneArea) => Steps<ZoneLayout | undefined>,
): Steps<LineRun | undefined> {
  const [first, ...others] = run ?? [];
  if (!first) return undefined;
  if (first.wall === wall && first.zone === zone) {
    return { parts: others.map((part) => foldedOut(part, areaOf(part, runs).area)) };
  }
  const own = others.find((part) => part.wall === wall && part.zone === zone);
  const start = (yield* layOut(first.wall, areaOf(first, runs)))?.start;
  return own && start && { start: carried(own, start), parts: [] };
}

/** An area as it lies in the frame of another part of its run when the corners between are folded out flat. */
export function foldedTo(part: RunPart, own: RunPart, area: Region): Region {
  return foldedOut({ ...part, dx: part.dx - own.dx, dy: part.dy - own.dy }, area);
}

function areaOf({ wall, zone }: RunPart, runs: LineRuns): ZoneArea {
  return runs.measure(wall).areas.find((area) => area.zone === zone)!;
}

function carried({ dx, dy }: RunPart, { x, y }: Point): Point {
  return { x: x + dx, y: y + dy };
}

/** An area as it lies in the first part's wall frame when the corners between are folded out flat. */
function foldedOut({ dx, dy }: RunPart, area: Region): Region {
  const move = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: x - dx, y: y - dy }));
  return area.map(({ outer, holes }) => ({ outer: move(outer), holes: holes.map(move) }));
}
