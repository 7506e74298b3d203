import type { AdviceKind } from '../../core/holding/advice';
import { nameOfHung } from '../../core/job/names';
import type { HungItem } from '../../core/job/hung-schema';

const done: Readonly<Record<AdviceKind, string>> = {
  rubber: 'Rubber on the magnets of',
  'larger-magnets': 'Larger magnets on',
  'other-grade': 'Stronger magnets on',
  'more-magnets': 'More magnets on',
  'set-apart': 'Set apart the magnets of',
  'clear-of-edges': 'Move clear of edges the magnets of',
  'move-on-panel': 'Move clear of edges',
  'other-zone': 'Hang on another zone',
  'less-over-steel': 'Less over the steel under',
  'thicker-steel': 'Thicker steel under',
  'half-reach': 'Bring nearer to the wall',
  'top-row-up': 'Raise the top magnets of',
  'clean-face': 'Clean the wall under',
  stop: 'Fit a stop to',
  'fixing-point': 'Screw to a fixing point',
};

/** What is read after "Undo". */
export function nameOfAdvice(kind: AdviceKind, item: HungItem): string {
  return `${done[kind]} ${nameOfHung(item)}`;
}
