import type { CheckMeasure } from './schema';

/**
 * Measures after corner number `index` (from 0) has come in or gone: they keep to their corners; those of the one that
 * has gone go with it.
 */
export function renumbered(
  measures: readonly CheckMeasure[],
  index: number,
  what: 'put in' | 'taken out',
): CheckMeasure[] {
  const corner = (number: number) => {
    if (what === 'put in') return number > index ? number + 1 : number;
    return number === index + 1 ? undefined : number > index + 1 ? number - 1 : number;
  };
  return measures.flatMap((measure) => {
    const [from, to] = [corner(measure.from), corner(measure.to)];
    return from === undefined || to === undefined ? [] : [{ ...measure, from, to }];
  });
}
