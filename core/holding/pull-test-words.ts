import { leastReadings, type HoldingGround, type PullTest } from './ground';
import { trueGap } from './pull-test';

/** What one pull test says of the wall, in sentences; the calculation takes it from the same functions. */
export function pullTestInWords(ground: HoldingGround, test: PullTest): readonly string[] {
  const few =
    test.readings.length < leastReadings
      ? [`Only ${test.readings.length} of at least ${leastReadings} readings: measure in more places.`]
      : [];
  const lowest = `The lowest reading is ${show(Math.min(...test.readings))} N.`;
  if (ground.kind === 'none') return ['Nothing of this zone draws a magnet, so that the test is not used.'];
  if (ground.kind === 'unknown') return [lowest, ...few, ground.why];
  if (ground.kind === 'coating')
    return [
      lowest,
      'On a magnetic coating it counts for this very magnet across the same gap, and for no other.',
      ...few,
    ];
  const found = trueGap(ground, test);
  if ('refused' in found) return [lowest, found.refused, ...few];
  const isLess = found.gap < ground.gap - 1e-6 && few.length > 0;
  return [
    lowest,
    `The wall pulls as if ${show(found.gap)} mm lay over the steel; its layers give ${show(ground.gap)} mm.`,
    ...(isLess ? ['Until there are enough readings the larger of the two is counted.'] : []),
    ...few,
  ];
}

function show(value: number): string {
  return String(Number(value.toPrecision(3)));
}
