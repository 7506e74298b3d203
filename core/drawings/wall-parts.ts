import { boxOf, type Box } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { WorkedWall } from '../worked-out';
import type { WallPart } from './setting-out-view';

/**
 * A wall cut into parts of at most `width` × `height` (hundredths), row by row from the lower left. Cuts keep
 * clear of openings and fittings where they can, and fall on panel lines where one is near.
 *
 * @param firstSheet sheet number of the first part; parts know the sheets of their neighbours by it
 */
export function wallParts(
  wall: WorkedWall,
  box: Box,
  width: Hundredth,
  height: Hundredth,
  firstSheet: number,
): WallPart[] {
  const xs = cutsAlong(wall, 'x', box.left, box.right, width);
  const ys = cutsAlong(wall, 'y', box.bottom, box.top, height);
  const columns = xs.length - 1;
  const parts: WallPart[] = [];
  for (let row = 0; row + 1 < ys.length; row++) {
    for (let column = 0; column < columns; column++) {
      const sheet = firstSheet + row * columns + column;
      parts.push({
        shown: { left: xs[column]!, right: xs[column + 1]!, bottom: ys[row]!, top: ys[row + 1]! },
        beyond: {
          ...(column > 0 && { left: sheet - 1 }),
          ...(column + 1 < columns && { right: sheet + 1 }),
          ...(row > 0 && { bottom: sheet - columns }),
          ...(row + 2 < ys.length && { top: sheet + columns }),
        },
      });
    }
  }
  return parts;
}

function cutsAlong(
  wall: WorkedWall,
  axis: 'x' | 'y',
  from: Hundredth,
  to: Hundredth,
  most: Hundredth,
): Hundredth[] {
  const cuts = [from];
  const spans = blockedSpans(wall, axis);
  const lines = panelLines(wall, axis);
  while (to - cuts.at(-1)! > most) {
    const start = cuts.at(-1)!;
    const parts = Math.ceil((to - start) / most);
    cuts.push(bestCut(start + Math.round((to - start) / parts), start, most, spans, lines));
  }
  return [...cuts, to];
}

/** The place nearest to `ideal` within reach: a free panel line, else free, else `ideal` itself. */
function bestCut(
  ideal: Hundredth,
  start: Hundredth,
  most: Hundredth,
  spans: readonly (readonly [Hundredth, Hundredth])[],
  lines: readonly Hundredth[],
): Hundredth {
  const reach = most / 4;
  const inReach = (at: Hundredth) =>
    at > start + most / 3 && at <= start + most && Math.abs(at - ideal) <= reach;
  const free = (at: Hundredth) => spans.every(([low, high]) => at <= low || at >= high);
  const nearest = (places: readonly Hundredth[]) =>
    places
      .filter((at) => inReach(at) && free(at))
      .sort((a, b) => Math.abs(a - ideal) - Math.abs(b - ideal) || a - b)[0];
  const edges = spans.flatMap(([low, high]) => [low, high]);
  return nearest(lines) ?? nearest([ideal, ...edges]) ?? Math.min(ideal, start + most);
}

/** What a cut should not run through, with 100 mm on both sides for its name. */
function blockedSpans({ survey }: WorkedWall, axis: 'x' | 'y'): [Hundredth, Hundredth][] {
  return survey.keepOuts.map(({ bare }) => {
    const values = bare.ring.map((point) => point[axis]);
    return [Math.min(...values) - 10000, Math.max(...values) + 10000];
  });
}

function panelLines({ zones }: WorkedWall, axis: 'x' | 'y'): Hundredth[] {
  const lines = zones.flatMap(({ layout }) =>
    (layout?.panels ?? []).map(({ outline }) => {
      const box = boxOf(outline.outer);
      return axis === 'x' ? box.left : box.bottom;
    }),
  );
  return [...new Set(lines)];
}
