import type { ObjectRef } from '../../../core/job/shape';
import { nameOfObject } from '../../job/changes/names';
import { nameOfSeveral } from '../../job/changes/several';
import type { Selection } from '../../job/open-job.svelte';
import type { Hand } from '../hand.svelte';
import { chosenObject } from './what-can-change';

/** Chooses on drawing and schedule alike, and says what. */
export function chooseObject(hand: Hand, selection: Selection): void {
  const object = chosenObject(selection);
  hand.open.fixingPoint = hand.open.people = null;
  if (object) hand.open.chosen.set([object]);
  else hand.open.selection = selection;
  hand.said = selection ? `${nameOfSelection(hand, selection)} chosen` : 'Nothing chosen';
}

/** Chooses several at once, and says how many. */
export function chooseSeveral(hand: Hand, refs: readonly ObjectRef[]): void {
  hand.open.chosen.set(refs);
  hand.said = refs.length > 0 ? `${capital(nameOfSeveral(hand.wall, refs))} chosen` : 'Nothing chosen';
}

function nameOfSelection(hand: Hand, selection: NonNullable<Selection>): string {
  if (selection.kind === 'panel') return `Panel ${selection.id}`;
  if (selection.kind === 'vertex') return `Corner ${Number(selection.id) + 1} of the wall`;
  return capital(nameOfObject(hand.wall, { kind: selection.kind, id: selection.id }));
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
