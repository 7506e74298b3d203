import type { Mm } from '../units';
import { boxesOverlap, type PaperBox } from './paper';

/**
 * Where labels stand along a line so that none touches its neighbour and all are as near as can be to what
 * they label (least sum of squared shifts).
 *
 * @param labels in ascending order of `at`; `size` is the extent along the line, mm
 * @param gap free space between two neighbours
 * @returns the middle of each label, in order; undefined if they do not fit between `from` and `to`
 * Method: isotonic regression by pooling adjacent violators (Ayer et al. 1955), on the positions less the
 * room that the labels before them take.
 */
export function spreadAlong(
  labels: readonly { readonly at: Mm; readonly size: Mm }[],
  gap: Mm,
  from: Mm,
  to: Mm,
): Mm[] | undefined {
  if (labels.length === 0) return [];
  const offsets: Mm[] = [0];
  for (let i = 1; i < labels.length; i++) {
    offsets.push(offsets[i - 1]! + (labels[i - 1]!.size + labels[i]!.size) / 2 + gap);
  }
  const least = from + labels[0]!.size / 2;
  const most = to - labels.at(-1)!.size / 2 - offsets.at(-1)!;
  if (most < least - 1e-9) return undefined;
  const pools: { sum: number; count: number }[] = [];
  labels.forEach(({ at }, i) => {
    pools.push({ sum: at - offsets[i]!, count: 1 });
    while (pools.length > 1 && meanOf(pools.at(-2)!) > meanOf(pools.at(-1)!)) {
      const last = pools.pop()!;
      const before = pools.pop()!;
      pools.push({ sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const free = pools.flatMap((pool) => Array<number>(pool.count).fill(meanOf(pool)));
  return free.map((value, i) => Math.min(Math.max(value, least), most) + offsets[i]!);
}

function meanOf({ sum, count }: { sum: number; count: number }): number {
  return sum / count;
}

/** What already stands on a page. Boxes that only share an edge do not touch. */
export interface PlacedBoxes {
  readonly add: (box: PaperBox) => void;
  readonly isFree: (box: PaperBox) => boolean;
}

export function createPlacedBoxes(): PlacedBoxes {
  const cells = new Map<string, PaperBox[]>();
  return {
    add: (box) => {
      for (const key of cellKeys(box)) {
        const cell = cells.get(key);
        if (cell) cell.push(box);
        else cells.set(key, [box]);
      }
    },
    isFree: (box) =>
      cellKeys(box).every((key) => !(cells.get(key) ?? []).some((other) => boxesOverlap(box, other))),
  };
}

const cellSize = 10;

function cellKeys({ left, bottom, right, top }: PaperBox): string[] {
  const keys: string[] = [];
  for (let column = Math.floor(left / cellSize); column <= Math.floor(right / cellSize); column++) {
    for (let row = Math.floor(bottom / cellSize); row <= Math.floor(top / cellSize); row++) {
      keys.push(`${column} ${row}`);
    }
  }
  return keys;
}
