import { inch } from '../../core/lengths';

/** Steps of a tape in mm, finest first. */
const steps = [1, 5, 10, 50, 100, 500, 1000, 5000, 10_000, 50_000];
/** Sixteenths, eighths, quarters and halves of an inch, inches, half feet, feet and so on, in mm. */
const inchSteps = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 3, 6, 12, 60, 120, 600, 1200].map((step) => step * inch);
const foot = 12 * inch;

/** A small stroke of a tape. */
export interface Stroke {
  /** Hundredths from the datum. */
  readonly at: number;
  /** Longer than the others: a whole foot among inches, a whole inch among their parts. */
  readonly long: boolean;
}

/**
 * The small strokes of a tape, as far as they stand at least 7 px apart.
 *
 * @param scale px per mm
 * @param start px from the datum to where the tape begins to be seen, in the direction of growing figures
 * @param length px that are seen
 * @param inches whether the tape is one in feet and inches
 * @returns never more than a few hundred
 */
export function graduation(scale: number, start: number, length: number, inches = false): Stroke[] {
  const step = (inches ? inchSteps : steps).find((mm) => mm * scale >= 7);
  if (!step) return [];
  const larger = step < inch ? inch : step < foot ? foot : null;
  const strokes: Stroke[] = [];
  const last = Math.floor((start + length) / scale / step);
  for (let n = Math.ceil(start / scale / step); n <= last; n++) {
    const long = inches && larger !== null && n % Math.round(larger / step) === 0;
    strokes.push({ at: n * step * 100, long });
  }
  return strokes;
}
