import type { Finding } from '../finding';
import { difference, intersection } from '../geometry/clip';
import type { Outline } from '../geometry/outline';
import {
  boxContains,
  boxesMeet,
  boxOf,
  isBox,
  regionArea,
  type Box,
  type Polygon,
  type Region,
} from '../geometry/polygon';
import type { Zone } from '../job/schema';
import { negligibleArea, objectName, wallName } from '../survey/survey-findings';
import type { SurveyedWall } from '../survey/surveyed-wall';

/** A zone's shape on the wall, before anything is taken off it. */
export interface DrawnZone {
  readonly zone: Zone;
  readonly shape: Outline;
  /** The shape less its holes. */
  readonly region: Region;
  readonly polygon: Polygon;
  readonly box: Box;
}

/** What a zone's place on the wall says to whoever drew it. */
export function zoneFindings(
  survey: SurveyedWall,
  zone: DrawnZone,
  earlier: readonly DrawnZone[],
  area: Region,
): Finding[] {
  const { id } = zone.zone;
  const findings: Finding[] = [];
  const warn = (code: string, text: string) =>
    findings.push({ level: 'warning', code, wall: survey.wall.id, object: id, text });
  const name = zoneName(zone.zone).replace(/^z/, 'Z');
  const wall = wallName(survey.wall);

  if (area.length === 0) {
    warn(
      'zone-without-area',
      `${name} on ${wall} has no area left: all of it is taken by openings, fittings, the rim or zones listed ` +
        'before it; move it, make it larger or list it first.',
    );
  }
  if (reachesBeyond(zone, { outer: survey.outline.ring, holes: [] })) {
    warn(
      'zone-outside-wall',
      `${name} reaches beyond the edge of ${wall}, where it has no area; move it or make it smaller.`,
    );
  }
  for (const other of earlier) {
    const shared = regionArea(intersection(zone.region, other.region));
    if (shared <= negligibleArea(zone.polygon)) continue;
    warn(
      'zones-overlap',
      `${name} overlaps ${zoneName(other.zone)} on ${wall}, which is listed first and has ` +
        'the shared area; move their common edge, or list them the other way round.',
    );
  }
  findings.push(...fittingsAcrossEdge(survey, zone));
  return findings;
}

function reachesBeyond(zone: DrawnZone, wall: Polygon): boolean {
  if (isBox(wall) && boxContains(boxOf(wall.outer), zone.box)) return false;
  return regionArea(difference(zone.region, [wall])) > negligibleArea(zone.polygon);
}

/** Fittings that are partly in the zone and partly out of it: the edge of the steel would run under them. */
function fittingsAcrossEdge({ wall, keepOuts }: SurveyedWall, zone: DrawnZone): Finding[] {
  const findings: Finding[] = [];
  for (const fitting of wall.fittings) {
    const keepOut = keepOuts.find(({ kind, id }) => kind === 'fitting' && id === fitting.id);
    if (!keepOut) continue;
    const shape: Polygon = { outer: keepOut.bare.ring, holes: [] };
    const box = boxOf(shape.outer);
    if (!boxesMeet(box, zone.box) || (isBox(zone.polygon) && boxContains(zone.box, box))) continue;
    const shared = regionArea(intersection(zone.region, [shape]));
    const least = negligibleArea(shape);
    if (shared <= least || regionArea([shape]) - shared <= least) continue;
    findings.push({
      level: 'warning',
      code: 'fitting-across-zone-edge',
      wall: wall.id,
      object: fitting.id,
      text:
        `${objectName(fitting)} on ${wallName(wall)} lies across the edge of ${zoneName(zone.zone)}; ` +
        'move the edge of the zone clear of it, or all the way round it.',
    });
  }
  return findings;
}

function zoneName({ id, name }: Zone): string {
  return name ? `zone ${id} (${name})` : `zone ${id}`;
}
