import type { Finding } from '../finding';
import { intersection } from '../geometry/clip';
import { boxesMeet, boxOf, rectangle, regionArea, type Box, type Region } from '../geometry/polygon';
import { ownKindsOf, standsOut } from '../job/fitting-kinds';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from '../job/names';
import type { Job, Opening } from '../job/schema';
import { openLeafOf, type OpenLeaf } from '../survey/open-leaf';
import { negligibleArea } from '../survey/survey-findings';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from './zone-area';

export const leafCode = 'door-leaf-on-wall';

/**
 * Doors whose leaf, laid back against the wall, covers a zone or strikes what stands out of the wall: one finding a
 * door. Flush sockets and switches are in the way of the handle only.
 */
export function doorFindings(job: Job, survey: SurveyedWall, areas: readonly ZoneArea[]): Finding[] {
  return survey.wall.openings.flatMap((door) => {
    const leaf = openLeafOf(job, survey.wall, door);
    return (leaf && findingOf(job, door, leaf, survey, areas)) ?? [];
  });
}

function findingOf(
  job: Job,
  door: Opening,
  { box, handle }: OpenLeaf,
  survey: SurveyedWall,
  areas: readonly ZoneArea[],
): Finding | undefined {
  const covered = namesUnder(box, survey, areas, (kind) => standsOut(kind, ownKindsOf(job)));
  const struck = handle ? namesUnder(handle, survey, areas, () => true) : [];
  const does = [
    ...(covered.length > 0 ? [`the open leaf covers ${listed(covered)}`] : []),
    ...(struck.length > 0 ? [`its handle would strike ${listed(struck)}`] : []),
  ];
  if (does.length === 0) return undefined;
  return {
    level: 'warning',
    code: leafCode,
    wall: survey.wall.id,
    object: door.id,
    text:
      `${sentence(nameOfPlaced(door, 'opening'))} on ${nameOfWall(survey.wall)} can turn back against the wall: ` +
      `${does.join(', and ')}; put a door stop in, hang the door on its other side, or keep that part of the wall clear.`,
  };
}

function namesUnder(
  box: Box,
  { wall, keepOuts }: SurveyedWall,
  areas: readonly ZoneArea[],
  matters: (kind: string) => boolean,
): string[] {
  const zones = areas.filter(({ area }) => covers(box, area)).map(({ zone }) => nameOfZone(zone));
  const fittings = wall.fittings.filter(({ id, kind }) => {
    const keepOut = keepOuts.find((one) => one.kind === 'fitting' && one.id === id);
    return matters(kind) && keepOut && covers(box, [{ outer: keepOut.bare.ring, holes: [] }]);
  });
  return [...zones, ...fittings.map((fitting) => nameOfPlaced(fitting, 'fitting'))];
}

function covers(box: Box, region: Region): boolean {
  const part = rectangle(box.left, box.bottom, box.right - box.left, box.top - box.bottom);
  const near = region.filter(({ outer }) => boxesMeet(boxOf(outer), box));
  return near.length > 0 && regionArea(intersection(near, [part])) > negligibleArea(part);
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
