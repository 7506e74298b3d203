import { union } from '../geometry/clip';
import { boxesMeet, boxOf, type Point, type Polygon } from '../geometry/polygon';
import { sidesOfEdges } from '../survey/sides';
import type { EdgeCause, RimSide, SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from './zone-area';
import type { DrawnZone } from './zone-findings';

/** How far the strips outside the wall's own edges reach, hundredths; only their inner edge matters. */
const STRIP = 100;
/** Rounding may put an edge of the area this far off its boundary. */
const REACH = 2;

/**
 * Everything that may have cut a zone's area, near enough to have done so.
 *
 * Things of the wall come before lines someone drew: where a zone was drawn up to a door, the door is the
 * reason. Order: openings, fittings, movement joints, rim, the wall's own edges (as strips outside it, with the cause of their
 * side of the rim), zones listed before, the zone itself.
 */
export function boundariesOf(
  survey: SurveyedWall,
  zone: DrawnZone,
  earlier: readonly DrawnZone[],
): ZoneArea['boundaries'] {
  const boundaries: { cause: EdgeCause; polygon: Polygon }[] = [];
  const add = (cause: EdgeCause, polygon: Polygon) => {
    if (boxesMeet(boxOf(polygon.outer), zone.box, REACH)) boundaries.push({ cause, polygon });
  };
  for (const { kind, id, grown } of survey.keepOuts) add({ kind, id }, grown);
  for (const { id, strip } of survey.movementJoints) add({ kind: 'movement-joint', id }, strip);
  for (const { side, band } of survey.rim) add({ kind: 'rim', side }, band);
  for (const { side, strip } of stripsOutside(survey, zone)) add({ kind: 'rim', side }, strip);
  for (const other of earlier) {
    for (const polygon of other.region) add({ kind: 'zone', id: other.zone.id }, polygon);
  }
  for (const polygon of zone.region) add({ kind: 'zone', id: zone.zone.id }, polygon);
  return boundaries;
}

/** Strips along the outside of the wall's edges that bear no rim band, joined for each side. */
function stripsOutside(
  { outline, wall }: SurveyedWall,
  zone: DrawnZone,
): { side: RimSide; strip: Polygon }[] {
  const { ring } = outline;
  const ofSide = new Map<RimSide, Polygon[]>();
  sidesOfEdges(outline).forEach((side, i) => {
    if (wall.rim[side] > 0) return;
    const from = ring[i]!;
    const to = ring[(i + 1) % ring.length]!;
    if (!boxesMeet(boxOf([from, to]), zone.box, REACH)) return;
    const strips = ofSide.get(side) ?? [];
    strips.push(stripOf(from, to));
    ofSide.set(side, strips);
  });
  return [...ofSide].flatMap(([side, strips]) =>
    (strips.length > 1 ? union(strips) : strips).map((strip) => ({ side, strip })),
  );
}

function stripOf(from: Point, to: Point): Polygon {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // The inside is to the left of an anticlockwise ring: outside is (dy, −dx).
  const x = Math.round(((to.y - from.y) / length) * STRIP) + 0;
  const y = Math.round(((from.x - to.x) / length) * STRIP) + 0;
  return { outer: [from, { x: from.x + x, y: from.y + y }, { x: to.x + x, y: to.y + y }, to], holes: [] };
}
