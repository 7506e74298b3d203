import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ellipticIntegrals } from '../../core/holding/elliptic';
import { imageIntegral, pullOnSheet } from '../../core/holding/pull';
import { comparePulls, readPullCases } from '../../core/run/holding-cases';

/** The force as the note prints it: `15.336` has five digits. */
function toDigits(value: number, printed: string): string {
  return value.toPrecision(printed.replace(/[.]|^0[.]?0*/g, '').length);
}

function pull(Br: number, D: number, H: number, t: number, g: number) {
  return pullOnSheet({ Br, mur: 1.05, R: D / 2000, H: H / 1000, t: t / 1000, g: g / 1000 });
}

describe('Abramowitz & Stegun 1964, table 17.1: complete elliptic integrals (values from memory)', () => {
  it.each([
    [0, Math.PI / 2, Math.PI / 2],
    [0.1, 1.612441348720219, 1.530757636897763],
    [0.5, 1.854074677301372, 1.350643881047675],
    [0.9, 2.578092113348173, 1.104774732704073],
  ])('m = %d', (m, K, E) => {
    const found = ellipticIntegrals(m);
    expect(found.K).toBeCloseTo(K, 12);
    expect(found.E).toBeCloseTo(E, 12);
  });
});

describe('∫ J₁(q)² e^(−qs) / q dq, summed directly', () => {
  it.each([0.05, 0.3, 1, 4, 15, 29.9, 30.1, 60])('s = %d', (s) => {
    expect(imageIntegral(s) / directImageIntegral(s)).toBeCloseTo(1, s > 20 ? 4 : 6);
  });

  it('is 1/2 at s = 0 (tables of Bessel integrals: ∫ J₁²/q = 1/2)', () => {
    expect(imageIntegral(0)).toBe(0.5);
    expect(imageIntegral(1e-6)).toBeCloseTo(0.5, 5);
  });
});

describe('note on pull, section 2: check values to the printed digits', () => {
  it.each([
    [1.3, 20, 5, 0.5, 1.0, '40.265', '38.155', '15.341', '15.336'],
    [1.19, 10, 3, 0.3, 0.5, '10.215', '9.723', '4.674', '4.669'],
    [0.39, 30, 10, 0.5, 0.3, '17.141', '16.459', '9.691', '9.663'],
    [1.3, 30, 10, 0.7, 2.0, '104.61', '99.678', '35.048', '35.042'],
    [1.3, 25, 5, 10, 1.0, '54.510', '51.479', '537.0', '51.479'],
  ] as const)('Br %d, %d × %d, sheet %d, gap %d', (Br, D, H, t, g, F0, Fthick, Fsat, F) => {
    const found = pull(Br, D, H, t, g);
    expect(toDigits(found.F0, F0)).toBe(F0);
    expect(toDigits(found.Fthick, Fthick)).toBe(Fthick);
    expect(toDigits(found.Fsat, Fsat)).toBe(Fsat);
    expect(toDigits(found.F, F)).toBe(F);
  });
});

describe('note on pull, section 1: table of N42 on a sheet of 0.5 mm, with the share of thick steel', () => {
  const gaps = [0.1, 0.3, 0.5, 1.0, 1.5, 2.0, 3.0];
  it.each([
    [10, 3, [11.0, 9.6, 8.6, 6.6, 4.8, 3.5, 1.9], 0.88],
    [12, 5, [15.4, 13.8, 12.7, 10.8, 9.2, 7.7, 5.0], 0.63],
    [15, 3, [14.0, 12.2, 11.1, 9.4, 8.0, 6.7, 4.5], 0.67],
    [20, 3, [16.7, 14.5, 13.2, 11.2, 9.9, 8.8, 6.8], 0.55],
    [20, 5, [21.3, 18.9, 17.6, 15.3, 13.8, 12.6, 10.5], 0.4],
    [20, 10, [28.3, 25.7, 24.2, 21.6, 19.7, 18.1, 15.6], 0.29],
    [25, 5, [24.5, 21.7, 20.1, 17.6, 15.9, 14.7, 12.6], 0.34],
    [30, 10, [37.4, 33.9, 31.9, 28.7, 26.5, 24.8, 22.0], 0.21],
  ] as const)('%d × %d', (D, H, forces, share) => {
    for (const [i, force] of forces.entries())
      expect(Math.abs(pull(1.3, D, H, 0.5, gaps[i]!).F - force)).toBeLessThanOrEqual(0.0501);
    const thick = pull(1.3, D, H, 10, 1).F;
    expect(Math.abs(pull(1.3, D, H, 0.5, 1).F / thick - share)).toBeLessThanOrEqual(0.00501);
  });

  it('N42 over N35, saturated: 1.10, not the 1.19 of Br²', () => {
    expect(pull(1.3, 20, 5, 0.5, 1).F / pull(1.19, 20, 5, 0.5, 1).F).toBeCloseTo(1.1, 2);
  });
});

const file = new URL('../../../shared/reference/magnet-pull-development.json', import.meta.url);

describe('588 cases of a nonlinear axisymmetric finite element model', () => {
  it.skipIf(!existsSync(file))(
    'are met within 4.5 % at most and 1.2 % RMS, as the note states (skipped without ../shared)',
    () => {
      const read = readPullCases(readFileSync(file, 'utf8'));
      if ('fault' in read) throw new Error(read.fault);
      const { cases, max, rms } = comparePulls(read.cases);
      expect(cases).toBe(588);
      expect(max * 100).toBeLessThanOrEqual(4.5);
      // The note prints one decimal; unrounded it is 1.217 %.
      expect(Number((rms * 100).toFixed(1))).toBeLessThanOrEqual(1.2);
    },
  );
  if (!existsSync(file))
    console.log('Skipped: ../shared/reference/magnet-pull-development.json is not here.');
});

/** By Simpson's rule; J₁ by its own integral, (1/π) ∫ cos(θ − q sin θ) dθ over 0 … π. */
function directImageIntegral(s: number): number {
  const end = Math.min(60 / s, 400);
  const steps = Math.max(4000, Math.ceil(end * 40));
  const width = end / steps;
  const at = (q: number) => (q === 0 ? 0 : (besselJ1(q) ** 2 * Math.exp(-q * s)) / q);
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const q = i * width;
    sum += (at(q) + 4 * at(q + width / 2) + at(q + width)) / 6;
  }
  return sum * width;
}

function besselJ1(q: number): number {
  // The trapezoidal rule of a periodic integrand: exact to the last digit once there are more points than q.
  const points = Math.ceil(q) + 40;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const angle = (2 * Math.PI * i) / points;
    sum += Math.cos(angle - q * Math.sin(angle));
  }
  return sum / points;
}
