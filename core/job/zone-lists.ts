import type { Path } from './place';
import type { Job, Wall, Zone } from './schema';

/** The zones of one wall in one alternative, and where they stand in the file. */
export interface ZoneList {
  readonly wall: Wall;
  /** Place of the wall in the job. */
  readonly wallIndex: number;
  /** Place among the alternatives that are not chosen; null for the chosen one. */
  readonly alternative: number | null;
  readonly zones: readonly Zone[];
  readonly path: Path;
}

/** Zones of every wall: those on the walls, then those of the other alternatives. Walls that a job lacks are left out. */
export function zoneListsOf({ walls, alternatives = [] }: Job): ZoneList[] {
  return [
    ...walls.map((wall, w): ZoneList => ({
      wall,
      wallIndex: w,
      alternative: null,
      zones: wall.zones,
      path: ['walls', w, 'zones'],
    })),
    ...alternatives.flatMap((alternative, a) =>
      walls.flatMap((wall, w): ZoneList[] => {
        const zones = Object.hasOwn(alternative.zones, wall.id) ? alternative.zones[wall.id] : undefined;
        return zones
          ? [{ wall, wallIndex: w, alternative: a, zones, path: ['alternatives', a, 'zones', wall.id] }]
          : [];
      }),
    ),
  ];
}
