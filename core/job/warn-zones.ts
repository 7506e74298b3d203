import type { Finding } from '../finding';
import { difference, intersection } from '../geometry/clip';
import { isRectilinear, regionArea, type Region } from '../geometry/polygon';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from './names';
import type { Fitting, Wall, Zone } from './schema';
import { boxesMeet, boxWithin, polygonOf, type Placed, type WallRegions } from './wall-regions';

/** What two shapes may share by rounding alone: a square millimetre, in hundredths squared. */
const negligible = 1e4;

/** Zones that leave the wall, lie on one another, are crossed by a fitting, or have holes beside them. */
export function zoneWarnings({ wall, outline, zones, fittings }: WallRegions): Finding[] {
  return zones.flatMap((zone, i) => [
    ...outsideWall(wall, outline, zone),
    ...zones.slice(0, i).flatMap((earlier) => overlap(wall, earlier, zone)),
    ...fittings.flatMap((fitting) => acrossEdge(wall, zone, fitting)),
    ...holesOutside(wall, zone),
  ]);
}

function outsideWall(wall: Wall, outline: Placed<Wall>, zone: Placed<Zone>): Finding[] {
  if (isBox(outline.region) && boxWithin(zone.box, outline.box)) return [];
  const outside = regionArea(difference(zone.region, outline.region));
  if (outside <= negligible) return [];
  const name = sentence(nameOfZone(zone.thing));
  const wholly = outside >= regionArea(zone.region) - negligible;
  const text = wholly
    ? `${name} lies outside ${nameOfWall(wall)}; move it onto the wall or delete it.`
    : `${name} reaches ${inSquareMetres(outside)} beyond the edge of ${nameOfWall(wall)}, where nothing is laid; move or shrink it.`;
  return [warning('zone-outside-wall', wall, zone.thing.id, text)];
}

function overlap(wall: Wall, earlier: Placed<Zone>, later: Placed<Zone>): Finding[] {
  if (!boxesMeet(earlier.box, later.box)) return [];
  const shared = regionArea(intersection(withoutHoles(earlier), withoutHoles(later)));
  if (shared <= negligible) return [];
  const text =
    `${sentence(nameOfZone(later.thing))} overlaps ${nameOfZone(earlier.thing)} by ${inSquareMetres(shared)} on ${nameOfWall(wall)}; ` +
    `${earlier.thing.id} is listed first and has that area, so move one of them or change their order.`;
  return [warning('zones-overlap', wall, later.thing.id, text)];
}

function acrossEdge(wall: Wall, zone: Placed<Zone>, fitting: Placed<Fitting>): Finding[] {
  if (!boxesMeet(zone.box, fitting.box)) return [];
  const area = withoutHoles(zone);
  if (isBox(area) && boxWithin(fitting.box, zone.box)) return [];
  const inside = regionArea(intersection(fitting.region, area));
  if (inside <= negligible || inside >= regionArea(fitting.region) - negligible) return [];
  const name = sentence(nameOfPlaced(fitting.thing, 'fitting'));
  const text = `${name} stands across the edge of ${nameOfZone(zone.thing)} on ${nameOfWall(wall)}; move it, or move the edge clear of it.`;
  return [warning('fitting-across-zone-edge', wall, fitting.thing.id, text)];
}

function holesOutside(wall: Wall, zone: Placed<Zone>): Finding[] {
  return zone.thing.holes.flatMap((hole, i) => {
    const outside = regionArea(difference([polygonOf(hole)], zone.region));
    if (outside <= negligible) return [];
    const text = `Hole ${i + 1} of ${nameOfZone(zone.thing)} on ${nameOfWall(wall)} reaches beyond the zone; move it inside or delete it.`;
    return [warning('hole-outside-zone', wall, zone.thing.id, text)];
  });
}

function withoutHoles({ thing, region }: Placed<Zone>): Region {
  return thing.holes.length === 0
    ? region
    : difference(region, ...thing.holes.map((hole): Region => [polygonOf(hole)]));
}

function isBox(region: Region): boolean {
  const [polygon] = region;
  return !!polygon && polygon.outer.length === 4 && polygon.holes.length === 0 && isRectilinear(polygon);
}

function inSquareMetres(area: number): string {
  const squareMetres = area / 1e10;
  return squareMetres < 0.01 ? 'less than 0.01 m²' : `${squareMetres.toFixed(2)} m²`;
}

function warning(code: string, wall: Wall, object: string, text: string): Finding {
  return { level: 'warning', code, wall: wall.id, object, text };
}
