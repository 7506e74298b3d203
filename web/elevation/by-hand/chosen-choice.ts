import type { HandChoice, Zone } from '../../../core/job/schema';
import { letGoOfHandChoice, nameOfHandChoice } from '../../job/changes/by-hand';
import type { HandChoiceRef, OpenJob } from '../../job/open-job.svelte';
import type { Hand } from '../hand.svelte';

/** A choice by hand and its zone. */
export interface FoundChoice {
  readonly zone: Zone;
  readonly choice: HandChoice;
}

/** The choice by hand that is chosen on drawing and schedule alike, while it is there. */
export function chosenChoice({ wall, station, selection, handChoice }: OpenJob): FoundChoice | null {
  if (!handChoice || station !== 'panels' || selection?.kind !== 'zone' || selection.id !== handChoice.zone)
    return null;
  const zone = wall?.zones.find(({ id }) => id === handChoice.zone);
  const choice = zone?.layout?.byHand?.find(({ id }) => id === handChoice.id);
  return zone && choice ? { zone, choice } : null;
}

export function isChosenChoice(open: OpenJob, zone: string, id: string): boolean {
  const found = chosenChoice(open);
  return found?.zone.id === zone && found.choice.id === id;
}

/** Chooses on drawing and schedule alike. */
export function chooseChoice(open: OpenJob, ref: HandChoiceRef): void {
  open.selection = { kind: 'zone', id: ref.zone };
  open.handChoice = ref;
}

/** Chosen on the drawing: its row follows, and it is said. */
export function chooseSign(hand: Hand, ref: HandChoiceRef): void {
  chooseChoice(hand.open, ref);
  hand.open.showLeaf('panels', 'By hand');
  const found = chosenChoice(hand.open);
  if (found) hand.said = `${capital(nameOfHandChoice(found.choice))} of zone ${ref.zone} chosen`;
}

/** The Delete key. */
export function letGoOfChosen(hand: Hand): boolean {
  const found = chosenChoice(hand.open);
  if (!found || !hand.wall) return false;
  if (hand.make(letGoOfHandChoice(hand.wall.id, found.zone.id, found.choice))) hand.open.handChoice = null;
  return true;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
