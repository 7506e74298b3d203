import type { HungItem } from './hung-schema';
import type { MmBox, WallObject } from './shape';

/* Where the magnets of a hung item sit, in its own frame: from its lower left corner, mm. */

export type Places = readonly (readonly [number, number])[];

/** Of all that stands on a wall only hung items have no shape of their own and a weight or magnets. */
export function isHung(object: WallObject): object is HungItem {
  return !object.shape && !('circle' in object) && !('clearance' in object) && 'depth' in object;
}

/** The same item with its magnets elsewhere. */
export function withPlaces<T extends HungItem>(item: T, places: Places): T {
  if (!item.magnets) return item;
  return { ...item, magnets: { ...item.magnets, places: places.map(([x, y]) => [tidy(x), tidy(y)]) } };
}

/** Places of an item that is made as large as a box: each as far from the middle, in proportion, as it was. */
export function placesIn({ width, height, magnets }: HungItem, to: MmBox): Places {
  return (magnets?.places ?? []).map(([x, y]) => [(x * to.width) / width, (y * to.height) / height]);
}

export function mirroredPlaces({ width, height, magnets }: HungItem, axis: 'x' | 'y'): Places {
  return (magnets?.places ?? []).map(([x, y]) => (axis === 'x' ? [width - x, y] : [x, height - y]));
}

/** By a quarter turn anticlockwise. */
export function turnedPlaces({ height, magnets }: HungItem): Places {
  return (magnets?.places ?? []).map(([x, y]) => [height - y, x]);
}

function tidy(length: number): number {
  return Math.round(length * 100) / 100 + 0;
}
