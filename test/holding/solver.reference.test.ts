import { existsSync, readFileSync } from 'node:fs';
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pullOnSheet } from '../../core/holding/pull';
import { pullRange } from '../../core/holding/pull-range';
import { banded, solveBanded } from '../../core/holding/solver/banded-cholesky';
import { bhCurve, mu0, type BhCurve } from '../../core/holding/solver/bh-curve';
import { mildSteel, saturationCurve } from '../../core/holding/solver/mild-steel';
import { solvePull, solvePullOf } from '../../core/holding/solver/solve-pull';
import { readPullCases, type PullCase } from '../../core/run/holding-cases';
import { steelGround } from './grounds';

const file = new URL('../../../shared/reference/magnet-pull-development.json', import.meta.url);
const isHere = existsSync(file);
if (!isHere) console.log('Skipped: ../shared/reference/magnet-pull-development.json is not here.');

function readFile() {
  const read = readPullCases(readFileSync(file, 'utf8'));
  if ('fault' in read) throw new Error(read.fault);
  return read;
}

describe.skipIf(!isHere)('588 cases of a nonlinear finite element model (skipped without ../shared)', () => {
  const deviations = (curve: BhCurve | undefined) =>
    readFile()
      .cases.filter((_, i) => i % 48 === 0)
      .map(({ situation, force }) => solvePullOf(situation, undefined, curve).F / force - 1);

  it('every 48th within 0.6 %, 0.2 % RMS, with the steel of the file', () => {
    const off = deviations(bhCurve(readFile().steel!));
    expect(off.length).toBeGreaterThan(10);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.006);
    expect(Math.sqrt(off.reduce((sum, e) => sum + e * e, 0) / off.length)).toBeLessThan(0.002);
  });

  it('every 48th within 3.2 % with our own steel, as is said of it; which was chosen by them, so that this checks no steel', () => {
    const off = deviations(undefined);
    expect(Math.min(...off)).toBeGreaterThan(-0.032);
    expect(Math.max(...off)).toBeLessThan(0.032);
  });

  it('are met closer on a finer mesh', () => {
    const { cases, steel } = readFile();
    const { situation, force } = cases.find(
      ({ words }) => words === 'N42 30×10 mm, steel 0.3 mm, gap 1 mm',
    ) as PullCase;
    const off = [0.75, 2].map((fineness) =>
      Math.abs(solvePullOf(situation, fineness, bhCurve(steel!)).F / force - 1),
    );
    expect(off[1]).toBeLessThan(off[0]!);
    expect(off[1]).toBeLessThan(0.004);
  });
});

describe('Furlani 2001, Vokoun et al. 2009: force on ideal iron by the method of images', () => {
  const ideal: BhCurve = (B) => {
    const nu = 1 / (1e5 * mu0);
    return { H: nu * B, slope: nu, energy: (nu * B * B) / 2 };
  };

  it.each([
    [20, 5, 0.5],
    [20, 5, 2],
    [10, 3, 1],
    [30, 10, 1],
  ])('%d × %d mm at %d mm, within 1 %', (D, H, g) => {
    const magnet = { R: D / 2000, H: H / 1000, g: g / 1000, Br: 1.3, mur: 1 };
    const { F } = solvePull({ ...magnet, t: 0.02 }, 1, ideal);
    expect(Math.abs(F / pullOnSheet({ ...magnet, t: 0.02 }).F0 - 1)).toBeLessThan(0.01);
  });

  it('is nothing without iron', () => {
    const air: BhCurve = (B) => ({ H: B / mu0, slope: 1 / mu0, energy: (B * B) / (2 * mu0) });
    const magnet = { R: 0.01, H: 0.005, g: 0.001, t: 0.0005, Br: 1.3, mur: 1.05 };
    expect(Math.abs(solvePull(magnet, 1, air).F)).toBeLessThan(0.005 * solvePull(magnet).F);
  });
});

describe('the solver and the closed form', () => {
  it('agree within 8 % where the note allows that, off the cases it was fitted to', () => {
    for (const [D, H, t, g] of [
      [8, 2.5, 0.6, 0.4],
      [35, 7, 0.4, 1.3],
      [17, 9, 0.9, 0.7],
    ] as const) {
      const input = { R: D / 2000, H: H / 1000, t: t / 1000, g: g / 1000, Br: 1.25, mur: 1.05 };
      expect(Math.abs(pullOnSheet(input).F / solvePull(input).F - 1)).toBeLessThan(0.08);
    }
  });
});

describe('what is counted of a pull', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const within = (at: number, low: number, high: number) => low + at * (high - low);
  /** By the finite elements. */
  function countedOverSolved(
    diameter: number,
    slenderness: number,
    thickness: number,
    gap: number,
    Br: number,
  ) {
    const height = diameter * slenderness;
    const situation = { diameter, height, thickness, gap, Br, mur: 1.05 };
    return pullRange(situation, steelGround({ thickness })).nominal / solvePullOf(situation).F;
  }

  it('is nowhere in the limits more than the 8 % over that the note allows', () => {
    fc.assert(
      fc.property(share, share, share, share, fc.constantFrom(0.39, 1.19, 1.3), (a, b, c, d, Br) => {
        // Squared, for more small gaps and thin sheets, where the form is furthest off.
        const ratio = countedOverSolved(
          within(a, 6, 40),
          within(b, 0.1, 0.6),
          within(c * c, 0.3, 2),
          within(d * d, 0.1, 3),
          Br,
        );
        expect(ratio).toBeLessThan(1.08);
      }),
      { numRuns: 25, seed: 71, endOnFailure: true },
    );
  });

  it.each([
    [40, 0.1, 0.3, 0.1, 1.3],
    [40, 0.3, 0.3, 0.1, 0.39],
    [35, 0.1, 0.3, 0.1, 1.19],
    [30, 0.1, 0.3, 0.1, 1.19],
    [40, 0.1, 0.5, 0.1, 1.19],
  ] as const)(
    'nor for wide magnets on thin sheets: D %d, H/D %d, t %d, g %d, Br %d',
    (D, slenderness, t, g, Br) => {
      expect(countedOverSolved(D, slenderness, t, g, Br)).toBeLessThan(1.08);
    },
  );
});

describe('magnetisation curves', () => {
  const points = [
    [0, 0],
    [300, 0.5],
    [1000, 1.3],
    [5000, 1.6],
    [60_000, 2],
  ] as const;
  const curves = { measured: bhCurve(points), 'mild steel': saturationCurve(mildSteel) };

  it.each(Object.entries(curves))(
    '%s: rises everywhere, with the slope of its H and the energy ∫ H dB by differences',
    (_, curve) => {
      for (let B = 0; B < 3; B += 0.003) expect(curve(B).slope).toBeGreaterThan(0);
      for (let B = 0.05; B < 2.7; B += 0.0517) {
        const d = 1e-5;
        expect((curve(B + d).H - curve(B - d).H) / (2 * d) / curve(B).slope).toBeCloseTo(1, 3);
        expect((curve(B + d).energy - curve(B - d).energy) / (2 * d) / curve(B).H).toBeCloseTo(1, 4);
      }
    },
  );

  it('measured: passes through its points and ends with the slope 1/μ₀', () => {
    for (const [H, B] of points) expect(curves.measured(B).H).toBeCloseTo(H, 6);
    expect(curves.measured(2.9).H - curves.measured(2.8).H).toBeCloseTo(0.1 / mu0, 3);
  });

  it('of Frölich and Kennelly: begins with the initial permeability, J = Js / 2 at H₀, and saturates at Js', () => {
    const { Js, mui } = mildSteel;
    const curve = saturationCurve(mildSteel);
    const H0 = Js / (mu0 * (mui - 1));
    expect(1 / curve(0).slope / mu0).toBeCloseTo(mui, 6);
    expect(curve(Js / 2 + mu0 * H0).H).toBeCloseTo(H0, 6);
    expect(20 - mu0 * curve(20).H).toBeCloseTo(Js, 3);
  });
});

describe('banded Cholesky, against ml-matrix', () => {
  it('solves the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 0, max: 4 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 80, maxLength: 80 }),
        (size, width, values) => {
          const full = Matrix.zeros(size, size);
          const A = banded(size, width);
          for (let i = 0; i < size; i++)
            for (let j = Math.max(0, i - width); j <= i; j++) {
              const value = i === j ? 10 : values[(i * 5 + j) % 60]!;
              full.set(i, j, value);
              full.set(j, i, value);
              A.rows[i * (width + 1) + width - i + j] = value;
            }
          const b = Float64Array.from({ length: size }, (_, i) => values[60 + i]!);
          const expected = new CholeskyDecomposition(full).solve(Matrix.columnVector([...b])).to1DArray();
          expect(solveBanded(A, b)).toBe(true);
          for (const [i, value] of expected.entries()) expect(b[i]).toBeCloseTo(value, 9);
        },
      ),
      { numRuns: 200, seed: 61 },
    );
  });

  it('says where a matrix is not positive definite', () => {
    const A = banded(2, 1);
    A.rows.set([0, 1, 2, 1]);
    expect(solveBanded(A, new Float64Array(2))).toBe(false);
  });
});
