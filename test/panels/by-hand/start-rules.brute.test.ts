import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Point, Polygon } from '../../../core/geometry/polygon';
import type { HandWish } from '../../../core/panels/by-hand/hand-wishes';
import { startRules } from '../../../core/panels/by-hand/start-rules';
import { piecesOfGrid } from '../../../core/panels/pieces-of-grid';
import { jointRuns, seamsOf } from '../../../core/panels/seams';
import { findRival } from '../brute-force';
import { rectilinearWall, slopingWall, type RandomWall } from '../random-walls';
import { plainQuestionOf, questionOf, searchWall } from '../search-wall';
import { mmRectangle, zoneArea } from '../zones-by-hand';

/*
 * The best start under choices by hand against every start of a raster that meets as much of them, looked at cell by
 * cell: whether a cell is whole by polyclip-ts, an independent clipping library, and joints as panels leave them.
 */

type Ring = [number, number][];
const rings = ({ outer, holes }: Polygon): Ring[] =>
  [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));

interface Cell {
  readonly left: number;
  readonly bottom: number;
}

/** Cells of all courses over the zone, counted from the lowest, as the job format says. */
function cellsAt(wall: RandomWall, start: Point): Cell[] {
  const { pattern } = questionOf(wall);
  const { box } = wall.area;
  const cells: Cell[] = [];
  for (let course = 0; start.y + course * pattern.pitchY < box.top; course++) {
    const shift = Math.round(course * pattern.stagger * pattern.width) % pattern.pitchX;
    const first = Math.floor((box.left - start.x - shift) / pattern.pitchX) - 1;
    for (let left = start.x + shift + first * pattern.pitchX; left < box.right; left += pattern.pitchX)
      cells.push({ left, bottom: start.y + course * pattern.pitchY });
  }
  return cells;
}

function meets(wall: RandomWall, wish: HandWish, start: Point): number {
  const { width, height, pitchX, pitchY } = questionOf(wall).pattern;
  const [gapX, gapY] = [pitchX - width, pitchY - height];
  if (wish.kind === 'joint-on-line') {
    const { axis, at } = wish;
    return cellsAt(wall, start).some(({ left, bottom }) =>
      axis === 'x'
        ? left - Math.ceil(gapX / 2) === at.x && bottom <= at.y && at.y < bottom + pitchY
        : bottom - Math.ceil(gapY / 2) === at.y,
    )
      ? 0
      : 1;
  }
  if (wish.kind === 'whole-panel') {
    const { x, y } = wish.at;
    const cell = cellsAt(wall, start).find(
      ({ left, bottom }) => left < x && x < left + width && bottom < y && y < bottom + height,
    );
    if (!cell) return 1;
    const { left, bottom } = cell;
    const ring: Ring = [
      [left, bottom],
      [left + width, bottom],
      [left + width, bottom + height],
      [left, bottom + height],
    ];
    return polyclip.difference([ring], wall.area.area.map(rings)).length === 0 ? 0 : 1;
  }
  if (wish.kind !== 'no-joints') return 0;
  const { left, right, bottom, top } = wish.band;
  const pieces = piecesOfGrid(wall.area.area, { ...questionOf(wall).pattern, start });
  const runs = jointRuns(
    seamsOf(
      pieces.map(({ polygon }) => polygon),
      gapX,
    ),
  );
  return runs.filter(({ axis, at, gap, from, to }) =>
    axis === 'x'
      ? left !== null &&
        at < right! &&
        at + gap > left &&
        from < (top ?? Infinity) &&
        to > (bottom ?? -Infinity)
      : bottom !== null &&
        at < top! &&
        at + gap > bottom &&
        from < (right ?? Infinity) &&
        to > (left ?? -Infinity),
  ).length;
}

/** Lines come first, then whole panels, then bands. */
const weights: Readonly<Record<string, number>> = {
  'joint-on-line': 1e6,
  'whole-panel': 1e3,
  'no-joints': 1,
};

/** @param step of the raster, mm */
function check(wall: RandomWall, wishes: readonly HandWish[], step: number) {
  const question = questionOf(wall);
  const { found, figures } = searchWall(wall, startRules(question.pattern, wishes));
  const unmet = (start: Point) =>
    wishes.reduce((sum, wish) => sum + weights[wish.kind]! * meets(wall, wish, start), 0);
  const { best, runnersUp } = found;
  const least = unmet(best.start);
  let seen = 0;
  let fewest = Infinity;
  // What is quickly told goes first; joints in bands are counted only where the rest is met.
  const allows = (start: Point) => {
    const count = unmet(start);
    fewest = Math.min(fewest, count);
    if (count === least) seen++;
    return count <= least;
  };
  const rival = findRival({ ...plainQuestionOf(wall), allows }, figures, step * 100);
  expect(rival).toBeUndefined();
  expect(fewest).toBeGreaterThanOrEqual(least);
  for (const other of runnersUp) expect(unmet(other.start)).toBe(least);
  return { least, seen, figures };
}

const at = (x: number, y: number): Point => ({ x: x * 100, y: y * 100 });
const line = (id: string, axis: 'x' | 'y', x: number, y: number): HandWish => ({
  id,
  kind: 'joint-on-line',
  axis,
  at: at(x, y),
});
const whole = (x: number, y: number): HandWish => ({ id: 'W', kind: 'whole-panel', at: at(x, y) });
const band = (
  left: number | null,
  right: number | null,
  bottom: number | null,
  top: number | null,
): HandWish => {
  const mm = (length: number | null) => (length === null ? null : length * 100);
  return {
    id: 'B',
    kind: 'no-joints',
    band: { left: mm(left), right: mm(right), bottom: mm(bottom), top: mm(top) },
  };
};
const staggered = (stagger: number): RandomWall => ({
  name: `stagger ${stagger}`,
  area: zoneArea(mmRectangle([0, 0, 1730, 1310]), [mmRectangle([420, 0, 380, 760])], { stagger }),
  width: 500,
  height: 400,
  method: 'edge-to-edge',
  kerf: 0,
});
const gaps: RandomWall = {
  name: 'joints of 4 mm',
  area: zoneArea(mmRectangle([0, 0, 1650, 1200]), [mmRectangle([700, 300, 250, 410])], { jointGap: 4 }),
  width: 400,
  height: 300,
  method: 'edge-to-edge',
  kerf: 2,
};
const rectilinear = [2].map(rectilinearWall);
const sloping = [2].map(slopingWall);

describe('the best start with a joint on a line, on a raster that has starts on it', () => {
  // Zones, stock sheets and joint gaps lie on even millimetres here, and so do the lines.
  it.each([...rectilinear, staggered(0.25), gaps])('is beaten by none: $name', (wall) => {
    const { right, top } = wall.area.box;
    const [x, y] = [right * 0.0037, top * 0.0061].map((length) => Math.round(length / 2) * 2) as [
      number,
      number,
    ];
    const upright = check(wall, [line('H1', 'x', x, y)], 2);
    expect(upright.least).toBe(0);
    expect(upright.seen).toBeGreaterThan(10);
    expect(check(wall, [line('H1', 'y', x, y)], 2).least).toBe(0);
    expect(check(wall, [line('H1', 'x', x, y), line('H2', 'y', x, y)], 2).least).toBe(0);
  });

  it('meets one of two that contradict each other', () => {
    const wall = staggered(0);
    expect(check(wall, [line('H1', 'x', 600, 900), line('H2', 'x', 900, 900)], 10).least).toBe(1e6);
    expect(check(wall, [line('H1', 'x', 600, 900), line('H2', 'x', 1100, 900)], 10).least).toBe(0);
  });

  it('meets lines in the courses that the stagger brings there', () => {
    const wall = staggered(0.5);
    // Half a stock sheet apart, an odd number of courses apart.
    expect(check(wall, [line('H1', 'x', 600, 200), line('H2', 'x', 850, 600)], 10).least).toBe(0);
    expect(check(wall, [line('H1', 'x', 600, 200), line('H2', 'x', 850, 200)], 10).least).toBe(1e6);
  });
});

describe('the best start with a panel that is to be whole, on a raster', () => {
  it.each([...rectilinear, ...sloping, staggered(0.5), gaps])('is beaten by none: $name', (wall) => {
    const { right, top } = wall.area.box;
    check(wall, [whole(Math.round(right * 0.0072), Math.round(top * 0.0031))], 20);
  });

  it('finds the only few starts there are', () => {
    const wall: RandomWall = {
      ...staggered(0),
      area: zoneArea(
        mmRectangle([0, 0, 1730, 1310]),
        [mmRectangle([520, 0, 380, 760]), mmRectangle([0, 420, 400, 890])],
        {},
      ),
    };
    const { least, seen } = check(wall, [whole(30, 30)], 10);
    expect(least).toBe(0);
    expect(seen).toBeGreaterThan(0);
    expect(seen).toBeLessThan(500);
  });
});

describe('the best start with a band without joints, on a raster of 20 mm', () => {
  it.each([...rectilinear.slice(0, 1), sloping[0]!, staggered(0.5), gaps])(
    'is beaten by none: $name',
    (wall) => {
      const { right, top } = wall.area.box;
      const [w, h] = [right / 100, top / 100].map(Math.round) as [number, number];
      const third = (length: number) => Math.round(length / 3);
      check(wall, [band(third(w), third(w) + 120, null, null)], 20);
      check(wall, [band(third(w), third(w) + 200, third(h), third(h) + 150)], 20);
      check(wall, [band(100, w - 100, third(h), third(h) + 90), line('H1', 'x', third(w), third(h))], 20);
    },
  );

  it('leaves as few joints as can be in one that is too wide', () => {
    expect(check(staggered(0), [band(200, 1600, null, null)], 20).least).toBe(2);
  });
});
