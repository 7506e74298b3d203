import { mu0, type BhCurve } from './bh-curve';

export interface SaturatingSteel {
  /** Polarisation that it saturates at, T. */
  readonly Js: number;
  /** Initial permeability, relative. */
  readonly mui: number;
}

/**
 * Mild steel of thin sheets: Js in the middle of the 2.0 to 2.15 T (pure iron) that handbooks give low-carbon steel, and an initial
 * permeability as of cold-rolled sheet; both typical, from memory. Against cases with measured points of AISI 1010 the pull comes
 * out 2.6 % lower to 1.9 % higher (every 4th of 588, 1.1 % RMS); softer steel, as with Js = 2.15 T, gives up to 5 % more.
 */
export const mildSteel: SaturatingSteel = { Js: 2.05, mui: 1000 };

/**
 * A curve that rises with the initial permeability and saturates at Js:
 *
 *     B = μ₀ H + Js H / (H + H₀),   H₀ = Js / (μ₀ (μi − 1))
 *
 * Source: law of O. Frölich, Elektrotechnische Zeitschrift 2 (1881) 134, and A. E. Kennelly, Trans. AIEE 8 (1891) 485, with the
 * field's own μ₀ H added (from memory).
 */
export function saturationCurve({ Js, mui }: SaturatingSteel): BhCurve {
  const H0 = Js / (mu0 * (mui - 1));
  return (B) => {
    const p = mu0 * H0 + Js - B;
    const root = Math.sqrt(p * p + 4 * mu0 * B * H0);
    // The root of the quadratic without the difference of two like numbers.
    const H = p > 0 ? (2 * B * H0) / (p + root) : (root - p) / (2 * mu0);
    return {
      H,
      slope: 1 / (mu0 + (Js * H0) / (H + H0) ** 2),
      energy: B * H - (mu0 * H * H) / 2 - Js * (H - H0 * Math.log1p(H / H0)),
    };
  };
}
