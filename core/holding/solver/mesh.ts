import type { Part } from './parts';

/** Lines between elements, rising, m. */
export interface Mesh {
  readonly r: readonly number[];
  readonly z: readonly number[];
}

/** How far the field is followed, m; the potential is zero there. */
const far = 1;

/**
 * A rectangular mesh of the half plane r ≥ 0 with a line at every edge of the parts. Elements are small beside the edges of
 * magnet, cup and gap, where the field bends sharply, and grow by a constant ratio from there.
 *
 * @param fineness 1 is some 2,000 nodes; the number grows with about its square
 */
export function meshOf(parts: readonly Part[], fineness: number): Mesh {
  const tip = tipOf(parts) / fineness;
  const ratio = 1 + 1.2 / fineness;
  const rs = distinct([0, ...parts.flatMap(({ r }) => r)]);
  const zs = distinct([0, ...parts.flatMap(({ z }) => z)]);
  const plate = rs.at(-1)!;
  const r = rs.slice(1).flatMap((to, i) => {
    const from = rs[i]!;
    const isPlate = to === plate;
    return between(from, to, from === 0 ? Infinity : tip, isPlate ? Infinity : tip, ratio, fineness);
  });
  const z = zs.slice(1).flatMap((to, i) => between(zs[i]!, to, tip, tip, ratio, fineness));
  const [foot, head] = [zs[0]!, zs.at(-1)!];
  return {
    r: [...r, ...between(plate, plate + far, plate / 4, Infinity, 3, fineness), plate + far],
    z: [
      ...between(foot - far, foot, Infinity, tip, ratio, fineness),
      ...z,
      ...between(head, head + far, tip, Infinity, ratio, fineness),
      head + far,
    ],
  };
}

/** Size of an element beside an edge. */
function tipOf(parts: readonly Part[]): number {
  const sides = parts.flatMap(({ of, r, z }) => (of.is === 'magnet' ? [r[1] - r[0], z[1] - z[0]] : []));
  return Math.min(...sides) / 8;
}

function distinct(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b).filter((value, i, all) => i === 0 || value - all[i - 1]! > 1e-9);
}

/** Lines from a (in) to b (left out): elements of about the given sizes at both ends, each growing by the ratio inwards. */
function between(a: number, b: number, atA: number, atB: number, ratio: number, fineness: number): number[] {
  const length = b - a;
  const least = Math.max(1, Math.round(fineness));
  const most = length / least;
  const first: number[] = [];
  const last: number[] = [];
  let [one, other] = [Math.min(atA, most), Math.min(atB, most)];
  let sum = 0;
  while (sum < length * (1 - 1e-9) || first.length + last.length < least) {
    if (one <= other) {
      first.push(one);
      sum += one;
      one = Math.min(one * ratio, most);
    } else {
      last.unshift(other);
      sum += other;
      other = Math.min(other * ratio, most);
    }
  }
  const lines: number[] = [];
  let at = 0;
  for (const size of [...first, ...last]) {
    lines.push(a + (length * at) / sum);
    at += size;
  }
  return lines;
}
