import { tidy } from '../../../core/job/changes';
import type { Marking } from '../../../core/job/marking-schema';
import {
  addMarking,
  changedTable,
  changeMarking,
  findMarking,
  moveMarking,
  removeMarking,
  sizedMarking,
  sizeOfMarking,
  type MarkingRef,
  type MmSize,
} from '../../../core/job/markings';
import { withPhoto, withUsedPhotos } from '../../../core/job/photos';
import type { Photo } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/** @param photo of a picture, put beside the job's others */
export function putInMarking(wallId: string, zoneId: string, marking: Marking, photo?: Photo): NamedChange {
  return {
    name: `Put marking ${marking.id} on zone ${zoneId}`,
    change: (job) => addMarking(withPhoto(job, photo), wallId, zoneId, marking),
  };
}

export function takeOutMarking(wallId: string, ref: MarkingRef): NamedChange {
  return {
    name: `Take ${nameOfMarking(ref)} out`,
    change: (job) => withUsedPhotos(removeMarking(job, wallId, ref)),
  };
}

export function shiftMarking(wallId: string, ref: MarkingRef, dx: number, dy: number): NamedChange {
  return { name: `Move ${nameOfMarking(ref)}`, change: (job) => moveMarking(job, wallId, ref, dx, dy) };
}

/** Fields of one marking replaced; a field set to undefined is taken out. */
export function setMarking(wallId: string, ref: MarkingRef, patch: Partial<Marking>): NamedChange {
  return {
    name: `${'x' in patch || 'y' in patch ? 'Move' : 'Change'} ${nameOfMarking(ref)}`,
    change: (job) => changeMarking(job, wallId, ref, () => patch),
  };
}

/** Likewise of a table, whose size follows from columns and rows that have sizes of their own. */
export function setTable(wallId: string, ref: MarkingRef, patch: Partial<Marking>): NamedChange {
  return {
    name: `Change ${nameOfMarking(ref)}`,
    change: (job) => changeMarking(job, wallId, ref, (table) => changedTable(table, patch)),
  };
}

/**
 * Another size; what goes with it, such as the other side of a picture, follows.
 *
 * @param ends which edges stay where they are: −1 the right or upper ones, else the left or lower ones
 */
export function sizeMarking(
  wallId: string,
  ref: MarkingRef,
  size: Partial<MmSize>,
  ends: { readonly x: number; readonly y: number } = { x: 1, y: 1 },
): NamedChange {
  return {
    name: `Resize ${nameOfMarking(ref)}`,
    change: (job) => {
      const was = findMarking(job, wallId, ref);
      if (!was) return job;
      const from = sizeOfMarking(was);
      const sized = { ...was, ...sizedMarking(job, was, size) } as Marking;
      const to = sizeOfMarking(sized);
      return changeMarking(job, wallId, ref, () => ({
        ...sized,
        x: ends.x < 0 ? tidy(was.x + from.width - to.width) : was.x,
        y: ends.y < 0 ? tidy(was.y + from.height - to.height) : was.y,
      }));
    },
  };
}

/** "marking M1 of zone Z2" */
export function nameOfMarking({ zone, marking }: MarkingRef): string {
  return `marking ${marking} of zone ${zone}`;
}
