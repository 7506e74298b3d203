import type { HungVerdict } from '../../core/holding/judge-wall';
import { plainFigure } from '../look/figures';

/** What can be said of an item. Each has a mark of its own shape beside its words. */
export type HungState =
  'holds' | 'holds only if tested' | 'does not hold' | 'cannot be judged' | 'screwed to a fixing point';

/** In the order in which they are counted. */
export const hungStates: readonly HungState[] = [
  'holds',
  'holds only if tested',
  'does not hold',
  'cannot be judged',
  'screwed to a fixing point',
];

export function stateOf({ verdict, isScrewed }: HungVerdict): HungState {
  return isScrewed ? 'screwed to a fixing point' : verdict;
}

/** `holds 3.2 times over, 3 asked`; the state alone where no factor can be said. */
export function stateWords(verdict: HungVerdict): string {
  const state = stateOf(verdict);
  const factor = saidFactor(verdict);
  const { asked } = verdict;
  if (factor === undefined || asked === undefined) return state;
  return `${state}: ${factorFigure(factor)} times, ${plainFigure(asked, 1)} asked`;
}

/** As it stands at the item on the drawing, in fewer and fewer words; none of them says more than the first. */
export function stateOnDrawing(verdict: HungVerdict): readonly string[] {
  const state = stateOf(verdict);
  if (state === 'screwed to a fixing point') return [state, 'screwed'];
  const factor = saidFactor(verdict);
  const words = state === 'holds only if tested' ? [state, 'only if tested'] : [state];
  return factor === undefined ? words : [`${state}, ${factorFigure(factor)} times`, ...words];
}

/** Where the use forbids it, or nothing can be judged, a factor would only contradict the words. */
function saidFactor({ verdict, factor, asked = Infinity }: HungVerdict): number | undefined {
  if (factor === undefined || verdict === 'cannot be judged') return undefined;
  return verdict === 'does not hold' && factor >= asked ? undefined : factor;
}

/** Never rounded up: 2.97 is not 3. "1 times" and "0 times" would read as slips of the pen. */
export function factorFigure(factor: number): string {
  if (!Number.isFinite(factor)) return plainFigure(factor, 1);
  const tenths = Math.floor(factor * 10 + 1e-9);
  if (tenths < 1) return 'under 0.1';
  return tenths < 100 ? (tenths / 10).toFixed(1) : String(Math.floor(tenths / 10));
}
