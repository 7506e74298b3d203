import type { ZoneLayout } from '../../core/panels/panel';
import type { WorkedWall, WorkedZone } from '../../core/worked-out';

/** A wall, or the place of the same wall in the reply before: only what changed crosses the border. */
export type SentWall = number | (Omit<WorkedWall, 'zones'> & { readonly zones: readonly SentZone[] });

/** Likewise a zone's layout, which has all its panels: of a wall that changed, most zones keep theirs. */
type SentZone = Omit<WorkedZone, 'layout'> & { readonly layout: ZoneLayout | number | null };

/** @param before the walls of the last reply that was sent */
export function packWalls(walls: readonly WorkedWall[], before: readonly WorkedWall[]): SentWall[] {
  const places = placesOf(before);
  const layoutPlaces = placesOf(layoutsOf(before));
  return walls.map((wall) => {
    const zones = wall.zones.map(({ layout, ...zone }) => ({
      ...zone,
      layout: layout && (layoutPlaces.get(layout) ?? layout),
    }));
    return places.get(wall) ?? { ...wall, zones };
  });
}

/** @param before the walls of the last reply that was received, stale or not */
export function unpackWalls(sent: readonly SentWall[], before: readonly WorkedWall[]): WorkedWall[] {
  const layouts = layoutsOf(before);
  return sent.map((wall) => {
    if (typeof wall === 'number') return received(before, wall, 'Wall');
    const zones = wall.zones.map(({ layout, ...zone }) => ({
      ...zone,
      layout: typeof layout === 'number' ? received(layouts, layout, 'Layout') : layout,
    }));
    return { ...wall, zones };
  });
}

function layoutsOf(walls: readonly WorkedWall[]): ZoneLayout[] {
  return walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout ?? []));
}

function placesOf<T>(list: readonly T[]): ReadonlyMap<T, number> {
  return new Map(list.map((entry, i) => [entry, i]));
}

function received<T>(list: readonly T[], place: number, what: string): T {
  const known = list[place];
  if (!known) throw new Error(`${what} ${place} was never received.`);
  return known;
}
