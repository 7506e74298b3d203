import { describe, expect, it } from 'vitest';
import { solveField, solvePull, type SolverInput } from '../../core/holding/solver/solve-pull';

/* Rings and cups, for which there is no closed form: another program, energy, finer meshes. Sizes in mm. */

interface Sizes {
  readonly D: number;
  readonly H: number;
  readonly bore?: number;
  readonly cup?: {
    readonly magnet: number;
    readonly wall: number;
    readonly floor: number;
    readonly recess: number;
  };
  readonly t: number;
  readonly g: number;
  readonly Br: number;
}

function inputOf({ D, H, bore, cup, t, g, Br }: Sizes): SolverInput {
  return {
    ...{ R: D / 2000, H: H / 1000, t: t / 1000, g: g / 1000, Br, mur: 1.05 },
    ...(bore !== undefined && { bore: bore / 2000 }),
    ...(cup && {
      cup: {
        magnetR: cup.magnet / 2000,
        wall: cup.wall / 1000,
        floor: cup.floor / 1000,
        recess: cup.recess / 1000,
      },
    }),
  };
}

const cup20 = { magnet: 15, wall: 1, floor: 1.5, recess: 0.1 };
const cup32 = { magnet: 25, wall: 2, floor: 2, recess: 0 };
const cup16 = { magnet: 13, wall: 1.3, floor: 1, recess: 0.2 };

/** With the force, N, that scikit-fem finds with some 40,000 nodes. */
const cases: Readonly<Record<string, Sizes & { readonly F: number }>> = {
  disc: { D: 20, H: 5, t: 0.5, g: 1, Br: 1.3, F: 15.7207 },
  ring: { D: 20, bore: 6, H: 5, t: 0.5, g: 1, Br: 1.3, F: 17.3631 },
  'narrow ring': { D: 40, bore: 30, H: 4, t: 0.3, g: 0.1, Br: 1.3, F: 56.5063 },
  'small ring': { D: 10, bore: 2, H: 3, t: 0.5, g: 0.1, Br: 1.3, F: 11.9651 },
  'ferrite ring': { D: 30, bore: 16, H: 10, t: 1, g: 2, Br: 0.39, F: 5.5536 },
  cup: { D: 20, H: 6, cup: cup20, t: 0.5, g: 0.3, Br: 1.3, F: 31.8235 },
  'large cup': { D: 32, H: 7, cup: cup32, t: 0.5, g: 0.1, Br: 1.3, F: 105.5467 },
  'large cup on thick steel': {
    ...{ D: 32, H: 7, cup: { ...cup32, recess: 0.1 }, t: 10, g: 0.1, Br: 1.3 },
    F: 402.2473,
  },
  'small cup on 1 mm': { D: 16, H: 4.5, cup: cup16, t: 1, g: 1, Br: 1.19, F: 15.871 },
};

describe('scikit-fem 12.0.2, an independent program: quadratic triangles, scipy’s sparse solver, the same saturation curve', () => {
  it.each(Object.entries(cases))('%s, within 0.5 %', (_, { F, ...sizes }) => {
    const solved = solvePull(inputOf(sizes));
    expect(solved.hasConverged).toBe(true);
    expect(Math.abs(solved.F / F - 1)).toBeLessThan(0.005);
  });
});

describe('virtual work: the force is the difference of the field’s energy over a small change of the gap', () => {
  it.each(['disc', 'ring', 'cup', 'large cup on thick steel'])('%s, within 0.5 %', (name) => {
    const input = inputOf(cases[name]!);
    const d = 0.02 * input.g;
    const energyAt = (g: number) => solveField({ ...input, g }).energy;
    const work = (energyAt(input.g + d) - energyAt(input.g - d)) / (2 * d);
    expect(Math.abs(solvePull(input).F / work - 1)).toBeLessThan(0.005);
  });
});

describe('a finer mesh', () => {
  it.each(['ring', 'cup', 'large cup'])('%s: changes the force by less than 0.3 %', (name) => {
    const input = inputOf(cases[name]!);
    expect(Math.abs(solvePull(input, 1).F / solvePull(input, 2).F - 1)).toBeLessThan(0.003);
  });

  it.each([
    ['wide disc, 0.1 mm away', { D: 40, H: 4, g: 0.1, Br: 1.3 }],
    ['wide disc, 1 mm away', { D: 40, H: 4, g: 1, Br: 1.3 }],
    ['small disc', { D: 10, H: 3, g: 0.1, Br: 1.3 }],
    ['ferrite', { D: 20, H: 5, g: 0.3, Br: 0.39 }],
  ])('on steel of 0.05 mm, %s: changes it by less than 1.5 %', (_, sizes) => {
    const input = inputOf({ ...sizes, t: 0.05 });
    expect(Math.abs(solvePull(input, 1).F / solvePull(input, 2).F - 1)).toBeLessThan(0.015);
  });

  it('brings the force of the large cup nearer to that of scikit-fem', () => {
    const { F, ...sizes } = cases['large cup']!;
    const off = [0.5, 2].map((fineness) => Math.abs(solvePull(inputOf(sizes), fineness).F / F - 1));
    expect(off[1]).toBeLessThan(off[0]! / 2);
  });
});

describe('what cannot be solved', () => {
  it('is a fault of whoever asks: a bore as wide as the ring, a magnet wider than its cup', () => {
    const ring = inputOf({ ...cases['ring']!, bore: 20 });
    expect(() => solvePull(ring)).toThrow('bore');
    const wide = inputOf({ ...cases['cup']!, cup: { ...cup20, magnet: 19 } });
    expect(() => solvePull(wide)).toThrow('cup');
  });
});
