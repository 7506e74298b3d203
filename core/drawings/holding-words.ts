import type { Advice } from '../holding/advice';
import {
  largestWeightWords,
  ledToWords,
  modeWords,
  timesFigure,
  usedFigure,
  type ItemState,
} from '../holding/calculation-words';
import type { HungCheck } from '../holding/check-hung';
import { hungKindInWords } from '../job/hung-kinds';
import type { HungItem } from '../job/hung-schema';
import { sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';

/* What a check sheet says of an item in words. Every state that is no plain yes says first what must not be done. */

/** Of an item in a whole job, where each wall counts its own: `A-H6`, as panels are marked. */
export function markOfItem(wall: { readonly id: string }, item: { readonly id: string }): string {
  return `${wall.id}-${item.id}`;
}

/** `A-H6 Shelf (Ink tins)`; of several alike `A-H1, A-H2 Print (First state; Second state)`. */
export function markedNames(wall: { readonly id: string }, items: readonly HungItem[]): string {
  const marks = items.map((item) => markOfItem(wall, item));
  const said = marks.length <= 3 ? marks.join(', ') : `${marks[0]} and ${marks.length - 1} alike`;
  const names = [...new Set(items.slice(0, 3).flatMap(({ name }) => name || []))].join('; ');
  const kind = capital(hungKindInWords(items[0]!.kind));
  return `${said} ${kind}${names ? ` (${names})` : ''}`;
}

export function stateOfCheck({ verdict }: Pick<HungCheck, 'verdict'>): ItemState {
  return verdict.isScrewed ? 'screwed to a fixing point' : verdict.verdict;
}

/**
 * `9,73 times over, 3 asked for`; undefined where nothing can be judged, or where the use forbids what the magnets would
 * hold: a factor would only contradict the words there.
 */
export function timesOver({ verdict }: Pick<HungCheck, 'verdict'>): string | undefined {
  const { factor, asked, isScrewed, verdict: state } = verdict;
  if (isScrewed || factor === undefined || asked === undefined || state === 'cannot be judged')
    return undefined;
  if (state === 'does not hold' && factor >= asked) return undefined;
  return `${comma(timesFigure(factor))} times over, ${asked} asked for`;
}

/** What governs, `a magnet pried off`; undefined where nothing is said of it. */
export function governing(check: Pick<HungCheck, 'verdict'>): string | undefined {
  const { governs } = check.verdict;
  return governs && timesOver(check) !== undefined ? modeWords[governs] : undefined;
}

/** `0,48 kg`; what holds nothing before a test says so instead of 0. */
export function safeWeight({ verdict, largestWeight }: HungCheck, units?: LengthUnits): string | undefined {
  if (largestWeight === undefined) return undefined;
  const state = verdict.verdict;
  if (largestWeight === 0) return state === 'holds only if tested' ? 'none yet' : 'none';
  return comma(largestWeightWords(largestWeight, units));
}

/** What whoever stands before the wall is to do with it. */
export function whatToDo(check: HungCheck): string {
  switch (stateOfCheck(check)) {
    case 'holds':
      return 'May hang as drawn once tested with three times its load.';
    case 'holds only if tested':
      return 'Not to be used before a test at this very place.';
    case 'does not hold':
      return 'Do not hang it so.';
    case 'cannot be judged':
      return 'Do not hang it before what is missing is known.';
    case 'screwed to a fixing point':
      return 'Its screws carry it: whoever answers for the fixing decides.';
  }
}

/** The same in few words, with the first thing that would help. */
export function whatToDoBriefly(check: HungCheck, advice: readonly Advice[]): string {
  const [first] = advice;
  switch (stateOfCheck(check)) {
    case 'holds':
      return 'Test it, then hang it as drawn.';
    case 'holds only if tested':
      return 'Test at its place before use.';
    case 'does not hold':
      return first ? `Do not hang it so. ${first.words}` : 'Do not hang it so.';
    case 'cannot be judged':
      return `Do not hang it yet: ${lowerFirst(check.verdict.reasons[0] ?? 'see its sheet.')}`;
    case 'screwed to a fixing point':
      return 'Screw it; the fixing is for whoever answers for it.';
  }
}

/** What to do and what it leads to; how much is asked only where that changes with it. */
export function adviceWords(one: Advice, asked: number | undefined): string {
  const { words, also, at, isScrewed, factor, verdict } = one;
  const leads = isScrewed
    ? ''
    : factor === undefined || one.asked === undefined
      ? `Then it ${verdict}.`
      : one.asked === asked
        ? `Then it ${verdict}, ${timesFigure(factor)} times over.`
        : `Then it ${ledToWords(one)}.`;
  return [words, leads, also ?? '', at ? `Done at ${at}.` : ''].filter(Boolean).join(' ');
}

/** What is said of the adhesive, panels of which the same is said together. */
export function bondWords(bonds: HungCheck['bonds']): string[] {
  const used = (share: number | undefined) =>
    share === undefined ? 'strength not stated' : `${usedFigure(share)} used`;
  const said = new Map<string, string[]>();
  for (const { panel, items, result } of bonds) {
    const words = `which carry ${items.join(', ')}: ${result.verdict}. Shear: ${used(result.shearUtilisation)}; peel at its edge: ${used(result.peelUtilisation)}.`;
    said.set(words, [...(said.get(words) ?? []), panel]);
  }
  return [...said].map(([words, panels]) =>
    panels.length > 1
      ? `Panels ${panels.join(', ')}, ${words}`
      : `Panel ${panels[0]}, ${words.replace('which carry', 'which carries')}`,
  );
}

/** With the comma of the drawing practice. */
export function comma(figure: string): string {
  return figure.replace(/(?<=\d)\.(?=\d)/g, ',');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
