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

  for (const { outer, holes } of area) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        // The area lies left of every edge.
        if (a.x === b.x) addX(a.x, b.y < a.y, Math.min(a.y, b.y), Math.max(a.y, b.y));
        else if (a.y === b.y) addY(a.y, b.x > a.x, Math.abs(b.x - a.x));
      });
      for (const run of slopingRuns(ring)) {
        const { left, right, bottom, top } = boxOf(run);
        for (const begins of [true, false]) {
          addX(left, begins, bottom, top);
          addX(right, begins, bottom, top);
          addY(bottom, begins, right - left);
          addY(top, begins, right - left);
        }
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

/** The points of each unbroken run of sloping edges. */
function slopingRuns(ring: Ring): Point[][] {
  const slopes = ring.map(({ x, y }, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return x !== next.x && y !== next.y;
  });
  if (!slopes.includes(false)) return [[...ring]];
  const runs: Point[][] = [];
  const first = slopes.indexOf(false);
  let run: Point[] = [];
  for (let n = 1; n <= ring.length; n++) {
    const i = (first + n) % ring.length;
    if (slopes[i]) {
      run.push(ring[i]!);
    } else if (run.length > 0) {
      runs.push([...run, ring[i]!]);
      run = [];
    }
  }
  return runs;
}
