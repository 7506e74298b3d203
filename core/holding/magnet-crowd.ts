import type { HungItem } from '../job/hung-schema';
import type { Mm } from '../units';
import { across, type Magnet } from './magnet';
import { neighbourDistance } from './derating';

/** All magnets of a wall, to find which lie near each other. */
export interface MagnetCrowd {
  /**
   * Centre to centre to the magnet of another item that shares most of the steel, mm, as if it were no larger than the one
   * asked for: of two the larger sets the distance. Undefined if none is near enough to count.
   */
  nearest(itemId: string, centre: { readonly x: Mm; readonly y: Mm }, diameter: Mm): Mm | undefined;
}

interface Standing {
  readonly item: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly diameter: Mm;
}

/** Pieces that are moved about are nobody's neighbours: their places are not kept. Those of a screwed item share the steel, too. */
export function crowdOf(items: readonly HungItem[], magnets: ReadonlyMap<string, Magnet>): MagnetCrowd {
  const standing = items
    .filter(({ marking }) => !marking)
    .flatMap(({ id, x, y, magnets: held }) => {
      const magnet = magnets.get(held?.magnet ?? '');
      const diameter = magnet ? across(magnet) : 0;
      return (held?.places ?? []).map(([dx, dy]): Standing => ({ item: id, x: x + dx, y: y + dy, diameter }));
    });
  const widest = standing.reduce((most, { diameter }) => Math.max(most, diameter), 0);
  const far = Math.max(1, neighbourDistance * widest);
  const cells = new Map<string, Standing[]>();
  const keyOf = (column: number, row: number) => `${column} ${row}`;
  for (const one of standing) {
    const key = keyOf(Math.floor(one.x / far), Math.floor(one.y / far));
    const cell = cells.get(key);
    if (cell) cell.push(one);
    else cells.set(key, [one]);
  }
  return {
    nearest(itemId, { x, y }, diameter) {
      const [column, row] = [Math.floor(x / far), Math.floor(y / far)];
      let least = Infinity;
      for (let dc = -1; dc <= 1; dc++)
        for (let dr = -1; dr <= 1; dr++)
          for (const other of cells.get(keyOf(column + dc, row + dr)) ?? [])
            if (other.item !== itemId) {
              const larger = Math.max(1, other.diameter / diameter);
              least = Math.min(least, Math.hypot(other.x - x, other.y - y) / larger);
            }
      return least < neighbourDistance * diameter ? least : undefined;
    },
  };
}
