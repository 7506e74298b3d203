import type { Mm } from '../../units';
import type { SteelGround } from '../ground';
import { outsideLimits, strongestBr, type PullSituation } from '../limits';
import type { Magnet, MagnetCup } from '../magnet';
import { ferriticShare, gapLess, gapMore, tolerances } from '../pull-range';
import { thicknessTolerance } from '../sheet-tolerance';
import { mildSteel, saturationCurve } from './mild-steel';
import { solvePull, type SolverInput } from './solve-pull';

/** A pull by finite elements as designed, and at the bad and the good end of every tolerance at once; N. */
export interface SolvedRange {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}

/**
 * What a cup may be off against the pull: wall and floor thinner by this share, the magnet deeper in it by so many mm.
 * Judgement, no source.
 */
const cupTolerances = { steel: 0.1, recess: 0.1 } as const;
/** Narrower than this, a ring's face or a cup's steel is not sure to be as round as it is taken for, mm; judgement. */
const leastRing: Mm = 1;
const leastCup: Mm = 0.5;
/** No thinner layer of air is meshed, mm. */
const leastAir: Mm = 0.02;

/**
 * One sentence for each limit that is not kept: those of the closed form, in which the finite elements were held against a finer model,
 * and what has to be known of a ring or cup; [] inside all of them.
 */
export function outsideSolver(magnet: Magnet, situation: PullSituation): string[] {
  return [...outsideLimits(situation), ...unknownOfShape(magnet)];
}

function unknownOfShape({ name, shape, diameter, height, bore, cup }: Magnet): string[] {
  if (shape === 'disc' || shape === 'block') return [];
  if (shape === 'foil') return ['Finite elements round an axis know no foil.'];
  if (shape === 'ring') {
    if (bore === undefined) return [`Of ${name} the bore is not known: enter it at Magnets.`];
    const isRing = (diameter - bore) / 2 >= leastRing;
    return isRing ? [] : [`${name} has less than ${leastRing} mm of face round its bore: test on site.`];
  }
  if (bore !== undefined) return [`${name} is a cup with a hole, which is not worked out: test on site.`];
  const { magnet, wall, floor, recess } = cup ?? {};
  if (magnet === undefined || wall === undefined || floor === undefined || recess === undefined)
    return [
      `Of the cup of ${name} not all is known: enter its magnet's diameter, wall, floor and how far the face lies behind the rim at Magnets.`,
    ];
  const isFit =
    Math.min(wall, floor) >= leastCup &&
    magnet + 2 * wall <= diameter + 1e-9 &&
    recess + cupTolerances.recess + floor + leastRing <= height;
  return isFit ? [] : [`The magnet of ${name} does not fit into its cup: check their sizes at Magnets.`];
}

/**
 * The pull of a disc, ring or cup with the tolerances of `pullRange`, and of a cup its own besides; undefined where Newton's method
 * did not come to rest. Of a magnet and situation inside `outsideSolver` only. Takes a second or so.
 */
export function solveRange(
  magnet: Magnet,
  situation: PullSituation,
  ground: SteelGround,
): SolvedRange | undefined {
  const { by } = thicknessTolerance(ground.thickness, ground.order);
  const { Br, height, thickness, gap } = situation;
  const share = ground.steel === 'ferritic-stainless' ? ferriticShare : 1;
  const solve = (place: PullSituation, cup?: MagnetCup) => {
    const curve = saturationCurve({ ...mildSteel, Js: mildSteel.Js * share });
    const { F, hasConverged } = solvePull(
      inputOf({ ...magnet, ...(cup && { cup }) }, place),
      undefined,
      curve,
    );
    return hasConverged && Number.isFinite(F) ? F : undefined;
  };
  const counted = Math.min(Br, strongestBr);
  const nominal = solve({ ...situation, Br: counted });
  const least = solve(
    {
      ...situation,
      Br: counted * (1 - tolerances.Br),
      thickness: thickness - by,
      gap: gap + gapMore(ground),
      // A floor that is thinner leaves the magnet no thicker.
      height: height - cupTolerances.steel * (magnet.cup?.floor ?? 0),
    },
    magnet.cup && { ...cupOff(magnet.cup, 1), ...thinner(magnet.cup) },
  );
  const most = solve(
    {
      ...situation,
      Br: Br * (1 + tolerances.Br),
      thickness: thickness + by,
      gap: Math.max(leastAir, gap - gapLess(ground)),
    },
    magnet.cup && cupOff(magnet.cup, -1),
  );
  if (nominal === undefined || least === undefined || most === undefined) return undefined;
  return {
    nominal,
    least: Math.min(nominal, least * (1 - tolerances.steelLess)),
    most: Math.max(nominal, most * (1 + tolerances.steelMore)),
  };
}

function cupOff(cup: MagnetCup, deeper: 1 | -1): MagnetCup {
  return { ...cup, recess: Math.max(0, cup.recess! + deeper * cupTolerances.recess) };
}

function thinner({ wall, floor }: MagnetCup): Pick<MagnetCup, 'wall' | 'floor'> {
  return { wall: wall! * (1 - cupTolerances.steel), floor: floor! * (1 - cupTolerances.steel) };
}

/** Sizes in metres; a cup's steel is mild, whatever the sheet is. */
function inputOf({ shape, bore, cup }: Magnet, place: PullSituation): SolverInput {
  const { diameter, height, thickness, gap, Br, mur } = place;
  return {
    ...{ R: diameter / 2000, H: height / 1000, t: thickness / 1000, g: gap / 1000, Br, mur },
    ...(shape === 'ring' && { bore: bore! / 2000 }),
    ...(shape === 'pot' && {
      cup: {
        magnetR: cup!.magnet! / 2000,
        wall: cup!.wall! / 1000,
        floor: cup!.floor! / 1000,
        recess: cup!.recess! / 1000,
        curve: saturationCurve(mildSteel),
      },
    }),
  };
}
