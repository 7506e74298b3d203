import type { Hundredth } from '../../units';
import type { StartQuestion } from '../start-figures';
import type { StartMeter } from '../start-meter';

/** How much the start with these coordinates modulo the pitch leaves unmet; undefined where nothing was chosen by hand. */
export function unmetBy(
  { area, rules }: StartQuestion,
  meter: StartMeter,
): ((x: Hundredth, y: Hundredth) => number) | undefined {
  if (!rules) return undefined;
  const { unmet } = rules(area);
  return (x, y) => unmet(meter.startAt(x, y));
}
