import { boxOf, type Box, type Point, type Region, type Ring } from '../geometry/polygon';
import type { CrossEdge } from './axis-starts';
import { modulo, shiftOf, type Pattern } from './grid';
import { coursesOver } from './start-meter';

/** The edges of an area whose meeting with the grid makes events, across x and across y. */
export interface CrossEdges {
  readonly x: readonly CrossEdge[];
  readonly y: readonly CrossEdge[];
}

/**
 * Axis-parallel edges as they are; of every run of sloping edges (a sloping ceiling, an arch, a round hole) the
 * outermost coordinates, where panels appear and vanish. With a stagger an edge across x counts once for every
 * course that can reach it.
 *
 * @param box the zone's, from which courses are counted
 */
export function crossEdges(area: Region, box: Box, pattern: Pattern): CrossEdges {
  const x: CrossEdge[] = [];
  const y: CrossEdge[] = [];
  const courses = coursesOver(box, pattern);
  const addX = (at: number, begins: boolean, from: number, to: number) => {
    const shifts = new Set<number>();
    for (let course = 0; course < courses; course++) {
      // Course 0 begins at most a pitch below the box.
      const lowest = box.bottom + (course - 1) * pattern.pitchY;
      const reachesEdge = lowest < to && lowest + pattern.pitchY + pattern.height > from;
      if (pattern.stagger === 0 || reachesEdge) shifts.add(shiftOf(pattern, course));
    }
    for (const shift of shifts) x.push({ at, begins, length: to - from, shift });
  };
  const addY = (at: number, begins: boolean, length: number) => y.push({ at, begins, length, shift: 0 });

  // Where the foot of the zone passes from one course to the next, all courses are shifted anew.
  if (pattern.stagger !== 0) addY(box.bottom, true, 0);
  for (const { outer, holes } of area) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        // The area lies left of every edge.
        if (a.x === b.x) addX(a.x, b.y < a.y, Math.min(a.y, b.y), Math.max(a.y, b.y));
        else if (a.y === b.y) addY(a.y, b.x > a.x, Math.abs(b.x - a.x));
      });
      for (const run of slopingRuns(ring)) {
        const { left, right, bottom, top } = boxOf(run.points);
        for (const at of [left, right])
          for (const begins of beginsAtX(run, at)) addX(at, begins, bottom, top);
        for (const at of [bottom, top])
          for (const begins of beginsAtY(run, at)) addY(at, begins, right - left);
      }
    }
  }
  return { x: merged(x, pattern.pitchX), y: merged(y, pattern.pitchY) };
}

/** Edges that the grid meets at the same time count as one. */
function merged(edges: readonly CrossEdge[], pitch: number): CrossEdge[] {
  const found = new Map<string, CrossEdge>();
  for (const edge of edges) {
    const key = `${modulo(edge.at - edge.shift, pitch)} ${edge.begins}`;
    const same = found.get(key);
    found.set(key, same ? { ...same, length: same.length + edge.length } : edge);
  }
  return [...found.values()];
}

/** An unbroken run of sloping edges, with the points before and after it. */
interface SlopingRun {
  readonly points: readonly Point[];
  readonly before?: Point;
  readonly after?: Point;
}

/**
 * Whether the area begins or ends at an outermost coordinate of a run: as it does at the upright edge that goes on
 * from there, as at the sides of a round hole; else either may be.
 */
function beginsAtX({ points, before, after }: SlopingRun, at: number): boolean[] {
  const first = points[0]!;
  const last = points.at(-1)!;
  if (before && first.x === at && before.x === at) return [first.y < before.y];
  if (after && last.x === at && after.x === at) return [after.y < last.y];
  return [true, false];
}

/** The same at a level edge. */
function beginsAtY({ points, before, after }: SlopingRun, at: number): boolean[] {
  const first = points[0]!;
  const last = points.at(-1)!;
  if (before && first.y === at && before.y === at) return [first.x > before.x];
  if (after && last.y === at && after.y === at) return [after.x > last.x];
  return [true, false];
}

function slopingRuns(ring: Ring): SlopingRun[] {
  const slopes = ring.map(({ x, y }, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return x !== next.x && y !== next.y;
  });
  if (!slopes.includes(false)) return [{ points: ring }];
  const runs: SlopingRun[] = [];
  const first = slopes.indexOf(false);
  let run: Point[] = [];
  for (let n = 1; n <= ring.length; n++) {
    const i = (first + n) % ring.length;
    if (slopes[i]) {
      run.push(ring[i]!);
    } else if (run.length > 0) {
      const start = ring.indexOf(run[0]!);
      runs.push({
        points: [...run, ring[i]!],
        before: ring[(start + ring.length - 1) % ring.length]!,
        after: ring[(i + 1) % ring.length]!,
      });
      run = [];
    }
  }
  return runs;
}
