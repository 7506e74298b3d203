/** Steps of a tape in mm, finest first. */
const steps = [1, 5, 10, 50, 100, 500, 1000, 5000, 10_000, 50_000];

/**
 * The small strokes of a tape, as far as they stand at least 7 px apart.
 *
 * @param scale px per mm
 * @param start px from the datum to where the tape begins to be seen, in the direction of growing figures
 * @param length px that are seen
 * @returns places in hundredths from the datum, never more than a few hundred
 */
export function graduation(scale: number, start: number, length: number): number[] {
  const step = steps.find((mm) => mm * scale >= 7);
  if (!step) return [];
  const places: number[] = [];
  const last = Math.floor((start + length) / scale / step);
  for (let n = Math.ceil(start / scale / step); n <= last; n++) places.push(n * step * 100);
  return places;
}
