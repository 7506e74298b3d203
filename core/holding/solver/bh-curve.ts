/*
 * Magnetisation curves as H(B). Through measured points H(B) is a monotone cubic (F. N. Fritsch, R. E. Carlson, SIAM J. Numer.
 * Anal. 17 (1980) 238, with the harmonic mean of F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300), beyond them
 * a line of slope 1/μ₀. No points are kept here: they come with the cases that were worked out with them.
 */
export const mu0 = 4e-7 * Math.PI;

/** At one flux density: field strength H, its slope dH/dB, and the energy density ∫ H dB. */
export interface BhPoint {
  readonly H: number;
  readonly slope: number;
  readonly energy: number;
}

export type BhCurve = (B: number) => BhPoint;

/** @param points from H = B = 0 up, both rising */
export function bhCurve(points: readonly (readonly [H: number, B: number])[]): BhCurve {
  const H = points.map(([h]) => h);
  const B = points.map(([, b]) => b);
  const d = slopes(B, H);
  const last = points.length - 1;
  const energies = [0];
  for (let i = 0; i < last; i++) energies.push(energies[i]! + within(i, B[i + 1]!).energy);

  /** Of the cubic from point i; its energy from that point on. */
  function within(i: number, b: number): BhPoint {
    const h = B[i + 1]! - B[i]!;
    const s = b - B[i]!;
    const chord = (H[i + 1]! - H[i]!) / h;
    const c2 = (3 * chord - 2 * d[i]! - d[i + 1]!) / h;
    const c3 = (d[i]! + d[i + 1]! - 2 * chord) / (h * h);
    return {
      H: H[i]! + s * (d[i]! + s * (c2 + s * c3)),
      slope: d[i]! + s * (2 * c2 + 3 * s * c3),
      energy: s * (H[i]! + s * (d[i]! / 2 + s * (c2 / 3 + (s * c3) / 4))),
    };
  }

  return (b) => {
    if (b >= B[last]!) {
      const s = b - B[last]!;
      return {
        H: H[last]! + s / mu0,
        slope: 1 / mu0,
        energy: energies[last]! + s * (H[last]! + s / (2 * mu0)),
      };
    }
    let i = 0;
    while (B[i + 1]! < b) i++;
    const at = within(i, b);
    return { ...at, energy: energies[i]! + at.energy };
  };
}

function slopes(x: readonly number[], y: readonly number[]): number[] {
  const last = x.length - 1;
  const step = (i: number) => x[i + 1]! - x[i]!;
  const chord = (i: number) => (y[i + 1]! - y[i]!) / step(i);
  return x.map((_, i) => {
    if (i === 0) return atEnd(step(0), step(1), chord(0), chord(1));
    if (i === last) return atEnd(step(last - 1), step(last - 2), chord(last - 1), chord(last - 2));
    const [w1, w2] = [2 * step(i) + step(i - 1), step(i) + 2 * step(i - 1)];
    return (w1 + w2) / (w1 / chord(i - 1) + w2 / chord(i));
  });
}

/** Three-point slope, kept within what stays monotone. */
function atEnd(h0: number, h1: number, c0: number, c1: number): number {
  const slope = ((2 * h0 + h1) * c0 - h0 * c1) / (h0 + h1);
  return Math.min(Math.max(slope, 0), 3 * c0);
}
