import { addFitting, addOpening } from '../../../core/job/changes';
import { newFitting, newOpening, type FittingKind, type OpeningKind } from '../../../core/job/defaults';
import { findWall } from '../../../core/job/shape';
import type { Measured } from '../../readings/read-readings';
import type { NamedChange } from './named-change';
import { setInto } from './put-in';

/** All that was measured, each under an id that the wall has not used. */
export function putInReadings(wallId: string, readings: readonly Measured[]): NamedChange {
  return {
    name: `Put in ${readings.length === 1 ? '1 reading' : `${readings.length} readings`}`,
    change: (start) =>
      readings.reduce((job, { as, kind, name, box }) => {
        const wall = findWall(job, wallId);
        if (!wall) return job;
        const named = name ? { name } : {};
        return as === 'opening'
          ? addOpening(job, wallId, { ...setInto(newOpening(wall, kind as OpeningKind), box), ...named })
          : addFitting(job, wallId, { ...setInto(newFitting(wall, kind as FittingKind), box), ...named });
      }, start),
  };
}
