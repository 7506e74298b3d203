import { boxOfOutline, flattenVertices } from '../geometry/arc';
import { difference, intersection } from '../geometry/clip';
import { boxesMeet, boxOf, type Polygon, type Region } from '../geometry/polygon';
import type { Zone } from '../job/schema';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { boundariesOf } from './boundaries';
import type { ZoneArea } from './zone-area';
import { zoneFindings, type DrawnZone } from './zone-findings';

/**
 * What each zone has of a wall: usable ∩ shape − the shapes of zones listed before it.
 *
 * Promised: areas lie within `usable` and within their own shape, and share nothing with each other; for
 * rectilinear walls and zones they are exact, so that they and what no zone has add up to `usable`. Shapes are
 * inscribed, their holes circumscribed, so that no zone is larger than it was drawn.
 *
 * @returns one for each zone of the wall, in listed order; an area of [] has a finding that says so
 */
export function zoneAreas(survey: SurveyedWall): ZoneArea[] {
  const drawn = survey.wall.zones.map(drawZone);
  return drawn.map((zone, i) => {
    const earlier = drawn.slice(0, i).filter((other) => boxesMeet(other.box, zone.box));
    const area = difference(
      intersection(survey.usable, zone.region),
      earlier.flatMap((other) => other.region),
    );
    return {
      zone: zone.zone,
      shape: zone.shape,
      shapePolygon: zone.polygon,
      box: zone.box,
      area,
      boundaries: boundariesOf(survey, zone, earlier),
      findings: zoneFindings(survey, zone, earlier, area),
    };
  });
}

function drawZone(zone: Zone): DrawnZone {
  const shape = flattenVertices(zone.shape, 'inscribed');
  const holes = zone.holes.map((hole): Polygon => ({
    outer: flattenVertices(hole, 'circumscribed').ring,
    holes: [],
  }));
  const outer = { outer: shape.ring, holes: [] };
  const region: Region = holes.length > 0 ? difference([outer], holes) : [outer];
  return { zone, shape, region, polygon: asDrawn(outer, holes, region), box: boxOfOutline(shape) };
}

/** Holes that leave the shape in one piece become its holes; others are shown as they were drawn. */
function asDrawn(shape: Polygon, holes: readonly Polygon[], region: Region): Polygon {
  const [only, ...more] = region;
  if (only && more.length === 0) return only;
  const box = boxOf(shape.outer);
  const within = holes.filter((hole) => boxesMeet(boxOf(hole.outer), box));
  return { outer: shape.outer, holes: within.map((hole) => [...hole.outer].reverse()) };
}
