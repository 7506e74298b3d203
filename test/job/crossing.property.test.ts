import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../core/geometry/polygon';
import { firstMeeting } from '../../core/job/crossing';

const ring = (points: [number, number][]): Ring => points.map(([x, y]) => ({ x, y }));

describe('where a ring meets itself', () => {
  it.each<[string, [number, number][], ReturnType<typeof firstMeeting>]>([
    [
      'a square does not',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      null,
    ],
    [
      'nor with a point along an edge',
      [
        [0, 0],
        [5, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      null,
    ],
    [
      'a bow crosses',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      { how: 'crosses', at: { x: 5, y: 5 } },
    ],
    [
      'a corner on an edge touches',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
      { how: 'touches', at: { x: 5, y: 0 } },
    ],
    [
      'two corners in one point touch',
      [
        [0, 0],
        [5, 5],
        [10, 0],
        [10, 10],
        [5, 5],
        [0, 10],
      ],
      { how: 'touches', at: { x: 5, y: 5 } },
    ],
    [
      'a spike doubles back',
      [
        [0, 0],
        [20, 0],
        [10, 0],
        [10, 10],
      ],
      { how: 'doubles-back', at: { x: 20, y: 0 } },
    ],
    [
      'edges that lie on one another touch',
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [8, 0],
        [2, 0],
        [0, 5],
      ],
      { how: 'touches', at: { x: 2, y: 0 } },
    ],
  ])('%s', (_, points, meeting) => {
    expect(firstMeeting(ring(points))).toEqual(meeting);
  });
});

describe('judged by all pairs of edges in integers without bound', () => {
  const check = (points: [number, number][]) => {
    const closed = points.filter(([x, y], i) => {
      const [px, py] = points[(i + points.length - 1) % points.length]!;
      return x !== px || y !== py;
    });
    if (closed.length < 3 || hasRepeat(closed)) return undefined;
    const meets = meetsItself(closed);
    expect(firstMeeting(ring(closed)) !== null, JSON.stringify(closed)).toBe(meets);
    return meets;
  };

  it('on a small grid, where much touches', () => {
    const seen = { true: 0, false: 0, undefined: 0 };
    const small = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(fc.array(small, { minLength: 3, maxLength: 7 }), (points) => {
        seen[`${check(points)}`]++;
      }),
      { numRuns: 3000, seed: 5 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(300);
  });

  it('at 400 m, where a corner lies a hundredth beside an edge', () => {
    const seen = { true: 0, false: 0, undefined: 0 };
    const far = fc.integer({ min: -4e7, max: 4e7 });
    const beside = fc.constantFrom(-1, 0, 0, 1);
    fc.assert(
      fc.property(
        far,
        far,
        far,
        far,
        fc.integer({ min: 1, max: 99 }),
        beside,
        beside,
        (ax, ay, bx, by, part, dx, dy) => {
          // A multiple of 100 in between lies exactly on the line.
          const [ux, uy] = [Math.trunc((bx - ax) / 100), Math.trunc((by - ay) / 100)];
          const end: [number, number] = [ax + ux * 100, ay + uy * 100];
          const near: [number, number] = [ax + ux * part + dx, ay + uy * part + dy];
          const third: [number, number] = [
            Math.max(-4e7, Math.min(4e7, ax - uy * 50)),
            Math.max(-4e7, Math.min(4e7, ay + ux * 50)),
          ];
          const fourth: [number, number] = [
            Math.round((third[0] + ax) / 2) + 7,
            Math.round((third[1] + ay) / 2),
          ];
          seen[`${check([[ax, ay], end, third, near, fourth])}`]++;
        },
      ),
      { numRuns: 3000, seed: 6 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(300);
  });
});

function hasRepeat(points: [number, number][]): boolean {
  return points.some(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return x === nx && y === ny;
  });
}

type Point = readonly [bigint, bigint];

function meetsItself(points: [number, number][]): boolean {
  const corners = points.map(([x, y]): Point => [BigInt(x), BigInt(y)]);
  const n = corners.length;
  const at = (i: number) => corners[i % n]!;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (j === i + 1 || (i === 0 && j === n - 1)) {
        const [from, corner, to] = j === i + 1 ? [at(i), at(j), at(j + 1)] : [at(j), at(i), at(i + 1)];
        const back =
          (from[0] - corner[0]) * (to[0] - corner[0]) + (from[1] - corner[1]) * (to[1] - corner[1]);
        if (turn(from, corner, to) === 0n && back > 0n) return true;
      } else if (segmentsMeet(at(i), at(i + 1), at(j), at(j + 1))) return true;
    }
  }
  return false;
}

/** de Berg et al., Computational Geometry: orientation tests, with the collinear cases by their boxes. */
function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const sign = (n: bigint) => (n > 0n ? 1 : n < 0n ? -1 : 0);
  const [abc, abd] = [sign(turn(a, b, c)), sign(turn(a, b, d))];
  const [cda, cdb] = [sign(turn(c, d, a)), sign(turn(c, d, b))];
  if (abc !== abd && cda !== cdb) return true;
  return (
    (abc === 0 && between(a, b, c)) ||
    (abd === 0 && between(a, b, d)) ||
    (cda === 0 && between(c, d, a)) ||
    (cdb === 0 && between(c, d, b))
  );
}

function turn(a: Point, b: Point, c: Point): bigint {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function between(a: Point, b: Point, p: Point): boolean {
  const inside = (low: bigint, high: bigint, value: bigint) =>
    low < high ? low <= value && value <= high : high <= value && value <= low;
  return inside(a[0], b[0], p[0]) && inside(a[1], b[1], p[1]);
}
