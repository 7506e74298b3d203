import { flattenVertices } from '../geometry/arc';
import { boxOf, type Box, type Ring } from '../geometry/polygon';
import type { HandPlace, Wall } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import { outlineOf } from './keep-out';

/** A place that is not on the wall any more, and why, in words. */
export interface LostPlace {
  readonly lost: string;
}

/**
 * Where a place by hand lies along an axis, hundredths: a figure stays where it is, an edge moves with what it belongs
 * to. Edges are those of what was surveyed or drawn, without clearance; of a joint of the ground, its middle.
 *
 * @param zoneId the zone whose layout names the place
 */
export function placeOnWall(
  wall: Wall,
  zoneId: string,
  place: HandPlace,
  axis: 'x' | 'y',
): Hundredth | LostPlace {
  if (typeof place === 'number') return toHundredth(place);
  const by = toHundredth(place.by ?? 0);
  if (place.of === 'line') {
    const at = middleOfLine(wall, place.id, axis);
    return typeof at === 'number' ? at + by : at;
  }
  const ring = ringOf(wall, zoneId, place);
  if (!Array.isArray(ring)) return ring as LostPlace;
  const side = place.side;
  if (!side || !sides[axis].includes(side)) {
    return {
      lost: `${axis === 'x' ? 'a left or right' : 'a lower or upper'} edge is wanted and none is named`,
    };
  }
  return boxOf(ring)[side] + by;
}

const sides: Readonly<Record<'x' | 'y', readonly (keyof Box)[]>> = {
  x: ['left', 'right'],
  y: ['bottom', 'top'],
};

function ringOf(wall: Wall, zoneId: string, { of, id }: Exclude<HandPlace, number>): Ring | LostPlace {
  if (of === 'zone') {
    const zone = wall.zones.find((one) => one.id === (id ?? zoneId));
    return zone ? flattenVertices(zone.shape, 'inscribed').ring : { lost: `zone ${id} is gone` };
  }
  if (of === 'opening' || of === 'fitting') {
    const list = of === 'opening' ? wall.openings : wall.fittings;
    const found = list.find((one) => one.id === id);
    return found ? outlineOf(found, 'inscribed').ring : { lost: `${of} ${id ?? 'without an id'} is gone` };
  }
  return { lost: `"${of.slice(0, 40)}" is no edge that is known here` };
}

/** Of a line along the axis the place in its middle; one that slants more than a tenth of its length has none. */
function middleOfLine(wall: Wall, id: string | undefined, axis: 'x' | 'y'): Hundredth | LostPlace {
  const line = wall.lines?.find((one) => one.id === id);
  if (!line) return { lost: `joint ${id ?? 'without an id'} of the ground is gone` };
  const [dx, dy] = [Math.abs(line.to[0] - line.from[0]), Math.abs(line.to[1] - line.from[1])];
  const [across, along] = axis === 'x' ? [dx, dy] : [dy, dx];
  if (across > along / 10) {
    return { lost: `joint ${line.id} of the ground is not ${axis === 'x' ? 'upright' : 'level'}` };
  }
  const i = axis === 'x' ? 0 : 1;
  return toHundredth((line.from[i] + line.to[i]) / 2);
}
