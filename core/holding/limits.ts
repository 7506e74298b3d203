import type { Mm } from '../units';

/*
 * Where the closed form holds. The note on pull, section 3: bare discs 6 ≤ D ≤ 40 mm, H/D 0.1–0.6; steel 0.3–2 mm or
 * thick; gap 0.1–3 mm; its data reach from 0.39 to 1.30 T at a recoil permeability of 1.05.
 */

/** Steel from this thickness on counts as thick, mm. */
export const thickSteel: Mm = 10;
/** The strongest remanence in the data, T. A stronger magnet is counted as one of this. */
export const strongestBr = 1.3;

export interface PullSituation {
  readonly diameter: Mm;
  readonly height: Mm;
  /** Remanence, T. */
  readonly Br: number;
  readonly mur: number;
  /** Of the steel, mm. */
  readonly thickness: Mm;
  /** Between magnet and steel, mm. */
  readonly gap: Mm;
}

/**
 * One sentence for each limit of the closed form that is not kept, with the limit; [] inside all of them. A remanence above
 * the data is no fault: `pullInput` counts it as the strongest of the data, which is less.
 */
export function outsideLimits({ diameter, height, Br, mur, thickness, gap }: PullSituation): string[] {
  const said: string[] = [];
  const slenderness = height / diameter;
  if (!within(diameter, 6, 40))
    said.push(`The magnet is ${show(diameter)} mm across; the pull is known from 6 to 40 mm.`);
  if (!within(slenderness, 0.1, 0.6))
    said.push(
      `The magnet's height is ${show(slenderness)} of its diameter; the pull is known from 0.1 to 0.6.`,
    );
  if (!within(thickness, 0.3, 2) && !(thickness >= thickSteel))
    said.push(
      `The steel is ${show(thickness)} mm thick; the pull is known from 0.3 to 2 mm and from ${thickSteel} mm up.`,
    );
  if (!within(gap, 0.1, 3))
    said.push(`The gap between magnet and steel is ${show(gap)} mm; the pull is known from 0.1 to 3 mm.`);
  if (!(Br >= 0.35)) said.push(`The magnet's remanence is ${show(Br)} T; the pull is known from 0.35 T.`);
  if (!within(mur, 1, 1.1))
    said.push(`The magnet's recoil permeability is ${show(mur)}; the pull is known from 1 to 1.1.`);
  return said;
}

/** False for what is no number. */
function within(value: number, least: number, most: number): boolean {
  // Sums of layers leave a last digit behind: 0.1 + 0.2 is not to be beyond 0.3.
  return value >= least - 1e-9 && value <= most + 1e-9;
}

function show(value: number): string {
  return String(Number(value.toPrecision(4)));
}
