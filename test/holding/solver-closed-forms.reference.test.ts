import { describe, expect, it } from 'vitest';
import { mu0, type BhCurve } from '../../core/holding/solver/bh-curve';
import { axisFlux } from '../../core/holding/solver/field';
import { saturationCurve } from '../../core/holding/solver/mild-steel';
import { solveField, solvePull } from '../../core/holding/solver/solve-pull';

/* The finite elements where the field or the force is known in closed form. Lengths in m. */

const linear = (mur: number): BhCurve => {
  const nu = 1 / (mur * mu0);
  return (B) => ({ H: nu * B, slope: nu, energy: (nu * B * B) / 2 });
};
const air = linear(1);
const iron = linear(1e5);

/** On the axis at z of a cylinder between 0 and H, magnetised along it: Br/2 [(z+h)/√((z+h)²+R²) − z/√(z²+R²)], from its face. */
function axisOfCylinder(Br: number, R: number, H: number, z: number): number {
  const end = (s: number) => s / Math.hypot(s, R);
  return (Br / 2) * (end(z) - end(z - H));
}

describe('a free magnet, on its axis: Furlani 2001, the closed form of a cylinder (from memory)', () => {
  const shape = { R: 0.01, H: 0.005, g: 0.001, t: 0.0005, Br: 1.3, mur: 1 };
  const places = [-0.06, -0.02, -0.01, -0.003, -0.001, 0.0005, 0.0025, 0.006, 0.015];

  it('disc: within 0.3 % of the largest, outside and inside', () => {
    const { field, A } = solveField(shape, 1, air);
    for (const z of places)
      expect(Math.abs(axisFlux(field, A, z) - axisOfCylinder(1.3, 0.01, 0.005, z))).toBeLessThan(
        0.003 * axisOfCylinder(1.3, 0.01, 0.005, 0.0025),
      );
  });

  it('disc: far away within 2 % of what is left of it there', () => {
    const { field, A } = solveField(shape, 1, air);
    for (const z of [-0.06, -0.03, 0.05])
      expect(axisFlux(field, A, z) / axisOfCylinder(1.3, 0.01, 0.005, z)).toBeCloseTo(1, 1.7);
  });

  it('ring: the cylinder less its bore, which turns the field round in the hole', () => {
    const { field, A } = solveField({ ...shape, bore: 0.004 }, 1, air);
    const ring = (z: number) => axisOfCylinder(1.3, 0.01, 0.005, z) - axisOfCylinder(1.3, 0.004, 0.005, z);
    expect(ring(0.0025)).toBeLessThan(0);
    for (const z of places)
      expect(Math.abs(axisFlux(field, A, z) - ring(z))).toBeLessThan(0.005 * Math.abs(ring(0.0025)));
  });
});

describe('force of a ring on ideal, thick iron: its own image, four pairs of cylinders superposed', () => {
  it.each([
    [20, 6, 5, 1],
    [30, 16, 10, 2],
    [40, 30, 4, 0.5],
    [10, 2, 3, 0.5],
  ])('%d / %d × %d mm at %d mm, within 1 %', (D, bore, H, g) => {
    const ring = { R: D / 2000, bore: bore / 2000, H: H / 1000, g: g / 1000, Br: 1.3, mur: 1 };
    const F = ringOnIron(ring.R, ring.bore, ring.H, ring.g, ring.Br);
    expect(Math.abs(solvePull({ ...ring, t: 0.02 }, 1, iron).F / F - 1)).toBeLessThan(0.01);
  });

  it('of a vanishing bore is that of the disc', () => {
    const disc = { R: 0.01, H: 0.005, t: 0.0005, g: 0.001, Br: 1.3, mur: 1.05 };
    expect(solvePull({ ...disc, bore: 0.0002 }).F / solvePull(disc).F).toBeCloseTo(1, 3);
  });
});

describe('a thin sheet, saturated along itself everywhere: F = (2π t Js / μ₀) ∫ Bz dr, exact as t → 0 (note, section 2)', () => {
  // A weak magnet, so that the flux across the sheet turns its polarisation hardly at all; a steel that saturates early.
  const steel = saturationCurve({ Js: 2, mui: 1e5 });
  const weak = { R: 0.01, H: 0.005, g: 0.001, Br: 0.2, mur: 1 };
  const psi = (s: number) => Math.hypot(1, s) - s;
  const exact = (t: number) =>
    ((2 * Math.PI * t * 2) / mu0) * (0.2 / 2) * 0.01 * (psi(0.1) - psi(0.6));
  const off = (t: number) => solvePull({ ...weak, t }, 1, steel).F / exact(t) - 1;

  it('is met better the thinner the sheet', () => {
    console.log([2e-5, 1e-5, 5e-6, 2e-6, 1e-6].map(off));
  });
});

describe('a cup', () => {
  const air1 = { magnetR: 0.0075, wall: 0.001, floor: 0.0015, recess: 0.0002, curve: air };

  it('of permeability 1 is the bare disc in it, further from the sheet by the recess', () => {
    const inCup = solvePull({ R: 0.01, H: 0.006, cup: air1, t: 0.0005, g: 0.0003, Br: 1.3, mur: 1.05 });
    const bare = solvePull({ R: 0.0075, H: 0.0043, t: 0.0005, g: 0.0005, Br: 1.3, mur: 1.05 });
    expect(inCup.F / bare.F).toBeCloseTo(1, 2.5);
  });
});

/** Two equal coaxial rings 2 g apart, by (π Br² / μ₀) Σ ± R₁R₂ ∫ J₁(kR₁) J₁(kR₂) e^(−2kg) (1 − e^(−kH))² / k dk. */
function ringOnIron(R: number, bore: number, H: number, g: number, Br: number): number {
  const pair = (a: number, b: number) => {
    const end = 25 / (2 * g);
    const steps = Math.ceil((end * R) / 0.05);
    const dk = end / steps;
    const at = (k: number) =>
      (besselJ1(k * a) * besselJ1(k * b) * Math.exp(-2 * k * g) * (1 - Math.exp(-k * H)) ** 2) / k;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += at((i + 0.5) * dk);
    return a * b * sum * dk;
  };
  return ((Math.PI * Br * Br) / mu0) * (pair(R, R) - 2 * pair(R, bore) + pair(bore, bore));
}

/** (1/π) ∫ cos(θ − q sin θ) dθ over 0 … π, by a sum that is exact to the last digit. */
function besselJ1(q: number): number {
  const points = Math.ceil(q) + 40;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const angle = (2 * Math.PI * i) / points;
    sum += Math.cos(angle - q * Math.sin(angle));
  }
  return sum / points;
}
