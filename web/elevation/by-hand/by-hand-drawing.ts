import type { Hand } from '../hand.svelte';
import type { ByHandDrawing } from '../layers/by-hand-layer';
import { startHandles } from './move-start';

/** What was chosen by hand on the wall on the screen, and what is aimed at; null where panels are not worked on. */
export function byHandDrawing(hand: Hand): ByHandDrawing | null {
  const { open, tool, worked, byHand } = hand;
  if (open.station !== 'panels' || !worked) return null;
  const boxOfZone = (id: string) => worked.zones.find(({ area }) => area.zone.id === id)!.area.box;
  return {
    signs: hand.signs,
    starts: startHandles(hand).map(({ zone, at }) => ({
      at,
      box: boxOfZone(zone),
      inHand: tool.kind === 'start',
    })),
    band: byHand.band,
    first: byHand.first?.at ?? null,
  };
}
