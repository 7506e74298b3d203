import type { Mm } from '../units';
import { note, type CalculationLine } from './calculation';
import type { HoldingGround, SteelGround } from './ground';
import { discFor, type Magnet } from './magnet';
import { measuredGround, outsideTemperatures, pullAtPlace, tooLoose } from './pull-at-place';
import type { PullAtPlace, Temperatures } from './pull-at-place';
import { pullRange, situationOf } from './pull-range';
import { calibrate } from './pull-test';
import { ratedBr } from './rated-pull';
import { outsideSolver, solveRange, type SolvedRange } from './solver/solve-range';

/** A magnet's pull at a place by finite elements beside what the calculation goes by. */
export interface ConfirmedPull {
  readonly known: PullAtPlace;
  readonly solved?: SolvedRange;
  /** Of the closed form in the same situation, N; absent for a ring or cup, and where nothing was solved. */
  readonly closed?: number;
  /** Why it was not solved; [] if it was. */
  readonly unsolved: readonly string[];
  /** What holds by both. */
  readonly counted: PullAtPlace;
}

/**
 * The pull of `pullAtPlace`, confirmed. A test on site and a maker's pull come first, as they do there; but a maker's pull that
 * even the finite elements cannot explain is not used. Of closed form and finite elements the lower counts. Of a ring or cup only
 * the finite elements say something: no measurement stands behind them, so that a test is always wanted.
 *
 * Takes some seconds: for a worker.
 */
export function confirmPull(
  magnet: Magnet,
  ground: HoldingGround,
  between: Mm,
  temperatures: Temperatures,
): ConfirmedPull {
  const known = pullAtPlace(magnet, ground, between, temperatures);
  const found = solveOn(magnet, ground, between, temperatures);
  if (!('nominal' in found)) return { known, unsolved: found, counted: known };
  const { nominal, least, most, closed } = found;
  return {
    known,
    solved: { nominal, least, most },
    ...(closed !== undefined && { closed }),
    unsolved: [],
    counted: lowerOf(known, found, magnet),
  };
}

interface Found extends SolvedRange {
  readonly closed: number | undefined;
  readonly testWanted: readonly string[];
  readonly notes: readonly string[];
}

function solveOn(
  magnet: Magnet,
  given: HoldingGround,
  between: Mm,
  temperatures: Temperatures,
): Found | readonly string[] {
  if (given.kind !== 'steel') return ['Finite elements know steel panels only.'];
  if (given.steel === 'austenitic-stainless' || given.steel === 'unknown')
    return ['Finite elements know mild steel, and ferritic stainless steel by its lower saturation.'];
  const unfit = outsideTemperatures(magnet, temperatures);
  if (unfit) return [unfit];
  const { gap, weak, refused } = calibrate(given);
  if (weak.length > 0) return refused;
  const ground = gap === undefined ? given : measuredGround(given, gap);
  const stands = discFor(magnet) ?? magnet;
  const Br = Math.min(stands.Br, ratedBr(magnet) ?? Infinity);
  const situation = situationOf({ ...stands, Br }, ground, between, temperatures.hottest);
  const outside = outsideSolver(stands, situation);
  if (outside.length > 0) return outside;
  const solved = solveRange(stands, situation, ground);
  if (!solved) return ['The finite elements came to no result here.'];
  const loose = tooLoose(situation.gap, ground);
  return {
    ...solved,
    closed: discFor(magnet) && pullRange(situation, ground).nominal,
    // Over the deepest hollow the pull is not known, so that none is counted there.
    least: loose ? 0 : solved.least,
    testWanted: wantedTests(magnet, ground, loose),
    notes: refused,
  };
}

function wantedTests({ name, shape }: Magnet, { steel }: SteelGround, loose: string | undefined): string[] {
  return [
    ...(shape === 'ring' || shape === 'pot'
      ? [
          `The pull of ${name} is known by finite elements alone, which nobody has measured: pull it off this wall in three places.`,
        ]
      : []),
    ...(steel === 'ferritic-stainless'
      ? ['Ferritic stainless steel saturates lower, by about a quarter (from memory): only a test tells.']
      : []),
    ...(loose ? [loose] : []),
  ];
}

function lowerOf(known: PullAtPlace, solved: Found, magnet: Magnet): PullAtPlace {
  const { by } = known;
  if (by === 'site-test' || (by === 'maker' && known.nominal <= solved.most)) return known;
  const isModel = by === 'model';
  const isTooMuch = by === 'maker';
  if (!isModel && !isTooMuch && !isUnknownShape(magnet)) return known;
  return {
    nominal: isModel ? Math.min(known.nominal, solved.nominal) : solved.nominal,
    least: isModel ? Math.min(known.least, solved.least) : solved.least,
    most: isModel ? Math.max(known.most, solved.most) : solved.most,
    by: 'model',
    refused: [],
    testWanted: isModel ? known.testWanted : solved.testWanted,
    notes: [
      ...(isModel ? known.notes : solved.notes),
      ...(isTooMuch
        ? [
            'The maker’s pull is more than the finite elements can explain under these conditions, and is not used.',
          ]
        : []),
    ],
    lines: [...known.lines, ...solvedLines(solved)],
  };
}

function isUnknownShape({ shape }: Magnet): boolean {
  return shape === 'ring' || shape === 'pot';
}

function solvedLines({ nominal, least }: SolvedRange): CalculationLine[] {
  return [
    {
      part: 'pull',
      symbol: 'Ffe',
      words: 'pull straight off by finite elements',
      value: nominal,
      unit: 'N',
      source: 'axisymmetric, nonlinear, mild steel after Frölich and Kennelly',
    },
    {
      part: 'tolerances',
      symbol: 'Ffe,min',
      words: 'the same with every tolerance against it',
      value: least,
      unit: 'N',
      source: `${note}, section 3`,
    },
  ];
}
