import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdRigid, type RigidLoad, type RigidMagnet } from '../../core/holding/rigid-item';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const magnet: fc.Arbitrary<RigidMagnet> = fc.record({
  x: between(-300, 300),
  y: between(5, 600),
  R: between(5, 15),
  F: between(1, 40),
  mu: fc.constantFrom(0.1, 0.2, 0.4),
});
const hanging: fc.Arbitrary<RigidLoad> = fc.record({
  down: between(0.1, 20),
  side: fc.constant(0),
  out: fc.constant(0),
  x: between(-50, 50),
  y: between(0, 300),
  reach: between(0, 150),
});
const pulled: fc.Arbitrary<RigidLoad> = fc.record({
  down: between(0, 20),
  side: between(-5, 5),
  out: between(0, 20),
  x: between(-50, 50),
  y: between(0, 300),
  reach: between(0, 150),
});
const magnets = (most = 8) => fc.array(magnet, { minLength: 1, maxLength: most });

describe('a rigid item on its magnets', () => {
  it('is never pried off sooner with one more magnet, wherever it sits (hanging loads)', () => {
    fc.assert(
      fc.property(magnets(), magnet, hanging, (group, more, load) => {
        const upright = { ...load, down: 0, out: 0 };
        const tip = { ...upright, down: load.down };
        // Friction so high that only prying and tipping count.
        const grip = (all: readonly RigidMagnet[]) => all.map((one) => ({ ...one, x: 0, mu: 1e6 }));
        const before = holdRigid([{ ...tip, x: 0 }], grip(group)).factor;
        const after = holdRigid([{ ...tip, x: 0 }], grip([...group, more])).factor;
        expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
      { numRuns: 500, seed: 21 },
    );
  });

  it('holds no more in any mode with a heavier load', () => {
    fc.assert(
      fc.property(magnets(), pulled, between(1, 5), (group, load, times) => {
        fc.pre(load.down + load.out > 0.1);
        const heavier = { ...load, down: load.down * times, out: load.out * times, side: load.side * times };
        const before = holdRigid([load], group).factor;
        expect(holdRigid([heavier], group).factor).toBeLessThanOrEqual(before * (1 + 1e-9));
      }),
      { numRuns: 500, seed: 22 },
    );
  });

  it('holds no more with a little more load, where it holds itself at all', () => {
    const evenly = (min: number, max: number) =>
      fc.integer({ min: 0, max: 1e6 }).map((n) => min + (n / 1e6) * (max - min));
    const row = fc.array(
      fc.record({
        x: evenly(-200, 200),
        y: fc.constant(10),
        R: fc.constant(10),
        F: evenly(1, 30),
        mu: fc.constantFrom(0.2, 0.4),
      }),
      { minLength: 1, maxLength: 4 },
    );
    const small = fc.record({
      ...{ down: evenly(0.05, 2), side: evenly(-0.5, 0.5), out: evenly(0, 1) },
      ...{ x: evenly(-100, 100), y: evenly(0, 50), reach: evenly(0, 60) },
    });
    fc.assert(
      fc.property(row, small, evenly(1, 1.2), (group, load, times) => {
        const before = holdRigid([load], group).factor;
        fc.pre(before >= 1);
        const heavier = { ...load, down: load.down * times, out: load.out * times, side: load.side * times };
        expect(holdRigid([heavier], group).factor).toBeLessThanOrEqual(before * (1 + 1e-12));
      }),
      { numRuns: 2000, seed: 27 },
    );
  });

  it('holds no less with stronger magnets', () => {
    fc.assert(
      fc.property(magnets(), hanging, between(1, 3), (group, load, times) => {
        const before = holdRigid([load], group).factor;
        const stronger = group.map((one) => ({ ...one, F: one.F * times }));
        expect(holdRigid([load], stronger).factor).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
      { numRuns: 500, seed: 23 },
    );
  });

  it('holds no less with its load closer to the wall', () => {
    fc.assert(
      fc.property(magnets(), hanging, between(0, 1), (group, load, share) => {
        const centred = group.map((one) => ({ ...one, x: 0 }));
        const before = holdRigid([{ ...load, x: 0 }], centred).factor;
        const closer = { ...load, x: 0, reach: load.reach * share };
        expect(holdRigid([closer], centred).factor).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
      { numRuns: 500, seed: 24 },
    );
  });

  it('balances: tensions turn as much as the load, the lower edge presses with the rest', () => {
    fc.assert(
      fc.property(magnets(), hanging, (group, load) => {
        const strong = group.map((one) => ({ ...one, F: 1e4 }));
        const { T, C, tip, counted } = holdRigid([load], strong);
        fc.pre(counted.every((isCounted) => isCounted));
        const turned = T.reduce((sum, t, i) => sum + t * strong[i]!.y, 0);
        expect(turned).toBeCloseTo(tip, 6);
        expect(C).toBeCloseTo(
          T.reduce((sum, t) => sum + t, 0),
          9,
        );
      }),
      { numRuns: 300, seed: 25 },
    );
  });

  it('moved and mirrored sideways, with its load, holds the same', () => {
    fc.assert(
      fc.property(magnets(), pulled, between(-500, 500), (group, load, by) => {
        fc.pre(load.down + load.out > 0.1);
        const before = holdRigid([load], group).factor;
        const moved = holdRigid(
          [{ ...load, x: load.x + by }],
          group.map((one) => ({ ...one, x: one.x + by })),
        ).factor;
        const mirrored = holdRigid(
          [{ ...load, x: -load.x, side: -load.side }],
          group.map((one) => ({ ...one, x: -one.x })),
        ).factor;
        expect(Math.abs(mirrored - before)).toBeLessThanOrEqual(1e-6 * before);
        expect(Math.abs(moved - before)).toBeLessThanOrEqual(1e-6 * before);
      }),
      { numRuns: 300, seed: 26 },
    );
  });
});

describe('a rigid item, case by case', () => {
  const one = (x: number, y: number, F = 20): RigidMagnet => ({ x, y, R: 10, F, mu: 0.2 });
  const weight = (down: number, x = 0, reach = 0): RigidLoad => ({ down, side: 0, out: 0, x, y: 0, reach });

  it('without magnets, or with none that pull, does not hold', () => {
    expect(holdRigid([weight(1)], []).factor).toBe(0);
    expect(holdRigid([weight(1, 0, 10)], [one(0, 10, 0)]).factor).toBe(0);
  });

  it('an eccentric load on two magnets side by side: the nearer one bears W (1/2 + a/b)', () => {
    const { factors } = holdRigid([weight(4, 30)], [one(-50, 50), one(50, 50)]);
    // 4 N · (1/2 + 30/100) = 3.2 N on the right one, which slips at 0.2 · 20 = 4 N.
    expect(factors.turning).toBeCloseTo(4 / 3.2, 9);
    expect(factors.slip).toBeCloseTo(8 / 4, 9);
  });

  it('a weaker magnet draws less and moves the middle: slip is the note’s where the load hangs there', () => {
    const { factors } = holdRigid([weight(3, -50 / 3)], [one(-50, 50, 20), one(50, 50, 10)]);
    expect(factors.slip).toBeCloseTo(6 / 3, 9);
    expect(factors.turning).toBe(Infinity);
  });

  it('one disc against turning on its spot: direct part and M / (⅔ μ F R) added', () => {
    const { factors } = holdRigid([weight(1, 8)], [one(0, 10)]);
    expect(1 / factors.turning).toBeCloseTo(1 / 4 + 8 / ((2 / 3) * 4 * 10), 9);
  });

  it('a magnet that lets go first counts as absent where the rest hold better', () => {
    const strong = [one(-50, 100, 20), one(50, 100, 20)];
    const weak = one(0, 105, 0.2);
    const { counted, factors } = holdRigid([weight(1, 0, 50)], [...strong, weak]);
    expect(counted).toEqual([true, true, false]);
    expect(factors['pull-off']).toBeCloseTo(20 / (50 / 200), 9);
  });

  it('more weight is never better at 1 and above; below, a magnet that is pried off leaves the turning to the others', () => {
    const group = [0, 1, 2].map((i) => ({
      x: 20 + 130 * i,
      y: 10,
      R: 10,
      F: i === 0 ? 4.3638 : 8.7277,
      mu: 0.4,
    }));
    const at = (down: number) => holdRigid([{ down, side: 0, out: 0, x: 195, y: 10, reach: 32.55 }], group);
    // T = W e / (n R) is 4.168 N, then 4.376 N: more than the first of them pulls.
    const [before, after] = [at(3.8413), at(4.0334)];
    expect(before.factors['pull-off']).toBeGreaterThan(1);
    expect(after.factors['pull-off']).toBeLessThan(1);
    expect(before.factors.turning).toBeCloseTo(0.6, 2);
    expect(after.factors.turning).toBeCloseTo(0.66, 2);
  });

  it('a straight pull in the middle of four magnets is shared by four', () => {
    const group = [one(-50, 20), one(50, 20), one(-50, 120), one(50, 120)];
    const { T, C } = holdRigid([{ down: 0, side: 0, out: 8, x: 0, y: 70, reach: 0 }], group);
    expect(T.map((t) => Number(t.toFixed(9)))).toEqual([2, 2, 2, 2]);
    expect(C).toBe(0);
  });

  it('a straight pull off the middle of one disc levers about its rim: P (1 + a/R)', () => {
    const { T } = holdRigid([{ down: 0, side: 0, out: 2, x: 5, y: 10, reach: 0 }], [one(0, 10)]);
    expect(T[0]).toBeCloseTo(2 * (1 + 5 / 10), 9);
  });
});
