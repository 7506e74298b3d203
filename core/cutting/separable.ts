/*
 * Whether boxes can be parted by cuts that each run right across the piece being cut. If one such cut exists,
 * making it never does harm: what could be parted before can be parted on either side of it. So the first cut
 * found is taken.
 */

export interface Boxes {
  count: number;
  left: number[];
  bottom: number[];
  right: number[];
  top: number[];
}

/** True for the first `boxes.count` boxes; they must not overlap. Three or fewer always part. */
export function arePartedEdgeToEdge(boxes: Boxes): boolean {
  if (boxes.count <= 3) return true;
  for (let i = 0; i < boxes.count; i++) order[i] = i;
  return partsRun(boxes, 0, boxes.count);
}

/** Box numbers; a run of it is one piece. Reused between calls. */
const order: number[] = [];

function partsRun(boxes: Boxes, from: number, to: number): boolean {
  if (to - from <= 3) return true;
  return (
    partsAlong(boxes, boxes.left, boxes.right, from, to) ||
    partsAlong(boxes, boxes.bottom, boxes.top, from, to)
  );
}

function partsAlong(boxes: Boxes, low: number[], high: number[], from: number, to: number): boolean {
  sortRun(low, from, to);
  let reach = high[order[from]!]!;
  const starts = [from];
  for (let i = from + 1; i < to; i++) {
    const box = order[i]!;
    if (low[box]! >= reach) starts.push(i);
    if (high[box]! > reach) reach = high[box]!;
  }
  if (starts.length === 1) return false;
  starts.push(to);
  for (let i = 0; i + 1 < starts.length; i++) if (!partsRun(boxes, starts[i]!, starts[i + 1]!)) return false;
  return true;
}

/** Insertion sort: runs are short and nearly in order. */
function sortRun(key: number[], from: number, to: number): void {
  for (let i = from + 1; i < to; i++) {
    const box = order[i]!;
    const value = key[box]!;
    let j = i - 1;
    while (j >= from && key[order[j]!]! > value) {
      order[j + 1] = order[j]!;
      j--;
    }
    order[j + 1] = box;
  }
}
