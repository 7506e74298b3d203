import type { WorkedOut } from '../worked-out';
import { massOf } from './job-figures';
import { placedPanels, type PlacedPanel } from './placed-panels';

/**
 * kg. What one person may lift now and then, close to the body, in good conditions: reference mass of ISO 11228-1 for the
 * working population (from memory). Bundles are made up no heavier; what may be lifted on a site, local rules decide.
 */
export const mostLifted = 25;

/** Panels that are tied together and carried to one place, in the order in which they are fixed. */
export interface Bundle {
  /** From 1, through the whole job. */
  readonly number: number;
  readonly delivery: string;
  readonly room: string;
  /** `Press room`; of walls without a room the wall itself: `wall A Proofing wall`. */
  readonly place: string;
  readonly panels: readonly PlacedPanel[];
  /** kg; null while a stock of these panels has no thickness. */
  readonly mass: number | null;
  /** Only where a single panel weighs more than one person should lift. */
  readonly isHeavy: boolean;
}

/** Where a panel comes in the order of fixing of its zone. */
export interface FixingPlace {
  /** From 1. */
  readonly place: number;
  readonly of: number;
}

/**
 * The panels of a job in bundles: by delivery in the order of cutting, within it by room in the order of the walls, within
 * it in the order of fixing, each bundle as heavy as one person may lift. Panels of unknown weight share one bundle a room.
 */
export function bundlesOf(worked: WorkedOut): Bundle[] {
  const fixing = fixingPlaces(worked);
  const deliveries = [...new Set(worked.cutting.sheets.map(({ delivery }) => delivery))];
  const byPlace = new Map<string, PlacedPanel[]>();
  for (const placed of placedPanels(worked)) {
    const key = JSON.stringify([deliveries.indexOf(placed.sheet.delivery), placeOf(placed)]);
    byPlace.set(key, [...(byPlace.get(key) ?? []), placed]);
  }
  const groups = [...byPlace.values()].sort(
    ([a], [b]) => deliveries.indexOf(a!.sheet.delivery) - deliveries.indexOf(b!.sheet.delivery),
  );
  return groups
    .flatMap((panels) => parted(inOrderOfFixing(panels, fixing), worked))
    .map((bundle, i) => ({ number: i + 1, ...bundle }));
}

/** By mark; marks without a place in any order are left out. */
export function fixingPlaces({ walls }: Pick<WorkedOut, 'walls'>): Map<string, FixingPlace> {
  const places = new Map<string, FixingPlace>();
  for (const { zones } of walls) {
    for (const { layout } of zones) {
      const order = layout?.fixing.order ?? [];
      order.forEach((mark, i) => places.set(mark, { place: i + 1, of: order.length }));
    }
  }
  return places;
}

function placeOf({ wall: { wall } }: PlacedPanel): string {
  const room = wall.room?.trim();
  if (room) return room;
  return `wall ${wall.id}${wall.name ? ` ${wall.name}` : ''}`;
}

/** Wall by wall and zone by zone, as they come; in each the first to be fixed first. */
function inOrderOfFixing(
  panels: readonly PlacedPanel[],
  fixing: ReadonlyMap<string, FixingPlace>,
): PlacedPanel[] {
  const zones = [...new Set(panels.map(({ zone }) => zone))];
  const place = ({ panel }: PlacedPanel) => fixing.get(panel.mark)?.place ?? 0;
  return zones.flatMap((zone) =>
    panels.filter((placed) => placed.zone === zone).sort((a, b) => place(a) - place(b)),
  );
}

function parted(panels: readonly PlacedPanel[], worked: WorkedOut): Omit<Bundle, 'number'>[] {
  const parts: { panels: PlacedPanel[]; mass: number | null }[] = [];
  for (const placed of panels) {
    const mass = massOf([placed.panel], worked);
    const last = parts.at(-1);
    const together = last && (last.mass === null ? null : mass === null ? null : last.mass + mass);
    if (last && (together === null || together! <= mostLifted)) {
      last.panels.push(placed);
      last.mass = together!;
    } else parts.push({ panels: [placed], mass });
  }
  return parts.map(({ panels: own, mass }) => ({
    delivery: own[0]!.sheet.delivery,
    room: own[0]!.wall.wall.room?.trim() ?? '',
    place: placeOf(own[0]!),
    panels: own,
    mass,
    isHeavy: mass !== null && mass > mostLifted,
  }));
}
