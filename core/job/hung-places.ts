import type { HungItem } from './hung-schema';
import type { MmBox, WallObject } from './shape';

/* Where the magnets of a hung item sit, in its own frame: from its lower left corner, mm. */

export type Places = readonly (readonly [number, number])[];

/** Of all that stands on a wall only hung items have no shape of their own and a weight or magnets. */
export function isHung(object: WallObject): object is HungItem {
  return !object.shape && !('circle' in object) && !('clearance' in object) && 'depth' in object;
}

/** The same item with its magnets elsewhere. */
export function withPlaces<T extends Pick<HungItem, 'magnets'>>(item: T, places: Places): T {
  if (!item.magnets) return item;
  return { ...item, magnets: { ...item.magnets, places: places.map(([x, y]) => [tidy(x), tidy(y)]) } };
}

/** What a hung item bore in a test it bore at its place: elsewhere, or with its magnets elsewhere, that says nothing. */
export function untested<T extends WallObject>(object: T): T {
  if (!isHung(object) || object.proof === undefined) return object;
  const { proof: _, ...rest } = object;
  return rest as T;
}

/** Places of an item that is made as large as a box: each as far from the middle, in proportion, as it was. */
export function placesIn(
  { width, height, magnets }: Pick<HungItem, 'width' | 'height' | 'magnets'>,
  to: Pick<MmBox, 'width' | 'height'>,
): Places {
  return (magnets?.places ?? []).map(([x, y]) => [(x * to.width) / width, (y * to.height) / height]);
}

/** From the item's edges, mm, and how high an item is to have magnets at its foot, too. Common practice, no source. */
const inset = 20;
const highEnough = 150;

/** So many places spread over an item: along its head, and from four on along its foot, too, if it is high enough. */
export function spreadPlaces(
  { width, height }: { readonly width: number; readonly height: number },
  count: number,
): Places {
  const twoRows = count >= 4 && height >= highEnough;
  const head = twoRows ? Math.ceil(count / 2) : count;
  const [fromSide, fromHead] = [Math.min(inset, width / 2), Math.min(inset, height / 2)];
  const row = (y: number, many: number): Places =>
    many === 1
      ? [[width / 2, y]]
      : Array.from({ length: many }, (_, i) => [fromSide + (i * (width - 2 * fromSide)) / (many - 1), y]);
  return [...row(height - fromHead, head), ...(twoRows ? row(fromHead, count - head) : [])];
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
