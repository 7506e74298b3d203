import type { Mm } from '../units';
import { leastReadings, type PullTest, type SteelGround } from './ground';
import { outsideLimits } from './limits';
import { isSameMagnet, type Magnet } from './magnet';
import { pullOf, situationOf } from './pull-range';

/** What a pull test says of the wall. */
export type Calibration =
  /** `gap`: between steel and finished face. */
  | { readonly gap: Mm }
  /** `weak`: the wall pulls less than the model can explain, so that the model must not be used on it. */
  | { readonly refused: string; readonly weak: boolean };

/**
 * The gap at which the model pulls as hard as the lowest reading did: the wall's true gap, in which whatever else differs
 * from the model is counted as gap too.
 *
 * Refuses, with a sentence, a magnet or steel outside the limits and a reading beyond what any gap within them explains.
 */
export function trueGap(ground: SteelGround, test: PullTest): Calibration {
  const refuse = (refused: string, weak = false) => ({ refused, weak });
  if (test.readings.length === 0) return refuse('The pull test has no readings: enter what was measured.');
  const reading = Math.min(...test.readings);
  if (!(reading > 0))
    return refuse('A reading of the pull test is not above 0 N: measure again, or nothing holds here.', true);
  if (ground.steel !== 'low-carbon')
    return refuse('The model knows low-carbon steel only, so that no gap follows from the pull test.');
  if (test.magnet.shape !== 'disc')
    return refuse('The model knows bare discs only: test with one to learn the gap.');
  const between = test.magnet.cover + test.between;
  // Uncapped remanence: a strong magnet taken for a weaker one would make the gap look smaller than it is.
  const situation = situationOf(test.magnet, ground, test.between, 20);
  const [nearest, furthest] = [leastGap(test.magnet, test.between), 3];
  const outside = outsideLimits({ ...situation, gap: nearest });
  if (outside.length > 0) return refuse(outside.join(' '));
  const at = (gap: Mm) => pullOf({ ...situation, gap }).F;
  if (reading > at(nearest))
    return refuse(
      `The pull test reads ${show(reading)} N, more than the model gives at the least gap (${show(at(nearest))} N): check the magnet's grade and the steel's thickness.`,
    );
  if (reading < at(furthest))
    return refuse(
      `The pull test reads ${show(reading)} N, less than the model gives across 3 mm (${show(at(furthest))} N): the steel may be thinner, further in or missing.`,
      true,
    );
  let [low, high] = [nearest, furthest];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle) > reading) low = middle;
    else high = middle;
  }
  return { gap: high - between };
}

export interface MeasuredPull {
  /** Lowest reading, N. */
  readonly pull: number;
  readonly readings: number;
}

/**
 * What was measured with this very magnet at no smaller a gap: on steel, where less between can only help. `exact`: the same
 * gap only, as on a coating, of which nothing else is known.
 */
export function measuredPull(
  tests: readonly PullTest[],
  magnet: Magnet,
  between: Mm,
  exact: boolean,
): MeasuredPull | undefined {
  const fitting = tests.filter(
    (test) =>
      isSameMagnet(test.magnet, magnet) &&
      test.readings.length > 0 &&
      (exact ? Math.abs(test.between - between) <= 0.05 : between <= test.between + 0.05),
  );
  const readings = fitting.flatMap((test) => test.readings);
  if (readings.length === 0) return undefined;
  return { pull: Math.min(...readings), readings: readings.length };
}

export interface WallCalibration {
  /** Between steel and finished face: the largest that a test leads to; absent: no test does. */
  readonly gap?: Mm;
  /** The tests that found less than the model can explain. */
  readonly weak: readonly PullTest[];
  readonly refused: readonly string[];
}

/** All tests of a ground together. Few readings can make the gap larger than it was given, but not smaller. */
export function calibrate(ground: SteelGround): WallCalibration {
  const found = ground.tests.map((test) => trueGap(ground, test));
  const gaps = found.flatMap((one) => ('gap' in one ? [one.gap] : []));
  const refused = found.flatMap((one) => ('refused' in one ? [one.refused] : []));
  const weak = ground.tests.filter((_, i) => isWeak(found[i]!));
  if (gaps.length === 0) return { weak, refused };
  const readings = ground.tests.reduce((sum, test) => sum + test.readings.length, 0);
  const largest = Math.max(...gaps);
  return { gap: readings < leastReadings ? Math.max(largest, ground.gap) : largest, weak, refused };
}

function isWeak(found: Calibration): boolean {
  return 'weak' in found && found.weak;
}

/** No gap is smaller: the limit of the model, or what is known to lie between. */
export function leastGap(magnet: Magnet, between: Mm): Mm {
  return Math.max(0.1, magnet.cover + between);
}

export function hasEnoughReadings({ readings }: Pick<MeasuredPull, 'readings'>): boolean {
  return readings >= leastReadings;
}

function show(force: number): string {
  return String(Number(force.toPrecision(3)));
}
