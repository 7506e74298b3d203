import type { Box, Point, Polygon, Ring } from '../geometry/polygon';
import { doubleSignedArea } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { isInside, type AreaEdges } from './area-edges';

/**
 * A rectilinear shape as a small raster on its own coordinates: block (i, j) is the rectangle from xs[i] to
 * xs[i + 1] and ys[j] to ys[j + 1], and `filled[j · columns + i]` says whether it belongs to the shape.
 *
 *     ys[2] ┬───┬─────┐
 *           │ 1 │  0  │     an L: two columns, two rows
 *     ys[1] ┼───┼─────┤
 *           │ 1 │  1  │
 *     ys[0] ┴───┴─────┘
 *         xs[0] xs[1] xs[2]
 */
export interface Blocks {
  readonly xs: readonly Hundredth[];
  readonly ys: readonly Hundredth[];
  readonly columns: number;
  readonly rows: number;
  readonly filled: Uint8Array;
}

/** The part of an area inside a box through which none of its sloping edges passes. */
export function blocksInBox(edges: AreaEdges, box: Box): Blocks {
  const { left, bottom, right, top } = box;
  const crossing = edges.vertical.filter(
    ({ at, from, to }) => at > left && at < right && from < top && to > bottom,
  );
  const level = edges.horizontal.filter(
    ({ at, from, to }) => at > bottom && at < top && from < right && to > left,
  );
  // Ends of vertical edges need no lines of their own: a horizontal or sloping edge starts there.
  const xs = ascending([left, right, ...crossing.map(({ at }) => at)]);
  const ys = ascending([bottom, top, ...level.map(({ at }) => at)]);
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const filled = new Uint8Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    const y = (ys[j]! + ys[j + 1]!) / 2;
    let inside = isInside(edges, (xs[0]! + xs[1]!) / 2, y);
    for (let i = 0; i < columns; i++) {
      if (i > 0) {
        for (const { at, from, to } of crossing) if (at === xs[i] && from < y && to >= y) inside = !inside;
      }
      filled[j * columns + i] = inside ? 1 : 0;
    }
  }
  return { xs, ys, columns, rows, filled };
}

/** The connected parts of a raster, each on the same coordinates; blocks that share only a corner are apart. */
export function partsOf(blocks: Blocks): Blocks[] {
  const { columns, rows, filled } = blocks;
  const left = filled.slice();
  const parts: Blocks[] = [];
  for (let first = 0; first < left.length; first++) {
    if (!left[first]) continue;
    const part = new Uint8Array(left.length);
    const open = [first];
    left[first] = 0;
    for (let block = open.pop(); block !== undefined; block = open.pop()) {
      part[block] = 1;
      const i = block % columns;
      const j = (block - i) / columns;
      const reach = (other: number) => {
        if (left[other]) {
          left[other] = 0;
          open.push(other);
        }
      };
      if (i > 0) reach(block - 1);
      if (i + 1 < columns) reach(block + 1);
      if (j > 0) reach(block - columns);
      if (j + 1 < rows) reach(block + columns);
    }
    parts.push({ ...blocks, filled: part });
  }
  return parts;
}

/** Area in hundredths squared. */
export function blocksArea({ xs, ys, columns, rows, filled }: Blocks): number {
  let area = 0;
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      if (filled[j * columns + i]) area += (xs[i + 1]! - xs[i]!) * (ys[j + 1]! - ys[j]!);
    }
  }
  return area;
}

/**
 * The outline of one connected part. Where the part touches itself in a corner, the rings are led so that each
 * of them is simple: the hole touches the outside, no ring touches itself.
 */
export function polygonOfPart({ xs, ys, columns, rows, filled }: Blocks): Polygon {
  const isFilled = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < columns && j < rows && filled[j * columns + i] === 1;
  // A boundary step runs with the part on its left, from grid corner (i, j) in one of four directions:
  // 0 right, 1 up, 2 left, 3 down. `leftOf` is the block left of a step, `rightOf` the one right of it.
  const dx = [1, 0, -1, 0];
  const dy = [0, 1, 0, -1];
  const leftOf = (i: number, j: number, d: number): boolean =>
    isFilled(i + [0, -1, -1, 0][d]!, j + [0, 0, -1, -1][d]!);
  const rightOf = (i: number, j: number, d: number): boolean =>
    isFilled(i + [0, 0, -1, -1][d]!, j + [-1, 0, 0, -1][d]!);
  const isStep = (i: number, j: number, d: number) => leftOf(i, j, d) && !rightOf(i, j, d);
  const key = (i: number, j: number, d: number) => (j * (columns + 1) + i) * 4 + d;

  const seen = new Set<number>();
  const rings: Ring[] = [];
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i <= columns; i++) {
      for (let direction = 0; direction < 4; direction++) {
        if (!isStep(i, j, direction) || seen.has(key(i, j, direction))) continue;
        const ring: Point[] = [];
        let [x, y, d] = [i, j, direction];
        while (!seen.has(key(x, y, d))) {
          seen.add(key(x, y, d));
          x += dx[d]!;
          y += dy[d]!;
          // Turning right first passes on to the other block of a shared corner, which keeps rings simple.
          const next = [(d + 3) % 4, d, (d + 1) % 4].find((turn) => isStep(x, y, turn))!;
          if (next !== d) ring.push({ x: xs[x]!, y: ys[y]! });
          d = next;
        }
        rings.push(ring);
      }
    }
  }
  const outer = rings.find((ring) => doubleSignedArea(ring) > 0);
  if (!outer) throw new Error('A part without blocks has no outline.');
  return { outer: fromLowestLeft(outer), holes: rings.filter((ring) => ring !== outer).map(fromLowestLeft) };
}

/** The ring turned to begin at its lowest point, the leftmost of them: equal shapes get equal outlines. */
export function fromLowestLeft(ring: Ring): Ring {
  let first = 0;
  let best = ring[0];
  for (let i = 1; best && i < ring.length; i++) {
    const point = ring[i]!;
    if (point.y > best.y || (point.y === best.y && point.x >= best.x)) continue;
    best = point;
    first = i;
  }
  return first === 0 ? ring : [...ring.slice(first), ...ring.slice(0, first)];
}

function ascending(values: number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
