import type { Mm } from '../units';
import { given, note, type CalculationLine } from './calculation';
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
const ferriticShare = 0.75;

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
  const gapBy = ground.gapTolerance ?? tolerances.gap;
  const { Br, thickness, gap } = situation;
  const saturation = ground.steel === 'ferritic-stainless' ? ferriticShare : 1;
  const counted = Math.min(Br, strongestBr);
  const pull = pullOf({ ...situation, Br: counted }, saturation);
  const worst = {
    ...situation,
    Br: counted * (1 - tolerances.Br),
    thickness: thickness - by,
    gap: gap + gapBy,
  };
  const best = {
    ...situation,
    Br: Br * (1 + tolerances.Br),
    thickness: thickness + by,
    gap: Math.max(0, gap - gapBy),
  };
  return {
    nominal: pull.F,
    least: pullOf(worst, saturation).F * (1 - tolerances.steelLess),
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

/** The calculation of a pull, line by line. */
export function pullLines(
  magnet: Magnet,
  situation: PullSituation,
  ground: SteelGround,
  { pull, least }: PullRange,
): CalculationLine[] {
  const { by, source: bySource } = thicknessTolerance(ground.thickness, ground.order);
  const line = (
    part: CalculationLine['part'],
    symbol: string,
    words: string,
    value: number,
    unit: string,
    source: string,
    formula?: string,
  ): CalculationLine => ({ part, symbol, words, value, unit, source, ...(formula ? { formula } : {}) });
  return [
    line('wall', 't', 'thickness of the steel', ground.thickness, 'mm', given),
    line('wall', 'Δt', 'the steel may be thinner by', by, 'mm', bySource),
    line('wall', 'g', 'gap from the magnet’s face to the steel', situation.gap, 'mm', given),
    line(
      'wall',
      'Δg',
      'the gap may be larger by',
      ground.gapTolerance ?? tolerances.gap,
      'mm',
      ground.gapTolerance === undefined ? `${note}, section 3` : given,
    ),
    line('magnet', 'D', `diameter of ${magnet.name}`, magnet.diameter, 'mm', given),
    line('magnet', 'H', 'height', magnet.height, 'mm', given),
    line(
      'magnet',
      'Br',
      'remanence, warm',
      Math.min(situation.Br, strongestBr),
      'T',
      `${given}; ${note}, section 3`,
    ),
    line('magnet', 'μr', 'recoil permeability', magnet.mur, '', given),
    line(
      'pull',
      'F₀',
      'force to ideal, thick iron',
      pull.F0,
      'N',
      'Furlani 2001; Vokoun et al. 2009: method of images',
      'Br² π R² / μ₀ · [I(2g/R) − 2 I((2g+H)/R) + I((2g+2H)/R)]',
    ),
    line('pull', 'c', 'recoil correction', pull.c, '', `${note}, section 2 (fit)`),
    line('pull', 'Fthick', 'force to thick steel', pull.Fthick, 'N', `${note}, section 2`, 'F₀ / (1 + c)²'),
    line(
      'pull',
      'Fsat',
      'force to the saturated sheet',
      pull.Fsat,
      'N',
      `${note}, section 2 (fit)`,
      'π t R Br^1.0405 / μ₀ · (S₁ + S₂)(1 + 1.02 t/R)',
    ),
    line(
      'pull',
      'x',
      'exponent that joins both',
      pull.x,
      '',
      `${note}, section 2 (fit)`,
      'max(2.5, 7.42 − 7.49 g/R)',
    ),
    line(
      'pull',
      'F',
      'pull straight off',
      pull.F,
      'N',
      `${note}, section 2; within 8 %`,
      'Fthick · (1 + (Fthick/Fsat)^x)^(−1/x)',
    ),
    line(
      'tolerances',
      'Fmin',
      'pull with remanence −3 %, thinner sheet, larger gap, steel −10 % at once',
      least,
      'N',
      `${note}, section 3`,
    ),
  ];
}
