import type { FinishLevel } from '../job/offer-schema';

/*
 * Words of an offer where its job has none of its own. Common practice, no source; the firm's own conditions and local
 * law go before them.
 */

export const usualExclusions: readonly string[] = [
  'Repair of the ground beyond what the scope names, such as loose plaster, cracks and damp.',
  'Moving of sockets, switches, lights, radiators and pipes.',
  'Painting of what lies outside the zones.',
  'Magnets, pens, chalk and what hangs on the wall.',
];

export const usualDuties: readonly string[] = [
  'The room is cleared, the wall is free, and nobody else works at it.',
  'The floor is finished, or its finished level is marked on the wall.',
  'The room is heated and aired as the products ask, from before the work until they have cured.',
  'There is light to work by, power within reach of the wall, and water.',
  'Materials can be kept dry and free of frost in the room or beside it.',
];

/** Where steel comes up to something live. */
export const electricianDuty =
  'A licensed electrician switches off, takes off covers and decides on bonding and earthing, by the local wiring rules.';

/**
 * What each level of finish is, in words. Levels after an information sheet of the gypsum industry (Q1 base, Q2 standard and
 * usual where nothing is agreed, Q3 special, Q4 full skim; read in a secondary page); wording of our own.
 */
export const finishWords: Readonly<Record<FinishLevel, string>> = {
  Q2: 'Q2, standard: joints and fixings are filled flush; marks of the filling may show, above all in light along the wall.',
  Q3: 'Q3, special: joints are filled wide and the surface is closed with fine filler; marks in light along the wall are fewer, not gone.',
  Q4: 'Q4, the highest: the whole surface is skimmed and smoothed; slight marks may still show in light along the wall.',
};

export const noLevelAgreed =
  'No level of finish is agreed: standard (Q2) is what is usual then. A smooth, shiny finish shows unevenness more than a matt one.';

export const notInRakingLight =
  'The surface is judged by eye from where the room is used, in the light that is usual there, not in raking light.';

export const inRakingLight = 'Raking light is agreed as part of acceptance';
