import { ellipticIntegrals } from './elliptic';

/** What the closed form asks for; its source's letters, SI units. */
export interface PullInput {
  /** Remanence, T. */
  readonly Br: number;
  /** Recoil permeability, relative. */
  readonly mur: number;
  /** Half the diameter, m. */
  readonly R: number;
  /** Height, m. */
  readonly H: number;
  /** Thickness of the steel, m. */
  readonly t: number;
  /** Gap between the magnet's face and the steel, m. */
  readonly g: number;
  /** Share of the saturation of mild steel that this steel reaches; absent: 1. */
  readonly saturation?: number;
}

/** Every figure on the way, so that a sheet can print it. */
export interface Pull {
  /** Force to ideally permeable, thick steel by the method of images, N. */
  readonly F0: number;
  /** Recoil correction. */
  readonly c: number;
  /** Force to thick steel, N. */
  readonly Fthick: number;
  /** Parts of the saturated sheet along and across it, T. */
  readonly S1: number;
  readonly S2: number;
  /** Force to a wholly saturated sheet, N. */
  readonly Fsat: number;
  /** Exponent that joins the two. */
  readonly x: number;
  /** Pull straight off, N. */
  readonly F: number;
}

/** Permeability of vacuum, T·m/A. */
const mu0 = 4e-7 * Math.PI;
/** Polarisation of saturated mild steel, T. */
const Js = 2.0;

/**
 * Pull of a bare disc magnet, magnetised along its axis, face-on to a thin flat sheet of mild steel behind a gap. Says
 * nothing about its limits: `outsideLimits` does, and `wideShare` about wide magnets on very thin steel.
 *
 * Source: image force between coaxial cylinders, E. P. Furlani, Permanent Magnet and Electromechanical Devices (2001),
 * D. Vokoun et al., J. Magn. Magn. Mater. 321 (2009) 3758; the saturated sheet and the numbers 0.899 … 7.49 are fitted to
 * 588 cases of a nonlinear axisymmetric finite element model (largest error 4.5 %, RMS 1.2 % there; 8 % allowed elsewhere).
 * @example pullOnSheet({ Br: 1.3, mur: 1.05, R: 0.01, H: 0.005, t: 0.0005, g: 0.001 }).F // 15.336 N
 */
export function pullOnSheet({ Br, mur, R, H, t, g, saturation = 1 }: PullInput): Pull {
  const F0 =
    ((Br * Br * Math.PI * R * R) / mu0) *
    (imageIntegral((2 * g) / R) - 2 * imageIntegral((2 * g + H) / R) + imageIntegral((2 * g + 2 * H) / R));
  const c = (((mur - 1) * 1.43) / (1 + (2.2 * H) / R)) * ((g + 0.109 * H) / (g + 0.0384 * R + 0.109 * H));
  const Fthick = F0 / (1 + c) ** 2;

  const S1 = 0.899 * Js * (psi(g / R) - psi((g + H) / R));
  const S2 = 0.159 * Math.log((1 + R / (g + 0.135 * t)) / (1 + R / (g + 0.135 * t + 2.33 * H)));
  const Fsat = (saturation * (Math.PI * t * R * Br ** 1.0405) * (S1 + S2) * (1 + (1.02 * t) / R)) / mu0;

  const x = Math.max(2.5, 7.42 - (7.49 * g) / R);
  // Written so that a force which is far from saturating the sheet cannot overflow.
  const [less, more] = Fthick < Fsat ? [Fthick, Fsat] : [Fsat, Fthick];
  const F = less * (1 + (less / more) ** x) ** (-1 / x);
  return { F0, c, Fthick, S1, S2, Fsat, x, F };
}

/** I(s) = ∫₀^∞ J₁(q)² e^(−qs) / q dq, in closed form; I(0) = 1/2. */
export function imageIntegral(s: number): number {
  // The closed form loses its digits where both terms are nearly 1/2.
  if (s > 30) return 1 / (4 * s * s) - 3 / (8 * s ** 4);
  if (s === 0) return 1 / 2;
  const x = s / 2;
  const { K, E } = ellipticIntegrals(1 / (1 + x * x));
  return 1 / 2 - (2 / Math.PI) * x * Math.sqrt(1 + x * x) * (K - E);
}

function psi(s: number): number {
  return Math.sqrt(1 + s * s) - s;
}
