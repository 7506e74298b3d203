import type { Hundredth } from '../units';
import type { CutSize } from './cut-size';
import type { GrowingSide } from './fitting-shifts';
import type { StartMeter } from './start-meter';

/** The cut panels of all starts between the same events, with what a hundredth more of the start adds to them. */
export interface GrowingSizes {
  /** Sizes at the start in the middle. */
  readonly sizes: readonly CutSize[];
  /** In the order of the sizes: 1, 0 or −1; beside a slope whatever it is on average. */
  readonly growsX: readonly number[];
  readonly growsY: readonly number[];
}

/** From a start to the ends of its span between events, both left out; the same number twice if it is on one. */
export type Reach = readonly [Hundredth, Hundredth];

/**
 * How the sizes grow, as seen from one start and from others on its span: beside slopes from the farthest that falls
 * into as many panels, since a hundredth further tells nothing of a slope that is rounded to hundredths.
 *
 * @returns undefined where not even the neighbours fall into as many panels
 */
export function growingSizes(
  meter: StartMeter,
  x: Hundredth,
  y: Hundredth,
  [reachX, reachY]: readonly [Reach, Reach],
): GrowingSizes | undefined {
  const sizes = meter.cutSizes(x, y);
  const [stepX, stepY] = [stepWithin(reachX), stepWithin(reachY)];
  // Where all edges are level and upright, one neighbour across the corner says both.
  const beyond = meter.hasSlopes || !stepX || !stepY ? undefined : meter.cutSizes(x + stepX, y + stepY);
  const growth = (step: number, side: 'width' | 'height', reach: Reach): number[] | undefined => {
    if (step === 0) return sizes.map(() => 0);
    for (const far of meter.hasSlopes ? [(step > 0 ? reach[1] : reach[0]) - step, step] : [step]) {
      const moved = beyond ?? (side === 'width' ? meter.cutSizes(x + far, y) : meter.cutSizes(x, y + far));
      if (moved.length === sizes.length) return sizes.map((size, i) => (moved[i]![side] - size[side]) / far);
    }
    return undefined;
  };
  const growsX = growth(stepX, 'width', reachX);
  const growsY = growth(stepY, 'height', reachY);
  return growsX && growsY && { sizes, growsX, growsY };
}

function stepWithin([low, high]: Reach): number {
  return high > 1 ? 1 : low < -1 ? -1 : 0;
}

/** Sizes to be written over again and again, so that nothing is made anew for the many thousands of a search. */
export interface MovedSizes {
  /** The sizes when the start is moved. */
  move(dx: Hundredth, dy: Hundredth): readonly CutSize[];
}

export function movedSizes({ sizes, growsX, growsY }: GrowingSizes): MovedSizes {
  const moved = sizes.map(({ width, height, area }) => ({ width, height, area }));
  return {
    move(dx, dy) {
      for (let i = 0; i < moved.length; i++) {
        const size = moved[i]!;
        size.width = sizes[i]!.width + dx * growsX[i]!;
        size.height = sizes[i]!.height + dy * growsY[i]!;
        size.area = size.width * size.height;
      }
      return moved;
    },
  };
}

/** Equal for the same sizes in whatever order, and for others hardly ever. */
export function fingerprintOf(sizes: readonly CutSize[]): number {
  let [high, low] = [0, 0];
  for (const { width, height } of sizes) {
    let mixed = Math.imul(width ^ (width >>> 15), 0x2c1b3c6d) + Math.imul(height, 0x297a2d39);
    mixed = Math.imul(mixed ^ (mixed >>> 12), 0x85ebca6b);
    mixed ^= mixed >>> 13;
    low = (low + mixed) | 0;
    high = (high + Math.imul(mixed ^ (mixed >>> 9), 0x27d4eb2f)) | 0;
  }
  return (high & 0xfffff) * 4294967296 + (low >>> 0);
}

/** For each panel the least that it is wide and high within reach. */
export function leastSizes({ sizes, growsX, growsY }: GrowingSizes, reachX: Reach, reachY: Reach): CutSize[] {
  return sizes.map((size, i) => {
    const width = size.width + leastGrowth(growsX[i]!, reachX);
    const height = size.height + leastGrowth(growsY[i]!, reachY);
    return { width, height, area: width * height };
  });
}

function leastGrowth(grows: number, [low, high]: Reach): number {
  return Math.min(grows * low, grows * high) + (low === high ? 0 : Math.abs(grows));
}

/** Equal sides once each, both ways of every panel, since it may lie either way on the stock sheet. */
export function sidesOf(
  { sizes, growsX, growsY }: GrowingSizes,
  along: 'x' | 'y',
  across: Hundredth,
): GrowingSide[] {
  const sides: { length: Hundredth; grows: number; count: number }[] = [];
  const add = (length: number, grows: number) => {
    const same = sides.find((side) => side.length === length && side.grows === grows);
    if (same) same.count++;
    else sides.push({ length, grows, count: 1 });
  };
  for (let i = 0; i < sizes.length; i++) {
    const { width, height } = sizes[i]!;
    // Along the axis lengths are counted from where the start is, across it from where it was moved to.
    if (along === 'x') {
      add(width, growsX[i]!);
      add(height + across * growsY[i]!, 0);
    } else {
      add(height, growsY[i]!);
      add(width + across * growsX[i]!, 0);
    }
  }
  return sides.sort((a, b) => a.length - b.length || a.grows - b.grows);
}
