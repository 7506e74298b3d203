import type { Finding } from '../finding';

/*
 * How many times over a thing has to hold. Note on holding force, section 4: 3 for light things at reach height; 5 where it
 * is knocked, handled daily, on a door, or where its fall could hurt. Nothing heavy or fragile over a bed, seat or play
 * area on magnets alone.
 */

export const consequences = ['light-at-reach', 'handled', 'could-hurt', 'above-people'] as const;
/** `handled`: knocked, handled daily, on a door. `above-people`: over a bed, seat, walkway or play area. */
export type Consequence = (typeof consequences)[number];

/** Above this, kg, nothing is a light thing, whatever is said of it. Judgement: the note's own example of one weighs 1.02 kg. */
export const heaviestLight = 1.5;

export function safetyFactor(consequence: Consequence): number {
  return consequence === 'light-at-reach' ? 3 : 5;
}

export const consequenceWords: Readonly<Record<Consequence, string>> = {
  'light-at-reach': 'a light thing at reach height',
  handled: 'knocked, handled daily, or on a door',
  'could-hurt': 'its fall could hurt',
  'above-people': 'over a bed, seat, walkway or play area',
};

/**
 * Magnet, sheet, gap and steel against a pull at once, as the note takes them (section 4); where the place is known,
 * `pullRange` says it better.
 */
export const usualStack = 0.95 * 0.92 * 0.94 * 0.9;

/**
 * The share of the safety factor that has to be there with every tolerance of the place against it. The note's 3 comes of
 * 0.74 for tolerances and 0.5 for friction, 1/0.37 = 2.7: what 3 leaves for tolerances, once friction has halved, is 2/3.
 */
export const stackInFactor = 1 / (3 * 0.5);

/** What counts as light duty, where a coating may be judged without figures: a few sheets of paper or card. Judgement. */
export const lightDuty = { weight: 0.5, reach: 5 } as const;

/** Cautions that go with every result; note on holding force, section 5, and the trade's usual ones. */
export const holdingCautions: readonly Finding[] = [
  ['test-first', 'An estimate only: before use, test on site with the real magnet and three times the load.'],
  ['look-again', 'Soft paint creeps: look again after a day and after a week.'],
  [
    'swallowed-magnets',
    'Keep small magnets from children: two that are swallowed are an emergency for a surgeon.',
  ],
  [
    'implants',
    'Keep strong magnets at least 30 cm from pacemakers, defibrillators, pumps and shunts, and follow the doctor’s or maker’s advice; keep them from hearing aids, watches, cards and screens.',
  ],
  [
    'pinched-fingers',
    'Strong magnets jump together and splinter: mind fingers, wear glasses, and never drill or saw them.',
  ],
  ['slide-off', 'Slide a magnet off; do not lever or tear it, which pulls at the edge of the panel.'],
  [
    'above-people',
    'Hang nothing heavy or fragile over a bed, seat, walkway or play area on magnets alone: add a mechanical stop. Hang nothing overhead on magnets.',
  ],
].map(([code, text]) => ({ level: 'note', code: code!, text: text! }));
