import { changeObject } from './changes';
import type { HandChoice, HandPlace, Job, Layout, Zone } from './schema';
import { findWall } from './shape';

/*
 * Pure changes of what was chosen by hand in a zone. A zone without a layout, or an id that names nothing, leaves the
 * job as it was; a zone with nothing chosen has no list either.
 */

export function addHandChoice(job: Job, wallId: string, zoneId: string, choice: HandChoice): Job {
  return changeByHand(job, wallId, zoneId, (choices) => [...choices, choice]);
}

/** Fields of one choice replaced; a field set to undefined is taken out. */
export function changeHandChoice(
  job: Job,
  wallId: string,
  zoneId: string,
  id: string,
  patch: Partial<HandChoice>,
): Job {
  return changeByHand(job, wallId, zoneId, (choices) =>
    choices.map((choice) => (choice.id === id ? withoutUndefined({ ...choice, ...patch }) : choice)),
  );
}

export function removeHandChoice(job: Job, wallId: string, zoneId: string, id: string): Job {
  return changeByHand(job, wallId, zoneId, (choices) => choices.filter((choice) => choice.id !== id));
}

/** H1, H2, …: the lowest number that no choice of the zone has. */
export function freshHandId({ byHand = [] }: Pick<Layout, 'byHand'>): string {
  const taken = new Set(byHand.map(({ id }) => id));
  for (let n = 1; ; n++) if (!taken.has(`H${n}`)) return `H${n}`;
}

/** The same place with another figure: from the datum, or from its edge. */
export function placeAt(place: HandPlace, figure: number): HandPlace {
  if (typeof place === 'number') return figure;
  const { by: _, ...edge } = place;
  return (figure === 0 ? edge : { ...edge, by: figure }) as HandPlace;
}

/** The figure of a place: from the datum, or from its edge. */
export function figureOf(place: HandPlace): number {
  return typeof place === 'number' ? place : (place.by ?? 0);
}

function changeByHand(
  job: Job,
  wallId: string,
  zoneId: string,
  change: (choices: readonly HandChoice[]) => HandChoice[],
): Job {
  const layout = findWall(job, wallId)?.zones.find(({ id }) => id === zoneId)?.layout;
  if (!layout) return job;
  const { byHand = [], ...rest } = layout;
  const after = change(byHand);
  if (after.length === byHand.length && after.every((choice, i) => choice === byHand[i])) return job;
  const changed = (after.length > 0 ? { ...rest, byHand: after } : rest) as Layout;
  return changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, { layout: changed });
}

function withoutUndefined<T extends object>(object: T): T {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
}
