import { openLeafOf, type OpenLeaf } from '../../core/survey/open-leaf';
import { doorFindings } from '../../core/zones/door-findings';
import type { Hand } from './hand.svelte';

/** Leaves that the drawing shows laid against the wall: of chosen doors, and of those that lie on something there. */
export function openLeaves({ open, wall, worked }: Hand): OpenLeaf[] {
  if (!wall || open.station === 'panels') return [];
  const areas = worked?.zones.map(({ area }) => area) ?? [];
  const inTheWay = worked ? doorFindings(open.job, worked.survey, areas).map(({ object }) => object) : [];
  return wall.openings.flatMap((door) => {
    const isShown = inTheWay.includes(door.id) || open.chosen.has({ kind: 'opening', id: door.id });
    return (isShown && openLeafOf(open.job, wall, door)) || [];
  });
}
