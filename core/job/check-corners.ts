import type { Finding } from '../finding';
import { pathText, refusal, shown, type Path } from './place';
import type { Job } from './schema';

/**
 * Corners lead to another wall of the job, and no two to the same end of one; zones run on to a zone of the wall that the
 * corner leads to, and no two to the same.
 */
export function checkCorners(job: Job): Finding[] {
  const findings: Finding[] = [];
  const ends = new Map<string, Path>();
  const parts = new Map<string, Path>();
  job.walls.forEach((wall, w) => {
    const { corner } = wall;
    if (corner) {
      const path: Path = ['walls', w, 'corner', 'to'];
      const refuse = (says: string) => findings.push(refusal(job, path, 'corner-leads-nowhere', says));
      const earlier = ends.get(corner.to);
      if (corner.to === wall.id) refuse('is the wall itself; name another wall, or take the corner out.');
      else if (!job.walls.some(({ id }) => id === corner.to))
        refuse(`is ${shown(corner.to)}, but no wall has that id; name another wall, or take the corner out.`);
      else if (earlier)
        refuse(
          `is ${shown(corner.to)}, whose left end ${pathText(earlier)} has already; two walls cannot meet the same end.`,
        );
      ends.set(corner.to, earlier ?? path);
    }
    wall.zones.forEach(({ runsOn }, z) => {
      if (!runsOn) return;
      const path: Path = ['walls', w, 'zones', z, 'runsOn'];
      const refuse = (says: string) => findings.push(refusal(job, path, 'zone-runs-nowhere', says));
      const key = JSON.stringify([runsOn.wall, runsOn.zone]);
      const earlier = parts.get(key);
      const other = job.walls.find(({ id }) => id === runsOn.wall);
      if (corner?.to !== runsOn.wall) {
        const leads = corner ? `leads to wall ${shown(corner.to)}` : 'has no corner';
        refuse(`names wall ${shown(runsOn.wall)}, but the right end of its own wall ${leads}.`);
      } else if (other && !other.zones.some(({ id }) => id === runsOn.zone))
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
