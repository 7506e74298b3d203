import { addFitting, addOpening } from '../../../core/job/changes';
import { newFitting, newOpening, type OpeningKind } from '../../../core/job/defaults';
import type { OwnKind } from '../../../core/job/schema';
import { findWall } from '../../../core/job/shape';
import type { Measured } from '../../readings/read-readings';
import { bringKind } from './kinds';
import type { NamedChange } from './named-change';
import { setInto } from './put-in';

/** All that was measured, each under an id that the wall has not used. */
export function putInReadings(
  wallId: string,
  readings: readonly Measured[],
  offered: readonly OwnKind[] = [],
): NamedChange {
  return {
    name: `Put in ${readings.length === 1 ? '1 reading' : `${readings.length} readings`}`,
    change: (start) =>
      readings.reduce((job, { as, kind, name, box }) => {
        const wall = findWall(job, wallId);
        if (!wall) return job;
        const named = name ? { name } : {};
        if (as === 'opening')
          return addOpening(job, wallId, {
            ...setInto(newOpening(wall, kind as OpeningKind), box),
            ...named,
          });
        const fitting = { ...setInto(newFitting(wall, kind, {}, offered), box), ...named };
        return addFitting(bringKind(job, kind, offered), wallId, fitting);
      }, start),
  };
}
