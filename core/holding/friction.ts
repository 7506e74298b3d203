import type { faceConditions } from '../job/hung-schema';
import type { contacts } from '../job/magnet-schema';
import { note } from './calculation';

/*
 * Friction between a magnet's face and a finished wall. Static, dry handbook ranges and deliberately low design values:
 * note on holding force, section 4 (steel on plastic from a formula bank of drive engineering; the others from memory of
 * general tables; EN 12195-1 uses 0.6 for anti-slip rubber). Tabulated friction is only a guide: P. J. Blau, Tribology
 * International 34 (2001) 585.
 */

/** What touches the wall: plated or steel face, bare ferrite, paper or card in between, rubber. */
export type Contact = (typeof contacts)[number];

/** `dusty`: damp, dusty, waxy, or with a film of soap that was washed off. */
export type Condition = (typeof faceConditions)[number];

export type Surface = 'plain' | 'writable' | 'chalk';

export interface Friction {
  readonly mu: number;
  /** What handbooks give, least and most. */
  readonly range: readonly [number, number];
  readonly words: string;
  readonly source: string;
}

const source = `${note}, section 4`;
/** The note has a row for bare metal only; the others are halved as that one is. */
const halved = `${source}, halved as bare metal is (judgement)`;

const table: Readonly<Record<Contact, Readonly<Record<Condition, Friction>>>> = {
  metal: {
    'clean-dry': { mu: 0.2, range: [0.15, 0.35], words: 'plated or steel face on clean, dry paint', source },
    dusty: { mu: 0.1, range: [0.08, 0.2], words: 'plated or steel face, dusty, damp or waxy', source },
  },
  ferrite: {
    'clean-dry': { mu: 0.2, range: [0.2, 0.4], words: 'bare ferrite on clean, dry paint', source },
    dusty: { mu: 0.1, range: [0.1, 0.2], words: 'bare ferrite, dusty, damp or waxy', source: halved },
  },
  paper: {
    'clean-dry': { mu: 0.2, range: [0.2, 0.35], words: 'paper or card between, clean and dry', source },
    dusty: { mu: 0.1, range: [0.1, 0.18], words: 'paper or card between, dusty or damp', source: halved },
  },
  rubber: {
    'clean-dry': { mu: 0.4, range: [0.5, 0.9], words: 'rubber on clean, dry paint', source },
    dusty: { mu: 0.2, range: [0.25, 0.45], words: 'rubber, dusty, damp or waxy', source: halved },
  },
};

export function designFriction(contact: Contact, condition: Condition): Friction {
  return table[contact][condition];
}

/** Writing leaves dust and films of cleaner behind: a writable or chalk surface counts as dusty unless somebody says otherwise. */
export function usualCondition(surface: Surface): Condition {
  return surface === 'plain' ? 'clean-dry' : 'dusty';
}

/**
 * Friction measured on the wall, and never more than handbooks know of such a contact.
 *
 * @param measured lowest force at which a magnet began to slip down, over its pull there
 */
export function measuredFriction(measured: number, contact: Contact): Friction {
  const { range } = table[contact]['clean-dry'];
  return {
    mu: Math.min(measured, range[1]),
    range,
    words: 'measured on this wall',
    source: `slip test on site, at most the handbook's ${range[1]}`,
  };
}
