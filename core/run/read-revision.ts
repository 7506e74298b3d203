import { workOutBuildUp } from '../build-up/worked-build-up';
import { readJobObject } from '../job/read';
import type { Job, Revision } from '../job/schema';
import { hungResults } from '../holding/judge-wall';
import { surveyWall } from '../survey/survey';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { zoneAreas } from '../zones/zone-areas';
import {
  parseFrozen,
  thawCutting,
  thawFindings,
  thawLayers,
  thawLayout,
  type FrozenResults,
} from './frozen-results';
import { orderOf } from './job-cutting';

/**
 * What a revision was issued with, from its record: wall and zones as its job draws them, panels, plan and findings as
 * they were frozen. Nothing is laid out or cut again.
 *
 * @returns `fault`: why its documents cannot be printed from the record, in a sentence
 */
export function readRevision(revision: Revision): { worked: WorkedOut } | { fault: string } {
  const lacks = (what: string) => ({
    fault: `Revision ${revision.id} cannot be printed from its record, ${what}; open the file that was saved when it was issued.`,
  });
  const { job } = readJobObject({ ...revision.job, revisions: [] });
  if (!job) return lacks('because the job in it cannot be read');
  const frozen = parseFrozen(revision.results);
  if (!frozen) return lacks('because it holds no results that drawings can be made from');
  const walls = thawWalls(job, frozen);
  if (!walls || !isWhole(job, frozen)) return lacks('because its job and its results do not belong together');
  const cutting = thawCutting(frozen, job.currency);
  return {
    worked: {
      job,
      walls,
      cutting: { ...cutting, order: orderOf(job, cutting.sheets) },
      findings: thawFindings(frozen),
      steps: frozen.steps,
    },
  };
}

/** null where a wall or zone of the job has no results. */
function thawWalls(job: Job, { walls }: FrozenResults): WorkedWall[] | null {
  const thawed: WorkedWall[] = [];
  for (const wall of job.walls) {
    const zonesOf = walls.find(({ id }) => id === wall.id)?.zones ?? [];
    const survey = surveyWall(wall);
    const zones = zoneAreas(survey).map((area) => {
      const zone = zonesOf.find(({ id }) => id === area.zone.id);
      if (!zone) return undefined;
      const buildUp = workOutBuildUp(job, survey, area, thawLayers(zone));
      return { area, layout: thawLayout(zone), buildUp };
    });
    const known = zones.filter((zone) => zone !== undefined);
    if (known.length < zones.length) return null;
    // Verdicts follow from the frozen job and layouts; what magnets do has not changed since.
    thawed.push({ survey, zones: known, ...hungResults(job, wall, known) });
  }
  return thawed;
}

/** Every panel is laid from stock of the job and placed exactly once. */
function isWhole(job: Job, { walls, cutting }: FrozenResults): boolean {
  const stock = new Set(job.stock.map(({ id }) => id));
  const panels = walls.flatMap(({ zones }) => zones.flatMap((zone) => zone.panels));
  const marks = panels.map(({ mark }) => mark);
  const placed = cutting.sheets.flatMap(({ placements }) => placements.map(({ mark }) => mark));
  return (
    new Set(marks).size === marks.length &&
    [...marks].sort().join('\n') === [...placed].sort().join('\n') &&
    panels.every((panel) => stock.has(panel.stock)) &&
    cutting.sheets.every((sheet) => stock.has(sheet.stock))
  );
}
