import { addHandChoice, changeHandChoice, freshHandId, removeHandChoice } from '../../../core/job/by-hand';
import type { HandChoice, Zone } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/** What a choice is called, as one reads it on the drawing and after "Undo". */
export const handWords: Readonly<Record<string, string>> = {
  'joint-on-line': 'joint on a line',
  'no-joints': 'no joints here',
  'whole-panel': 'whole panel',
  split: 'split',
  join: 'join',
  'no-panel': 'no panel',
  'other-stock': 'panel from other stock',
};

export function nameOfHandChoice({ id, kind }: Pick<HandChoice, 'id' | 'kind'>): string {
  return `${handWords[kind] ?? 'choice by hand'} ${id}`;
}

export function putInHandChoice(wallId: string, zone: Zone, choice: Omit<HandChoice, 'id'>): NamedChange {
  const own = { id: freshHandId(zone.layout ?? {}), ...choice } as HandChoice;
  return {
    name: `Put in ${nameOfHandChoice(own)} of zone ${zone.id}`,
    change: (job) => addHandChoice(job, wallId, zone.id, own),
  };
}

export function setHandChoice(
  wallId: string,
  zoneId: string,
  choice: HandChoice,
  patch: Partial<HandChoice>,
): NamedChange {
  return {
    name: `Change ${nameOfHandChoice(choice)} of zone ${zoneId}`,
    change: (job) => changeHandChoice(job, wallId, zoneId, choice.id, patch),
  };
}

export function letGoOfHandChoice(wallId: string, zoneId: string, choice: HandChoice): NamedChange {
  return {
    name: `Let go of ${nameOfHandChoice(choice)} of zone ${zoneId}`,
    change: (job) => removeHandChoice(job, wallId, zoneId, choice.id),
  };
}
