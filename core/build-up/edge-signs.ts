import { boxesMeet, boxOf, locate, type Box, type Point, type Region } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { EdgeStretch, End } from './edge-ends';

/* How an edge end is drawn, on screen and on paper alike: told apart by shape, not by colour. */

export type SignLine = readonly [Point, Point];

/** Of a sign, in its units: a unit is about a millimetre on paper. */
const every: Readonly<Record<End, number>> = { feather: 5, 'stop-bead': 3, trim: 3.6, corner: 3 };

/**
 * The signs along the edges of zones: long and short strokes outwards over a feather, as a slope is drawn on a plan of
 * ground (common practice, no source), no farther than it reaches; ticks across a stop bead; a row of small boxes along a
 * trim; slanting ticks where the layers run to the corner. Wall frame, hundredths.
 *
 * @param feather where feathers lie
 * @param unit hundredths on the wall to a unit of a sign
 * @param within signs beyond are left out
 */
export function edgeSigns(
  stretches: readonly EdgeStretch[],
  feather: Region,
  unit: Hundredth,
  within?: Box,
): SignLine[] {
  return stretches.flatMap(({ end, width, points }) => {
    const reach = end === 'feather' ? (width ?? 0) * 100 : 2 * unit;
    const step = every[end] * unit;
    const lines: SignLine[] = [];
    let [walked, next, count] = [0, step / 2, 0];
    points.slice(1).forEach((to, i) => {
      const from = points[i]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const isOff = within && !boxesMeet(grown(boxOf([from, to]), reach), within);
      const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
      // The zone lies on the left.
      const frame = (at: number): Place => {
        const start = { x: from.x + along.x * at, y: from.y + along.y * at };
        return (t, out) => ({
          x: start.x + along.x * t * unit + along.y * out * unit,
          y: start.y + along.y * t * unit - along.x * out * unit,
        });
      };
      for (; next <= walked + length; next += step, count++) {
        const place = frame(next - walked);
        if (isOff || (within && !boxesMeet(grown(boxOf([place(0, 0)]), reach), within))) continue;
        if (end === 'feather') lines.push(...slope(place, count, reach / unit, feather));
        else lines.push(...signs[end](place));
      }
      walked += length;
    });
    return lines;
  });
}

/** A point by units along the edge and outwards from it. */
type Place = (along: number, outwards: number) => Point;

const signs: Readonly<Record<Exclude<End, 'feather'>, (place: Place) => SignLine[]>> = {
  'stop-bead': (place) => [[place(0, -1), place(0, 1)]],
  trim: (place) => {
    const corners = [place(-1.2, -0.2), place(1.2, -0.2), place(1.2, -1.2), place(-1.2, -1.2)];
    return corners.map((corner, i): SignLine => [corner, corners[(i + 1) % 4]!]);
  },
  corner: (place) => [[place(-0.7, -1.6), place(0.7, 0)]],
};

/** One stroke down the slope, every other one short, as far as the feather goes there. */
function slope(place: Place, count: number, width: number, feather: Region): SignLine[] {
  const from = place(0, 0);
  const to = place(0, width * (count % 2 === 0 ? 1 : 0.3));
  const start = { x: from.x + (to.x - from.x) * 0.02, y: from.y + (to.y - from.y) * 0.02 };
  const lies = feather.some((polygon) => locate(whole(start), polygon) !== 'outside');
  if (!lies) return [];
  const share = Math.min(
    1,
    ...feather.flatMap(({ outer, holes }) =>
      [outer, ...holes].flatMap((ring) =>
        ring.flatMap((a, i) => crossing(start, to, a, ring[(i + 1) % ring.length]!)),
      ),
    ),
  );
  return [[from, { x: start.x + (to.x - start.x) * share, y: start.y + (to.y - start.y) * share }]];
}

/** Where on the way from `p` to `q` a segment is crossed, as a share of it. */
function crossing(p: Point, q: Point, a: Point, b: Point): number[] {
  const [rx, ry, sx, sy] = [q.x - p.x, q.y - p.y, b.x - a.x, b.y - a.y];
  const cross = rx * sy - ry * sx;
  if (cross === 0) return [];
  const t = ((a.x - p.x) * sy - (a.y - p.y) * sx) / cross;
  const u = ((a.x - p.x) * ry - (a.y - p.y) * rx) / cross;
  return t > 0 && u >= 0 && u <= 1 ? [t] : [];
}

function whole({ x, y }: Point): Point {
  return { x: Math.round(x), y: Math.round(y) };
}

function grown({ left, bottom, right, top }: Box, by: number): Box {
  return { left: left - by, bottom: bottom - by, right: right + by, top: top + by };
}
