import type { Scene } from './scene';
import { layersBehind, topInWords, type DepthBehind } from './layers';

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

/** What each step behind the finished wall shows of each zone: `1 steel panels, 2 primer`; of zones that it changes. */
export function stepsInWords({ look, wall, notices }: Scene): { title: string; zones: string }[] {
  return look.behind.map(({ depth }, i) => {
    const before = look.behind[i - 1]?.depth;
    const zones = notices.flatMap(({ zone, number }) => {
      const { resolved } = wall.zones.find(({ area }) => area === zone)!.buildUp;
      const left = layersBehind(resolved, depth);
      const isSame = before !== undefined && layersBehind(resolved, before).length === left.length;
      return isSame ? [] : [`${number} ${topInWords(left)}`];
    });
    return { title: depthTitles[depth], zones: zones.join(', ') };
  });
}
