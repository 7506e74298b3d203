import { boxOf, type Box, type Point, type Ring } from '../geometry/polygon';
import type { Hundredth, Mm } from '../units';
import type { PaperPoint, Stroke } from './page';
import type { WriteLength } from './paper-figures';
import { onPaper, type PaperBox, type Scale } from './paper';

/** How a wall, or a part of it, stands on a page. */
export interface View {
  readonly scale: Scale;
  /** Where the wall's datum lies; it may lie off the page. */
  readonly datum: PaperPoint;
  /** The part of the wall that is shown, wall frame. */
  readonly shown: Box;
  /** How its lengths are written. */
  readonly write: WriteLength;
}

/** The part of a wall for one page, and what its neighbours are. */
export interface WallPart {
  readonly shown: Box;
  /** The sheet that goes on beyond each side; undefined where the wall ends. */
  readonly beyond: {
    readonly left?: number;
    readonly right?: number;
    readonly bottom?: number;
    readonly top?: number;
  };
}

export function paperX({ datum, scale }: View, x: Hundredth): Mm {
  return datum.x + onPaper(x / 100, scale);
}

export function paperY({ datum, scale }: View, y: Hundredth): Mm {
  return datum.y + onPaper(y / 100, scale);
}

export function paperPoint(view: View, { x, y }: Point): PaperPoint {
  return { x: paperX(view, x), y: paperY(view, y) };
}

export function paperRing(view: View, ring: Ring): PaperPoint[] {
  return ring.map((point) => paperPoint(view, point));
}

export function paperBox(view: View, { left, bottom, right, top }: Box): PaperBox {
  return {
    left: paperX(view, left),
    bottom: paperY(view, bottom),
    right: paperX(view, right),
    top: paperY(view, top),
  };
}

/** Whether any of a ring may show in the part of the wall on the page. */
export function shows({ shown }: View, ring: Ring): boolean {
  const box = boxOf(ring);
  return box.left < shown.right && shown.left < box.right && box.bottom < shown.top && shown.bottom < box.top;
}

/** The parts of strokes inside a box, as open strokes. */
export function clipStrokes(strokes: readonly Stroke[], box: PaperBox): Stroke[] {
  return strokes.flatMap((stroke) => {
    const { points, closed, ...style } = stroke;
    if (points.every((point) => isWithin(point, box))) return [stroke];
    const ends = closed ? [...points, points[0]!] : points;
    return chain(
      ends.slice(1).flatMap((to, i) => {
        const span = spanInside(ends[i]!, to, box);
        return span ? [[pointAlong(ends[i]!, to, span[0]), pointAlong(ends[i]!, to, span[1])] as const] : [];
      }),
    ).map((run) => ({ ...style, points: run }));
  });
}

/** Strokes with gaps where they would run through a box, so that no line crosses a text. */
export function breakStrokes(strokes: readonly Stroke[], boxes: readonly PaperBox[]): Stroke[] {
  return strokes.flatMap((stroke) => {
    const { points, closed, ...style } = stroke;
    const ends = closed ? [...points, points[0]!] : points;
    const near = boxes.filter((box) => mayCross(points, box));
    if (near.length === 0) return [stroke];
    return chain(ends.slice(1).flatMap((to, i) => partsOutside(ends[i]!, to, near))).map((run) => ({
      ...style,
      points: run,
    }));
  });
}

/** Whether a straight line from `a` to `b` runs through a box. */
export function crosses(a: PaperPoint, b: PaperPoint, box: PaperBox): boolean {
  const span = spanInside(a, b, box);
  return span !== undefined && span[1] - span[0] > 1e-6;
}

function partsOutside(
  a: PaperPoint,
  b: PaperPoint,
  boxes: readonly PaperBox[],
): (readonly [PaperPoint, PaperPoint])[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const gaps = boxes
    .flatMap((box) => {
      const span = spanInside(a, b, box);
      return span && span[1] > span[0] ? [span] : [];
    })
    .sort((one, other) => one[0] - other[0]);
  const parts: (readonly [PaperPoint, PaperPoint])[] = [];
  let from = 0;
  for (const [start, end] of [...gaps, [1, 1] as const]) {
    // What is left between two texts must be long enough to be seen as a line.
    if ((start - from) * length > 0.3) parts.push([pointAlong(a, b, from), pointAlong(a, b, start)]);
    from = Math.max(from, end);
  }
  return parts;
}

/** Segments that follow each other become one stroke again. */
function chain(segments: readonly (readonly [PaperPoint, PaperPoint])[]): PaperPoint[][] {
  const runs: PaperPoint[][] = [];
  for (const [a, b] of segments) {
    const last = runs.at(-1)?.at(-1);
    if (last && Math.abs(last.x - a.x) < 1e-9 && Math.abs(last.y - a.y) < 1e-9) runs.at(-1)!.push(b);
    else runs.push([a, b]);
  }
  return runs;
}

/** Parameters between which a segment lies inside a box (Liang and Barsky 1984). */
function spanInside(a: PaperPoint, b: PaperPoint, box: PaperBox): [number, number] | undefined {
  let from = 0;
  let to = 1;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (const [direction, room] of [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.bottom],
    [dy, box.top - a.y],
  ] as const) {
    if (direction === 0) {
      if (room < 0) return undefined;
    } else if (direction < 0) from = Math.max(from, room / direction);
    else to = Math.min(to, room / direction);
  }
  return from < to ? [from, to] : undefined;
}

function pointAlong(a: PaperPoint, b: PaperPoint, t: number): PaperPoint {
  if (t <= 0) return a;
  if (t >= 1) return b;
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

function isWithin({ x, y }: PaperPoint, box: PaperBox): boolean {
  return box.left <= x && x <= box.right && box.bottom <= y && y <= box.top;
}

function mayCross(points: readonly PaperPoint[], box: PaperBox): boolean {
  return !(
    points.every(({ x }) => x <= box.left) ||
    points.every(({ x }) => x >= box.right) ||
    points.every(({ y }) => y <= box.bottom) ||
    points.every(({ y }) => y >= box.top)
  );
}
