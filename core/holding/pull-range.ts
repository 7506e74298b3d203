import type { Mm } from '../units';
import type { SteelGround } from './ground';
import { strongestBr, type PullSituation } from './limits';
import { materialLimits, type Magnet } from './magnet';
import { pullOnSheet, type Pull } from './pull';
import { thicknessTolerance } from './sheet-tolerance';

/** A pull as designed, and at the bad and the good end of every tolerance at once; N. */
export interface PullRange {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
  readonly pull: Pull;
}

/** Note on holding force, section 3: remanence ± 3 %, steel −10/+5 %, gap ± 0.2 mm. */
export const tolerances = { Br: 0.03, steelLess: 0.1, steelMore: 0.05, gap: 0.2 } as const;
/** Ferritic stainless steel saturates lower by about this; from memory. */
export const ferriticShare = 0.75;

/**
 * Share of the closed form that is counted for magnets far wider than the steel is thick. The note allows the form 8 %; the finite
 * elements of `solver/` find it too high by more than that at the limit of D/t = 133 (40 mm on 0.3 mm), by up to 8.5 %. Counted
 * is a little less than they give, 12 % off there: what is said of so thin a sheet has nothing else behind it.
 */
export function wideShare({ diameter, thickness }: PullSituation): number {
  return 1 / (1 + (0.12 * Math.max(0, diameter / thickness - 80)) / (40 / 0.3 - 80));
}

/** By how much the gap may be larger than it is designed, mm; never less than the usual tolerance. */
export function gapMore({ gap, gapMost = 0 }: SteelGround): Mm {
  return Math.max(tolerances.gap, gapMost - gap);
}

export function gapLess({ gap, gapLeast = gap }: SteelGround): Mm {
  return Math.max(tolerances.gap, gap - gapLeast);
}

/** What stands between a magnet and the steel, mm. */
export function gapTo(ground: SteelGround, magnet: Magnet, between: Mm): Mm {
  return ground.gap + magnet.cover + between;
}

/** Remanence at a temperature above 20 °C, T; what cold gains is not counted. */
export function warmBr({ Br, material }: Magnet, hottest: number): number {
  return Br * (1 - materialLimits[material].loss * Math.max(0, hottest - 20));
}

export function situationOf(
  magnet: Magnet,
  ground: SteelGround,
  between: Mm,
  hottest: number,
): PullSituation {
  const { diameter, height, mur } = magnet;
  const gap = gapTo(ground, magnet, between);
  return { diameter, height, mur, Br: warmBr(magnet, hottest), thickness: ground.thickness, gap };
}

/**
 * The pull in a situation inside the limits. It grows with remanence, sheet and steel and falls with the gap, so that its
 * worst case is the corner where all of them are bad; properties hold that.
 */
export function pullRange(situation: PullSituation, ground: SteelGround): PullRange {
  const { by } = thicknessTolerance(ground.thickness, ground.order);
  const { Br, thickness, gap } = situation;
  const saturation = ground.steel === 'ferritic-stainless' ? ferriticShare : 1;
  const counted = Math.min(Br, strongestBr);
  const pull = pullOf({ ...situation, Br: counted }, saturation);
  const worst = {
    ...situation,
    Br: counted * (1 - tolerances.Br),
    thickness: thickness - by,
    gap: gap + gapMore(ground),
  };
  const best = {
    ...situation,
    Br: Br * (1 + tolerances.Br),
    thickness: thickness + by,
    gap: Math.max(0, gap - gapLess(ground)),
  };
  const wide = wideShare(situation);
  return {
    nominal: pull.F * wide,
    least: pullOf(worst, saturation).F * wide * (1 - tolerances.steelLess),
    most: pullOf(best, saturation).F * (1 + tolerances.steelMore),
    pull,
  };
}

export function pullOf({ diameter, height, Br, mur, thickness, gap }: PullSituation, saturation = 1): Pull {
  return pullOnSheet({
    Br,
    mur,
    R: diameter / 2000,
    H: height / 1000,
    t: thickness / 1000,
    g: gap / 1000,
    saturation,
  });
}
