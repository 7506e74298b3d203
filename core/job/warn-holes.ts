import type { Finding } from '../finding';
import { difference } from '../geometry/clip';
import { regionArea } from '../geometry/polygon';
import { nameOfWall, nameOfZone } from './names';
import type { Wall } from './schema';
import { polygonOf } from './placed-regions';

/** What a hole may reach beyond its zone by rounding alone: a square millimetre, in hundredths squared. */
const negligible = 1e4;

/** Holes of zones that lie beside their zone: they take nothing out of it there. */
export function holeWarnings(wall: Wall): Finding[] {
  return wall.zones.flatMap((zone) =>
    zone.holes.flatMap((hole, i): Finding[] => {
      const outside = regionArea(difference([polygonOf(hole)], [polygonOf(zone.shape)]));
      if (outside <= negligible) return [];
      const text = `Hole ${i + 1} of ${nameOfZone(zone)} on ${nameOfWall(wall)} reaches beyond the zone; move it inside or delete it.`;
      return [{ level: 'warning', code: 'hole-outside-zone', wall: wall.id, object: zone.id, text }];
    }),
  );
}
