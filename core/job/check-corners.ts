import type { Finding } from '../finding';
import { pathText, refusal, shown, type Path } from './place';
import type { Job, Wall, Zone } from './schema';

/**
 * Corners lead to another wall of the job, and no two to the same end of one; zones run on to a zone of the wall that the
 * corner leads to, and no two to the same, in the chosen alternative and in those that wait.
 */
export function checkCorners(job: Job): Finding[] {
  const chosen: ZonesOnWalls = {
    zonesOf: (wall) => wall.zones,
    path: (w, z) => ['walls', w, 'zones', z, 'runsOn'],
    isChosen: true,
  };
  const waiting = (job.alternatives ?? []).map(({ zones }, a): ZonesOnWalls => ({
    zonesOf: ({ id }) => (Object.hasOwn(zones, id) ? (zones[id] ?? []) : []),
    path: (w, z) => ['alternatives', a, 'zones', job.walls[w]!.id, z, 'runsOn'],
    isChosen: false,
  }));
  return [...checkEnds(job), ...[chosen, ...waiting].flatMap((set) => checkRuns(job, set))];
}

/** The zones of one alternative. */
interface ZonesOnWalls {
  zonesOf(wall: Wall): readonly Zone[];
  path(wall: number, zone: number): Path;
  readonly isChosen: boolean;
}

function checkEnds(job: Job): Finding[] {
  const findings: Finding[] = [];
  const ends = new Map<string, Path>();
  job.walls.forEach(({ id: own, corner }, w) => {
    if (!corner) return;
    const path: Path = ['walls', w, 'corner', 'to'];
    const refuse = (says: string) => findings.push(refusal(job, path, 'corner-leads-nowhere', says));
    const earlier = ends.get(corner.to);
    if (corner.to === own) refuse('is the wall itself; name another wall, or take the corner out.');
    else if (!job.walls.some(({ id }) => id === corner.to))
      refuse(`is ${shown(corner.to)}, but no wall has that id; name another wall, or take the corner out.`);
    else if (earlier)
      refuse(
        `is ${shown(corner.to)}, whose left end ${pathText(earlier)} has already; two walls cannot meet the same end.`,
      );
    ends.set(corner.to, earlier ?? path);
  });
  return findings;
}

function checkRuns(job: Job, { zonesOf, path: pathOf, isChosen }: ZonesOnWalls): Finding[] {
  const findings: Finding[] = [];
  const parts = new Map<string, Path>();
  job.walls.forEach((wall, w) => {
    const { corner } = wall;
    zonesOf(wall).forEach(({ runsOn }, z) => {
      if (!runsOn) return;
      // The survey may have changed since: such a zone ends at its wall once its alternative is chosen.
      if (!isChosen && corner?.to !== runsOn.wall) return;
      const path = pathOf(w, z);
      const refuse = (says: string) => findings.push(refusal(job, path, 'zone-runs-nowhere', says));
      const key = JSON.stringify([runsOn.wall, runsOn.zone]);
      const earlier = parts.get(key);
      const other = job.walls.find(({ id }) => id === runsOn.wall);
      if (corner?.to !== runsOn.wall) {
        const leads = corner ? `leads to wall ${shown(corner.to)}` : 'has no corner';
        refuse(`names wall ${shown(runsOn.wall)}, but the right end of its own wall ${leads}.`);
      } else if (other && !zonesOf(other).some(({ id }) => id === runsOn.zone))
        refuse(`names zone ${shown(runsOn.zone)}, which wall ${shown(runsOn.wall)} does not have.`);
      else if (earlier)
        refuse(
          `names zone ${shown(runsOn.zone)} of wall ${shown(runsOn.wall)}, to which ${pathText(earlier)} runs on already.`,
        );
      parts.set(key, earlier ?? path);
    });
  });
  return findings;
}
