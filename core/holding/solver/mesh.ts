/*
 * A rectangular mesh of the half plane r ≥ 0 round a magnet above a sheet, metres. z runs up; the magnet's face is at z = 0,
 * the steel's at z = −g:
 *
 *      z = H  ┌────┐
 *             │    │ magnet
 *      z = 0  └────┘
 *     z = −g  ┌──────────────────┐
 *  z = −g −t  └──────────────────┘ steel, to r = plate
 */

export interface MagnetAboveSheet {
  readonly R: number;
  readonly H: number;
  readonly t: number;
  readonly g: number;
  /** Radius of the sheet. */
  readonly plate: number;
}

export interface Mesh {
  /** Lines between elements, rising. */
  readonly r: readonly number[];
  readonly z: readonly number[];
}

/** @param fineness 1 is some 1,300 nodes, 1.5 some 2,600; the number grows with its square */
export function meshOf({ R, H, t, g, plate }: MagnetAboveSheet, fineness: number): Mesh {
  const n = (count: number) => Math.max(2, Math.round(count * fineness));
  const far = Math.max(1, 4 * plate);
  const tip = Math.min(R, H) / (10 * fineness);
  const r = [
    ...between(0, R, n(5), 'end', tip),
    ...between(R, plate, n(8), 'start', tip),
    ...between(plate, far, n(2), 'start', plate / 4),
    far,
  ];
  const z = [
    ...between(-g - t - far, -g - t, n(6), 'end', Math.max(t, g, tip)),
    ...between(-g - t, -g, n(2), 'even', 0),
    ...between(-g, 0, n(2), 'even', 0),
    ...between(0, H, n(4), 'both', tip),
    ...between(H, H + far, n(6), 'start', tip),
    H + far,
  ];
  return { r, z };
}

/**
 * Lines from a (in) to b (left out) in so many elements, the element at the named end of about this size, the others growing
 * by a constant ratio.
 */
function between(
  a: number,
  b: number,
  count: number,
  small: 'start' | 'end' | 'both' | 'even',
  size: number,
): number[] {
  const length = b - a;
  if (small === 'both') {
    const middle = (a + b) / 2;
    const half = Math.max(1, Math.round(count / 2));
    return [...between(a, middle, half, 'start', size), ...between(middle, b, half, 'end', size)];
  }
  const ratio = small === 'even' ? 1 : ratioOf(length / size, count);
  const sizes = Array.from({ length: count }, (_, i) => ratio ** (small === 'end' ? count - 1 - i : i));
  const total = sizes.reduce((sum, one) => sum + one, 0);
  const lines: number[] = [];
  let at = 0;
  for (const one of sizes) {
    lines.push(a + (length * at) / total);
    at += one;
  }
  return lines;
}

/** The ratio ≥ 1 at which `count` sizes from 1 up add up to `sum`. */
function ratioOf(sum: number, count: number): number {
  if (sum <= count) return 1;
  let [low, high] = [1, 100];
  for (let i = 0; i < 60; i++) {
    const ratio = (low + high) / 2;
    if ((ratio ** count - 1) / (ratio - 1) < sum) low = ratio;
    else high = ratio;
  }
  return high;
}
