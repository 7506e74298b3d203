import type { Command } from '../../commands/command';
import type { Hand } from '../hand.svelte';
import { handTools } from './hand-tools';
import { setStart } from './move-start';
import { pickStart, pickTool } from './pick-tool';

/** What can be done by hand about panels, from anywhere. */
export function handCommands(hand: Hand): readonly Command[] {
  const zone = zoneInHand(hand);
  const whyNot = zone ? null : 'no zone of this wall has steel panels';
  return [
    {
      name: 'Move the start of the panels',
      group: 'Panels',
      keys: 'H S',
      also: 'by hand',
      whyNot,
      run: () => zone && pickStart(hand, zone),
    },
    {
      name: 'Let go of the start: the best one',
      group: 'Panels',
      keys: 'H B',
      also: 'by hand',
      whyNot,
      run: () => zone && setStart(hand, zone, 'best'),
    },
    ...handTools.map(({ what, label, keys }): Command => ({
      name: label,
      group: 'Panels',
      keys,
      also: 'by hand',
      whyNot,
      run: () => pickTool(hand, what),
    })),
  ];
}

/** The zone with steel that is chosen, or of the chosen panel, or the first. */
export function zoneInHand(hand: Hand): string | undefined {
  const { selection } = hand.open;
  const steel = hand.wall?.zones.filter(({ layout }) => layout) ?? [];
  const chosen = steel.find(({ id }) => selection?.kind === 'zone' && selection.id === id);
  const worked = hand.worked?.zones.find(
    ({ layout }) => selection?.kind === 'panel' && layout?.panels.some(({ mark }) => mark === selection.id),
  );
  return (chosen ?? steel.find(({ id }) => id === worked?.area.zone.id) ?? steel[0])?.id;
}
