import type { Hundredth, Mm } from '../units';
import { depthOfRunningDimension, drawRunningDimension, type Stop } from './dimension';
import type { WriteLength } from './paper-figures';
import type { Item, TextMeasure } from './page';
import type { PaperBox } from './paper';

/** From the sketch's edge to the dimension line. */
const toLine: Mm = 4;

/**
 * Running dimensions from the lower left corner of a sketch along its foot and its left side.
 *
 * @param box the sketch on paper; its lower left corner is the origin
 * @param xs, ys places to dimension besides the whole width and height; hundredths from the origin
 * @returns undefined where the figures of a side do not fit: another sheet of paper or a larger scale is needed
 */
export function runningFrame(
  box: PaperBox,
  width: Hundredth,
  height: Hundredth,
  xs: readonly Hundredth[],
  ys: readonly Hundredth[],
  write: WriteLength,
  measure: TextMeasure,
): { items: Item[]; left: Mm; foot: Mm } | undefined {
  const perX = (box.right - box.left) / width;
  const perY = (box.top - box.bottom) / height;
  const stops = (places: readonly Hundredth[], end: Hundredth, start: Mm, per: number, edge: Mm): Stop[] =>
    [...new Set([...places, end])]
      .filter((place) => place > 0)
      .map((place) => ({
        at: start + place * per,
        from: edge,
        figure: write(place),
        strong: place === end,
      }));
  const footStops = stops(xs, width, box.left, perX, box.bottom);
  const sideStops = stops(ys, height, box.bottom, perY, box.left);
  const foot = drawRunningDimension(
    {
      axis: 'foot',
      line: box.bottom - toLine,
      origin: box.left,
      stops: footStops,
      from: box.left - 2,
      to: box.right + 6,
      height: 2.5,
    },
    measure,
  );
  const side = drawRunningDimension(
    {
      axis: 'side',
      line: box.left - toLine,
      origin: box.bottom,
      stops: sideStops,
      from: box.bottom - 2,
      to: box.top + 1.5,
      height: 2.5,
    },
    measure,
  );
  if (!foot || !side) return undefined;
  return {
    items: [...foot.extensionLines, ...side.extensionLines, ...foot.items, ...side.items],
    left: toLine + depthOfRunningDimension(sideStops, 2.5, measure),
    foot: toLine + depthOfRunningDimension(footStops, 2.5, measure),
  };
}
