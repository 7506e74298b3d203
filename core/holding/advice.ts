import type { Job } from '../job/schema';
import type { Verdict } from './judge-item';
import type { Trial } from './trials';

/** What an advice is about; one of each kind at most, but for zones. */
export const adviceKinds = [
  'rubber',
  'larger-magnets',
  'other-grade',
  'more-magnets',
  'set-apart',
  'clear-of-edges',
  'move-on-panel',
  'other-zone',
  'less-over-steel',
  'thicker-steel',
  'half-reach',
  'top-row-up',
  'clean-face',
  'stop',
  'fixing-point',
] as const;
export type AdviceKind = (typeof adviceKinds)[number];

/** One thing to change, and what it leads to. */
export interface Advice {
  readonly kind: AdviceKind;
  /** What to do, as somebody would say it; lengths in mm. */
  readonly words: string;
  /** What else has to be known or done; lengths in mm. */
  readonly also?: string;
  readonly verdict: Verdict;
  /** It is then screwed, and its magnets are not asked to carry it. */
  readonly isScrewed: boolean;
  readonly factor?: number;
  readonly asked?: number;
  /** Of what may be used up in the mode that governs, before over after: 2 is half as much used. Infinity where it held nothing, or nothing could be said of it. */
  readonly effect: number;
  /** The station where it is done, where no change of this item does it. */
  readonly at?: 'Zones' | 'Panels';
  /** Does it. Absent: it is done elsewhere, or on site. */
  readonly change?: (job: Job) => Job;
}

/** Before it is judged. */
export interface Candidate extends Trial {
  readonly kind: AdviceKind;
  readonly words: string;
  readonly also?: string;
}
