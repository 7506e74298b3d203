import type { ObjectRef } from '../../../core/job/shape';
import type { Selection, StationName } from '../../job/open-job.svelte';

/** Zones are changed where zones are agreed; openings and fittings wherever the wall is worked on. */
export function canChange(station: StationName, ref: ObjectRef): boolean {
  return station !== 'drawings' && (ref.kind !== 'zone' || station === 'zones');
}

/** The opening, fitting or zone that is chosen; null if it is a panel, a corner or nothing. */
export function chosenObject(selection: Selection): ObjectRef | null {
  return selection && selection.kind !== 'panel' && selection.kind !== 'vertex'
    ? { kind: selection.kind, id: selection.id }
    : null;
}
