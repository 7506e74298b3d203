import type { Finding } from '../finding';
import { checkByHand } from './check-by-hand';
import { checkCorners } from './check-corners';
import { checkAlternatives } from './check-alternatives';
import { checkBuildUps } from './check-build-ups';
import { checkIds } from './check-ids';
import { checkKinds } from './check-kinds';
import { checkLayouts } from './check-layouts';
import { checkMarkings } from './check-markings';
import { checkOffer } from './check-offer';
import { checkPhotos } from './check-photos';
import { checkPrinting } from './check-printing';
import { checkProgramme } from './check-programme';
import { checkReferences } from './check-references';
import { checkShapes } from './check-shapes';
import type { Job } from './schema';

/**
 * What a job must hold beyond the form of its fields, so that the stages after it can rely on it: ids that name
 * one thing each, references that lead somewhere, simple shapes with an area, layouts of a bearable size.
 *
 * @returns one finding of level `error` for each fault, in the order of the file; [] if the job is sound
 */
export function checkJob(job: Job): Finding[] {
  return [
    ...checkIds(job),
    ...checkKinds(job),
    ...checkAlternatives(job),
    ...checkReferences(job),
    ...checkBuildUps(job),
    ...checkCorners(job),
    ...checkShapes(job),
    ...checkLayouts(job),
    ...checkByHand(job),
    ...checkMarkings(job),
    ...checkPhotos(job),
    ...checkOffer(job),
    ...checkProgramme(job),
    ...checkPrinting(job),
  ];
}
