import { isLocked } from '../../../core/job/several';
import { findObject, type ObjectRef } from '../../../core/job/shape';
import { lockedWords } from '../../job/changes/several';
import type { OpenJob, Selection, StationName } from '../../job/open-job.svelte';

/** Zones are changed where zones are agreed; openings and fittings wherever the wall is worked on. */
export function canChange(station: StationName, ref: ObjectRef): boolean {
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
  const elsewhere = chosen.refs.length > here.length ? [whyNotHere(station)] : [];
  return { refs, held: [...elsewhere, lockedWords(wall, here)].filter(Boolean).join('; ') };
}

/** Likewise what can be copied: what is locked, too. */
export function copyable({ chosen, station }: OpenJob): { refs: readonly ObjectRef[]; held: string } {
  const refs = chosen.refs.filter((ref) => canChange(station, ref));
  return { refs, held: chosen.refs.length > refs.length ? whyNotHere(station) : '' };
}

function whyNotHere(station: StationName): string {
  if (station === 'drawings') return 'Nothing is changed at Drawings';
  return station === 'price' ? 'At Price nothing is moved on the wall' : 'Zones are changed at Zones';
}
