import { nameOfObject } from '../../job/changes/names';
import type { Selection } from '../../job/open-job.svelte';
import type { Hand } from '../hand.svelte';

/** Chooses on drawing and schedule alike, and says what. */
export function chooseObject(hand: Hand, selection: Selection): void {
  hand.open.selection = selection;
  hand.said = selection ? `${nameOfSelection(hand, selection)} chosen` : 'Nothing chosen';
}

function nameOfSelection(hand: Hand, selection: NonNullable<Selection>): string {
  if (selection.kind === 'panel') return `Panel ${selection.id}`;
  if (selection.kind === 'vertex') return `Corner ${Number(selection.id) + 1} of the wall`;
  const name = nameOfObject(hand.wall, { kind: selection.kind, id: selection.id });
  return name.charAt(0).toUpperCase() + name.slice(1);
}
