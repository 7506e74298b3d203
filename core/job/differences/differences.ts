import type { Job } from '../schema';
import type { Difference } from './difference';
import { buildUpDifferences, productDifferences } from './build-ups';
import { fittingKindDifferences } from './fitting-kinds';
import { fixingPointDifferences, groundDifferences } from './ground';
import { alternativeDifferences, detailDifferences, rackDifferences, stockDifferences } from './job-parts';
import {
  hungDifferences,
  hungKindDifferences,
  magnetDifferences,
  peopleDifferences,
  pullTestDifferences,
} from './hung';
import { layoutDifferences } from './layouts';
import { markingDifferences } from './markings';
import { fittingDifferences, lineDifferences, openingDifferences, zoneDifferences } from './objects';
import { photoDifferences, pinDifferences, wallPhotoDifferences } from './photos';
import { addedWall, matchWalls, removedWall, wallDifferences } from './walls';

/**
 * In what a later job differs from an earlier one, wall by wall; what follows from a job (panels, plan) is not looked at.
 * Lengths within 0.01 mm are the same. [] if and only if nothing that a job says has changed, but for the letter and the
 * date of its revision.
 */
export function jobDifferences(before: Job, after: Job): Difference[] {
  const { pairs, added, removed } = matchWalls(before, after);
  const places = pairs.map(([was]) => before.walls.indexOf(was));
  const isReordered = places.some((place, i) => i > 0 && place < places[i - 1]!);
  const reordered: Difference = {
    kind: 'changed',
    subject: 'job',
    text: `The walls are listed in another order: ${after.walls.map(({ id }) => id).join(', ')}.`,
    places: [],
  };
  return [
    ...detailDifferences(before, after),
    ...photoDifferences(before, after),
    ...alternativeDifferences(before, after),
    ...stockDifferences(before, after),
    ...rackDifferences(before, after),
    ...productDifferences(before, after),
    ...buildUpDifferences(before, after),
    ...fittingKindDifferences(before, after),
    ...magnetDifferences(before, after),
    ...hungKindDifferences(before, after),
    ...(isReordered ? [reordered] : []),
    ...after.walls.flatMap((wall) => {
      const was = pairs.find(([, is]) => is === wall)?.[0];
      if (!was) return added.includes(wall) ? [addedWall(wall)] : [];
      if (was === wall) return [];
      return [
        ...wallDifferences(was, wall),
        ...openingDifferences(was, wall),
        ...fittingDifferences(was, wall),
        ...lineDifferences(was, wall),
        ...groundDifferences(was, wall),
        ...fixingPointDifferences(was, wall),
        ...wallPhotoDifferences(was, wall),
        ...pinDifferences(was, wall),
        ...zoneDifferences(was, wall),
        ...pullTestDifferences(was, wall),
        ...markingDifferences(was, wall),
        ...hungDifferences(was, wall),
        ...peopleDifferences(was, wall),
        ...layoutDifferences([before, after], was, wall),
      ];
    }),
    ...removed.map(removedWall),
  ];
}
