import { LU, Matrix } from 'ml-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elasticGroup, type Fastener, type PlaneLoad } from '../../core/holding/bolt-group';
import { holdRigid } from '../../core/holding/rigid-item';

describe('Shigley’s Mechanical Engineering Design, 9th ed., example 8-7: four bolts, 16 kN at 425 mm from their middle', () => {
  const bolts = [
    { x: 75, y: 60 },
    { x: 75, y: -60 },
    { x: -75, y: -60 },
    { x: -75, y: 60 },
  ].map((place) => ({ ...place, k: 1 }));
  const { centroid, M, J, forces } = elasticGroup(bolts, { x: 0, y: -16, moment: -16 * 425 });
  const resultants = forces.map(({ x, y }) => Math.hypot(x, y));

  it('M = 6800 N·m about the centroid, r = 96.0 mm (both as printed)', () => {
    expect(centroid).toEqual({ x: 0, y: 0 });
    expect(M).toBeCloseTo(-6800, 9);
    expect(Math.sqrt(J / 4).toFixed(1)).toBe('96.0');
  });

  it('secondary shear 17.7 kN; resultants 21.0 kN on the near bolts, 14.8 kN on the far ones (from memory)', () => {
    expect((Math.abs(M) / (4 * Math.sqrt(J / 4))).toFixed(1)).toBe('17.7');
    expect(resultants.map((force) => force.toFixed(1))).toEqual(['21.0', '21.0', '14.8', '14.8']);
  });
});

describe('the same four bolts as magnets that each bear 21 kN along the wall', () => {
  it('turn at just that load: factor 1 in “turning”, to three figures, on either side of the load', () => {
    const magnets = [75, -75].flatMap((x) => [60, 180].map((y) => ({ x, y, R: 10, F: 21, mu: 1 })));
    for (const x of [425, -425]) {
      const { factors } = holdRigid([{ down: 16, side: 0, out: 0, x, y: 120, reach: 0 }], magnets);
      expect(factors.turning).toBeCloseTo(21 / 20.97, 2);
    }
  });
});

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const stiffness = fc.double({ min: 0.2, max: 5, noNaN: true });
const groups = fc
  .array(fc.record({ x: coordinate, y: coordinate, k: stiffness }), { minLength: 2, maxLength: 8 })
  .filter((group) => spreadOf(group) > 10);
const loads = fc.record({
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
  moment: fc.double({ min: -5000, max: 5000, noNaN: true }),
});

describe('a rigid plate on springs, its three displacements solved directly (LU of ml-matrix)', () => {
  it('gives each spring the load of the elastic method', () => {
    fc.assert(
      fc.property(groups, loads, (group, load) => {
        const { forces } = elasticGroup(group, load);
        const solved = springForces(group, load);
        for (const [i, { x, y }] of forces.entries()) {
          expect(Math.abs(x - solved[i]!.x)).toBeLessThan(1e-6 * (1 + Math.abs(x)));
          expect(Math.abs(y - solved[i]!.y)).toBeLessThan(1e-6 * (1 + Math.abs(y)));
        }
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('and the forces balance the load and its moment', () => {
    fc.assert(
      fc.property(groups, loads, (group, load) => {
        const { forces } = elasticGroup(group, load);
        const total = forces.reduce<PlaneLoad>(
          (sum, { x, y }, i) => ({
            x: sum.x + x,
            y: sum.y + y,
            moment: sum.moment + group[i]!.x * y - group[i]!.y * x,
          }),
          { x: 0, y: 0, moment: 0 },
        );
        expect(total.x).toBeCloseTo(load.x, 6);
        expect(total.y).toBeCloseTo(load.y, 6);
        expect(total.moment).toBeCloseTo(load.moment, 4);
      }),
      { numRuns: 300, seed: 8 },
    );
  });
});

describe('a plate that a load turns off the wall, springs in tension and a stiff stop below, solved directly', () => {
  it('gives each magnet the tension of the note, or of the lifted plate', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5, max: 400, noNaN: true }), { minLength: 2, maxLength: 6 }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 5, max: 400, noNaN: true }),
        (heights, down, reach, out, height) => {
          fc.pre(Math.max(...heights) - Math.min(...heights) > 10 && down + out > 0.1);
          const magnets = heights.map((y) => ({ x: 0, y, R: 10, F: 1e6, mu: 0.2 }));
          const { T, counted } = holdRigid([{ down, side: 0, out, x: 0, y: height, reach }], magnets);
          fc.pre(counted.every((isCounted) => isCounted));
          const solved = leverTensions(heights, out, down * reach + out * height);
          for (const [i, t] of T.entries())
            expect(Math.abs(t - solved[i]!)).toBeLessThan(2e-3 * (1 + down + out));
        },
      ),
      { numRuns: 300, seed: 9 },
    );
  });
});

function spreadOf(group: readonly Fastener[]): number {
  return Math.max(...group.map(({ x, y }) => Math.hypot(x - group[0]!.x, y - group[0]!.y)));
}

/** Displacement u + ω × r of a plate, from the three equations of balance. */
function springForces(group: readonly Fastener[], load: PlaneLoad) {
  const A = Matrix.zeros(3, 3);
  for (const { x, y, k } of group) {
    // d = (u − ω y, v + ω x); rows: forces along x and y, moment.
    const rows = [
      [1, 0, -y],
      [0, 1, x],
      [-y, x, x * x + y * y],
    ];
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) A.set(i, j, A.get(i, j) + k * rows[i]![j]!);
  }
  const d = new LU(A).solve(Matrix.columnVector([load.x, load.y, load.moment])).to1DArray();
  return group.map(({ x, y, k }) => ({ x: k * (d[0]! - d[2]! * y), y: k * (d[1]! + d[2]! * x) }));
}

/** Opening a + b y; the stop at y = 0 takes pressure only, with a stiffness far above the magnets'. */
function leverTensions(heights: readonly number[], out: number, tip: number): number[] {
  const stop = 1e5;
  const solve = (k0: number) => {
    const [n, sum, squares] = heights.reduce(([c, s, q], y) => [c + 1, s + y, q + y * y], [0, 0, 0]);
    const A = new Matrix([
      [n + k0, sum],
      [sum, squares],
    ]);
    return new LU(A).solve(Matrix.columnVector([out, tip])).to1DArray();
  };
  let [a, b] = solve(stop);
  if (a! > 0) [a, b] = solve(0);
  return heights.map((y) => a! + b! * y);
}
