import type { HungItem } from '../job/hung-schema';
import type { Mm } from '../units';
import { across, type Magnet } from './magnet';
import { neighbourDistance } from './derating';

/** All magnets of a wall, to find which lie near each other. */
export interface MagnetCrowd {
  /** Centre to centre to the nearest magnet of another item, mm; undefined if none is near enough to count. */
  nearest(itemId: string, centre: { readonly x: Mm; readonly y: Mm }): Mm | undefined;
}

interface Standing {
  readonly item: string;
  readonly x: Mm;
  readonly y: Mm;
}

/** Pieces that are moved about are nobody's neighbours: their places are not kept. */
export function crowdOf(items: readonly HungItem[], magnets: ReadonlyMap<string, Magnet>): MagnetCrowd {
  const standing = items
    .filter(({ marking, fixingPoints }) => !marking && !fixingPoints?.length)
    .flatMap(({ id, x, y, magnets: held }) =>
      (held?.places ?? []).map(([dx, dy]): Standing => ({ item: id, x: x + dx, y: y + dy })),
    );
  const widest = Math.max(
    0,
    ...items.flatMap(({ magnets: held }) => {
      const magnet = magnets.get(held?.magnet ?? '');
      return magnet ? [across(magnet)] : [];
    }),
  );
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
    nearest(itemId, { x, y }) {
      const [column, row] = [Math.floor(x / far), Math.floor(y / far)];
      let least = Infinity;
      for (let dc = -1; dc <= 1; dc++)
        for (let dr = -1; dr <= 1; dr++)
          for (const other of cells.get(keyOf(column + dc, row + dr)) ?? [])
            if (other.item !== itemId) least = Math.min(least, Math.hypot(other.x - x, other.y - y));
      return least < far ? least : undefined;
    },
  };
}
