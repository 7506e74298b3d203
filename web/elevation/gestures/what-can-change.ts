import { isLocked } from '../../../core/job/several';
import { findObject, type ObjectRef } from '../../../core/job/shape';
import { lockedWords } from '../../job/changes/several';
import type { OpenJob, Selection, StationName } from '../../job/open-job.svelte';

/**
 * Zones are changed where zones are agreed, hung items where they are hung; there nothing else is, so that a hand that hangs
 * things moves no socket. Openings and fittings are changed wherever else the wall is worked on.
 */
export function canChange(station: StationName, ref: ObjectRef): boolean {
  if (ref.kind === 'hung' || station === 'hanging') return ref.kind === 'hung' && station === 'hanging';
  return station !== 'drawings' && station !== 'price' && (ref.kind !== 'zone' || station === 'zones');
}

/** The opening, fitting or zone that is chosen; null if it is a panel, a corner or nothing. */
export function chosenObject(selection: Selection): ObjectRef | null {
  return selection && selection.kind !== 'panel' && selection.kind !== 'vertex'
    ? { kind: selection.kind, id: selection.id }
    : null;
}

/** Of what is chosen, what can be changed here; and, if something cannot, why not, in a sentence. */
export function changeable({ wall, chosen, station }: OpenJob): { refs: readonly ObjectRef[]; held: string } {
  if (!wall) return { refs: [], held: '' };
  const here = chosen.refs.filter((ref) => canChange(station, ref));
  const refs = here.filter((ref) => !isLocked(findObject(wall, ref)!));
  const elsewhere = chosen.refs.length > here.length ? [whyNotHere(station, chosen.refs)] : [];
  return { refs, held: [...elsewhere, lockedWords(wall, here)].filter(Boolean).join('; ') };
}

/** Likewise what can be copied: what is locked, too. */
export function copyable({ chosen, station }: OpenJob): { refs: readonly ObjectRef[]; held: string } {
  const refs = chosen.refs.filter((ref) => canChange(station, ref));
  return { refs, held: chosen.refs.length > refs.length ? whyNotHere(station, chosen.refs) : '' };
}

function whyNotHere(station: StationName, refs: readonly ObjectRef[]): string {
  if (station === 'hanging')
    return refs.some(({ kind }) => kind === 'zone')
      ? 'Zones are changed at Zones'
      : 'Openings and fittings are changed at Survey';
  if (station === 'drawings') return 'Nothing is changed at Drawings';
  if (station === 'price') return 'At Price nothing is moved on the wall';
  return refs.some(({ kind }) => kind === 'hung')
    ? 'Hung items are changed at Hanging'
    : 'Zones are changed at Zones';
}
