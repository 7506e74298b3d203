import { openLeafOf, type OpenLeaf } from '../../core/survey/open-leaf';
import { doorFindings } from '../../core/zones/door-findings';
import type { Hand } from './hand.svelte';

/** Doors whose leaf lies on something, or would strike it, as last worked out. */
export function doorsInTheWay({ open, worked }: Hand): readonly string[] {
  if (!worked || open.station === 'panels') return [];
  const areas = worked.zones.map(({ area }) => area);
  return doorFindings(open.job, worked.survey, areas).flatMap(({ object }) => object ?? []);
}

/** Leaves that the drawing shows laid against the wall: of chosen doors, and of those in the way. */
export function openLeaves({ open, wall }: Hand, inTheWay: readonly string[]): OpenLeaf[] {
  if (!wall || open.station === 'panels') return [];
  return wall.openings.flatMap((door) => {
    const isShown = inTheWay.includes(door.id) || open.chosen.has({ kind: 'opening', id: door.id });
    return (isShown && openLeafOf(open.job, wall, door)) || [];
  });
}
