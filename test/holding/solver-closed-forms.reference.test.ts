import { describe, expect, it } from 'vitest';
import { ellipticIntegrals } from '../../core/holding/elliptic';
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
  const places = [-0.02, -0.01, -0.003, -0.001, 0.0005, 0.0025, 0.006, 0.015];

  /** Furthest off over those places, as a share of the disc's field in its middle. */
  function furthestOff(bore: number, fineness: number): number {
    const { field, A } = solveField({ ...shape, bore }, fineness, air);
    const exact = (z: number) =>
      axisOfCylinder(1.3, 0.01, 0.005, z) - (bore > 0 ? axisOfCylinder(1.3, bore, 0.005, z) : 0);
    const off = places.map((z) => Math.abs(axisFlux(field, A, z) - exact(z)));
    return Math.max(...off) / axisOfCylinder(1.3, 0.01, 0.005, 0.0025);
  }

  it.each([
    ['disc', 0],
    ['ring, whose hole has a field the other way', 0.004],
  ])('%s: within 2 % of its strength, a mesh twice as fine within 0.52 %', (_, bore) => {
    expect(furthestOff(bore, 1)).toBeLessThan(0.02);
    expect(furthestOff(bore, 2)).toBeLessThan(0.0052);
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
    expect(solvePull({ ...disc, bore: 0.0002 }).F / solvePull(disc).F).toBeCloseTo(1, 2.7);
  });
});

/*
 * A sheet polarised along itself by Js everywhere: F = (2π t Js / μ₀) ∫ r ∂Br/∂z dr, where ∂Br/∂z = ∂Bz/∂r of the free magnet. By
 * parts, out to the rim P of the sheet, that is the note's ∫ Bz dr less P Bz(P). The magnet is weak, so that the flux across the
 * sheet turns its polarisation hardly at all, the sheet thin and small, so that it saturates everywhere.
 */
describe('a thin sheet that saturates everywhere (note on holding force, section 2; field of a current loop, from memory)', () => {
  const [R, H, g, Br, Js, plate] = [0.01, 0.005, 0.001, 0.05, 2, 0.012];
  const Bz = (r: number) => Br * simpson((z) => loopBz(R, r, z), g, g + H, 40);
  const integral = simpson(Bz, 0, plate, 80) - plate * Bz(plate);

  it.each([
    [5e-6, 1],
    [2.5e-6, 1],
    [2.5e-6, 2],
  ])('of %d m at fineness %d, within 1.2 %', (t, fineness) => {
    const F = ((2 * Math.PI * t * Js) / mu0) * integral;
    const found = solvePull({ R, H, g, t, Br, mur: 1, plate }, fineness, saturationCurve({ Js, mui: 1e6 }));
    expect(Math.abs(found.F / F - 1)).toBeLessThan(0.012);
  });

  it('of a loop, against its field in the middle of the plane, μ₀ I / 2a', () => {
    expect(loopBz(R, 0, 0)).toBeCloseTo(1 / (2 * R), 9);
  });
});

describe('a cup', () => {
  const air1 = { magnetR: 0.0075, wall: 0.001, floor: 0.0015, recess: 0.0002, curve: air };

  it('of permeability 1 is the bare disc in it, further from the sheet by the recess', () => {
    const inCup = solvePull({ R: 0.01, H: 0.006, cup: air1, t: 0.0005, g: 0.0003, Br: 1.3, mur: 1.05 });
    const bare = solvePull({ R: 0.0075, H: 0.0043, t: 0.0005, g: 0.0005, Br: 1.3, mur: 1.05 });
    expect(inCup.F / bare.F).toBeCloseTo(1, 2.3);
  });
});

/** B_z / μ₀ of a loop of radius a with 1 A, at r and z from its middle. */
function loopBz(a: number, r: number, z: number): number {
  const square = (a + r) ** 2 + z * z;
  const { K, E } = ellipticIntegrals((4 * a * r) / square);
  return (K + ((a * a - r * r - z * z) / ((a - r) ** 2 + z * z)) * E) / (2 * Math.PI * Math.sqrt(square));
}

function simpson(f: (x: number) => number, a: number, b: number, steps: number): number {
  const h = (b - a) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(a + i * h) + 4 * f(a + (i + 0.5) * h) + f(a + (i + 1) * h);
  return (sum * h) / 6;
}

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
