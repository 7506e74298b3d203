import type { HungItem } from '../job/hung-schema';
import type { Mm } from '../units';
import { neighbourDistance } from './derating';

export type Places = readonly (readonly [x: Mm, y: Mm])[];

/** How many are tried: one or two in the top row, then two rows. */
export const counts = [1, 2, 4, 6, 8, 10, 12, 16, 20] as const;

/**
 * Places of so many magnets, from the item's lower left corner, mm: rims on the item's edges, three diameters apart or
 * further. Undefined where they do not fit.
 */
export function arrange(count: number, diameter: Mm, width: Mm, height: Mm): Places | undefined {
  if (diameter > Math.min(width, height)) return undefined;
  const [low, high] = [diameter / 2, height - diameter / 2];
  if (count === 1) return [[width / 2, high]];
  const rows = count === 2 ? [high] : [high, low];
  const columns = count / rows.length;
  const step = (width - diameter) / (columns - 1);
  const least = neighbourDistance * diameter - 1e-9;
  if (step < least || (rows.length > 1 && high - low < least)) return undefined;
  return rows.flatMap((y) =>
    Array.from({ length: columns }, (_, i) => [diameter / 2 + i * step, y] as const),
  );
}

/** Whether every magnet lies wholly behind the item. */
export function isBehind(
  { width, height }: Pick<HungItem, 'width' | 'height'>,
  places: Places,
  diameter: Mm,
): boolean {
  const rim = diameter / 2 - 1e-9;
  return places.every(([x, y]) => x >= rim && x <= width - rim && y >= rim && y <= height - rim);
}

/** Each place brought behind the item as far as a wider magnet needs; undefined where the item is too small. */
export function broughtBehind(
  { width, height }: Pick<HungItem, 'width' | 'height'>,
  places: Places,
  diameter: Mm,
): Places | undefined {
  const rim = diameter / 2;
  if (diameter > width || diameter > height) return undefined;
  const within = (value: Mm, size: Mm) => Math.min(Math.max(value, rim), size - rim);
  return places.map(([x, y]) => [within(x, width), within(y, height)] as const);
}

/** Least distance between any two, mm; Infinity for one. */
export function leastApart(places: Places): Mm {
  let least = Infinity;
  for (const [i, [x, y]] of places.entries())
    for (const [u, v] of places.slice(i + 1)) least = Math.min(least, Math.hypot(u - x, v - y));
  return least;
}
