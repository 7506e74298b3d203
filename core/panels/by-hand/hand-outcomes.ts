import { locate } from '../../geometry/polygon';
import type { Layout } from '../../job/schema';
import { toHundredth, toMm } from '../../units';
import type { Pattern } from '../grid';
import type { Panel } from '../panel';
import { jointRuns, seamsOf, type JointRun } from '../seams';
import { liesInBand } from './bands';
import type { Refusal } from './change-by-hand';
import type { HandWish, WishOf } from './hand-wishes';
import { contradict, stripOnLine } from './start-rules';

/** What became of a choice by hand. */
export interface HandOutcome {
  readonly wish: HandWish;
  readonly state: 'met' | 'unmet' | 'lost' | 'unknown';
  /** Stable, for tests and other programs; the code of its finding. Empty where it is met. */
  readonly code: string;
  /** Why it is not met and how to mend it, to go on with after its name; empty where it is. */
  readonly why: string;
}

export interface OutcomeQuestion {
  readonly wishes: readonly HandWish[];
  readonly layout: Layout;
  readonly panels: readonly Panel[];
  readonly pattern: Pattern;
  readonly refused: ReadonlyMap<string, Refusal>;
  /** The panel lines come round a corner, so that no start is looked for here. */
  readonly runsOn?: boolean;
}

/** Looks at the panels as they came out, whatever was done to get there. */
export function handOutcomes(question: OutcomeQuestion): HandOutcome[] {
  const { wishes, layout, panels, refused } = question;
  if (wishes.length === 0) return [];
  const runs = jointRuns(
    seamsOf(
      panels.map(({ outline }) => outline),
      toHundredth(layout.jointGap),
    ),
  );
  const met = (wish: HandWish): HandOutcome => ({ wish, state: 'met', code: '', why: '' });
  return wishes.map((wish): HandOutcome => {
    switch (wish.kind) {
      case 'lost':
        return { wish, state: 'lost', code: 'by-hand-lost', why: lostWords(wish.why) };
      case 'unknown':
        return {
          wish,
          state: 'unknown',
          code: 'by-hand-unknown',
          why: 'is of a kind that is not known here, so it is kept and not followed',
        };
      case 'joint-on-line':
        return runs.some((run) => isOnLine(run, wish, layout))
          ? met(wish)
          : { wish, state: 'unmet', code: 'joint-off-line', why: whyOffLine(wish, question) };
      case 'whole-panel':
        return wholeOutcome(wish, question) ?? met(wish);
      case 'no-joints': {
        const left = runs.filter((run) => liesInBand(run, wish.band));
        return left.length === 0
          ? met(wish)
          : { wish, state: 'unmet', code: 'joints-in-band', why: whyInBand(left, question) };
      }
      default: {
        const refusal = refused.get(wish.id);
        if (!refusal) return met(wish);
        return refusal.isLost
          ? { wish, state: 'lost', code: 'by-hand-lost', why: lostWords(refusal.why) }
          : {
              wish,
              state: 'unmet',
              code: `${wish.kind}-refused`,
              why: `is not made: ${refusal.why}; move it or let it go`,
            };
      }
    }
  });
}

function lostWords(why: string): string {
  return `has lost its place: ${why}; give it another place or let it go`;
}

function isOnLine(run: JointRun, { axis, at }: WishOf<'joint-on-line'>, { stagger }: Layout): boolean {
  if (run.axis !== axis || run.at !== stripOnLine(at[axis], run.gap)) return false;
  return axis === 'y' || stagger === 0 || (at.y >= run.from - run.gap && at.y <= run.to + run.gap);
}

function whyOffLine(wish: WishOf<'joint-on-line'>, question: OutcomeQuestion): string {
  const { wishes, layout, pattern } = question;
  const given = givenStart(question);
  if (given) return `is not met by ${given}`;
  const other = wishes.find(
    (one): one is WishOf<'joint-on-line'> =>
      one.kind === 'joint-on-line' && one.id !== wish.id && contradict(wish, one, pattern),
  );
  if (!other) return 'is not met, as no two panels meet on it there; move it or let it go';
  const { axis } = wish;
  const apart = toMm(Math.abs(wish.at[axis] - other.at[axis]));
  const pitch = toMm(axis === 'x' ? pattern.pitchX : pattern.pitchY);
  const staggered = axis === 'x' && layout.stagger > 0 ? ', shifted from course to course' : '';
  return `contradicts ${other.id}: they are ${apart} mm apart, and joints lie every ${pitch} mm${staggered}; move one of them or let it go`;
}

/** What laid the panels where no start was looked for, and how to mend it; null where one was. */
function givenStart({ layout: { start }, runsOn }: OutcomeQuestion): string | null {
  if (runsOn) {
    return 'the panel lines, which come round the corner from the wall before: choose it in the zone there, let the lines start anew here, or let it go';
  }
  if (start === 'best') return null;
  const which = typeof start === 'string' ? 'the start that was chosen' : 'the picked start';
  return `${which}: let the best start be found, which keeps to it, or let it go`;
}

function wholeOutcome(wish: WishOf<'whole-panel'>, question: OutcomeQuestion): HandOutcome | null {
  const { panels, wishes } = question;
  const panel = panels.find(({ outline }) => locate(wish.at, outline) === 'inside');
  if (panel?.full) return null;
  const what = panel ? `panel ${panel.mark} is cut` : 'a joint passes through its point';
  const others = wishes.filter(({ kind }) => kind === 'joint-on-line' || kind === 'whole-panel').length > 1;
  const given = givenStart(question);
  const why = given
    ? `is not met by ${given}`
    : `is not met: ${what}, and no start makes it whole${others ? ' and keeps to the other choices' : ''}; move it or let it go`;
  return { wish, state: 'unmet', code: 'panel-not-whole', why };
}

function whyInBand(runs: readonly JointRun[], question: OutcomeQuestion): string {
  const said = runs.slice(0, 3).map(({ axis, at, gap }) => {
    const middle = toMm(Math.round(at + gap / 2));
    return axis === 'x' ? `upright at ${middle}` : `level at ${middle}`;
  });
  const more = runs.length > 3 ? ` and ${runs.length - 3} more` : '';
  const count = runs.length === 1 ? 'one joint is left in it' : `${runs.length} joints are left in it`;
  const given = givenStart(question);
  const mend = given
    ? `they come with ${given}`
    : 'no start has fewer there with what else was chosen; make it smaller or let it go';
  return `is not met: ${count}, ${said.join(', ')}${more} mm; ${mend}`;
}
