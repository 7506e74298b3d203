import type { DepthBehind } from './layers';

/** What each band of a cutaway shows, the first the finished wall. */
export const depthTitles: Readonly<Record<DepthBehind, string>> = {
  filler: 'Under the finish',
  primer: 'Under the filler',
  steel: 'Steel and magnetic coating alone',
  ground: 'The wall they are on',
};

/** Of the wall's width, each band between the finished wall and the deepest one. */
export const bandShare = 0.18;

export interface Band {
  readonly from: number;
  readonly to: number;
}

/**
 * Where the bands of a cutaway lie, side by side: the finished wall at the left, then one step of the layers after another,
 * as on a sample board. The cut comes in from the right.
 *
 * @param steps how many there are behind the finished wall
 * @param share how far the cut has come: 0 all is finished, 1 the deepest step is seen everywhere
 * @returns one more than there are steps; together they are the whole wall; empty ones have from = to
 */
export function cutBands(left: number, right: number, steps: number, share: number): Band[] {
  const wide = right - left;
  const first = right - share * wide * (1 + bandShare * Math.max(0, steps - 1));
  const hold = (x: number) => Math.max(left, Math.min(right, x));
  const edges = Array.from({ length: steps }, (_, i) => hold(first + i * bandShare * wide));
  return [left, ...edges].map((from, i) => ({ from, to: edges[i] ?? right }));
}
