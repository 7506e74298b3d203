import { boxOf, translate, type Point, type Polygon } from '../geometry/polygon';
import { layOutTree, treeOf, type TreeLayout } from './cut-tree';
import type { FilledSheet } from './fill-sheet';
import { freeSpaces, occupy } from './free-spaces';
import type { PanelKind } from './kinds';
import { openingCuts } from './opening-cuts';
import type { Cut, CuttingTask, Offcut } from './plan';
import type { Rect } from './slabs';
import { cutLength, traceCuts } from './trace-cuts';

/** A cut, and for one that opens a notch or hole the place of the panel it belongs to. */
export interface DrawnCut extends Cut {
  readonly host?: number;
}

export interface DrawnPanel {
  readonly kind: number;
  readonly pose: number;
}

/** A filled stock sheet with coordinates, cuts and offcuts; which panel of a kind lies where is still open. */
export interface DrawnSheet {
  /** Shapes of the panels in the stock sheet's frame; a slanted pair has two. */
  readonly shapes: readonly Polygon[];
  /** Which kind, in which pose, each shape is; of a slanted pair by the single kinds. */
  readonly panels: readonly DrawnPanel[];
  readonly cuts: readonly DrawnCut[];
  readonly offcuts: readonly Offcut[];
  /** Area of the largest offcut that is kept; 0 without one. */
  readonly largestOffcut: number;
  /** Rounded to whole hundredths, so that sums are exact. */
  readonly cutLength: number;
  /** Equal where the same kinds lie at the same places. */
  readonly pattern: string;
}

export function drawSheet(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  width: number,
  height: number,
  filled: FilledSheet,
  single: readonly PanelKind[] = kinds,
): DrawnSheet {
  if (task.method === 'free') return drawFree(task, kinds, width, height, filled);
  const drawn = (['x', 'y'] as const).map((first) =>
    drawEdgeToEdge(task, kinds, width, height, filled, first, single),
  );
  const [a, b] = drawn as [DrawnSheet, DrawnSheet];
  return b.largestOffcut > a.largestOffcut ||
    (b.largestOffcut === a.largestOffcut && b.cutLength < a.cutLength)
    ? b
    : a;
}

function drawFree(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  width: number,
  height: number,
  filled: FilledSheet,
): DrawnSheet {
  const { kerf } = task;
  const free = freeSpaces(0, 0, width + kerf, height + kerf);
  const shapes = filled.places.map(({ kind, pose: number, x, y }) => {
    const pose = kinds[kind]!.poses[number]!;
    for (const [left, bottom, right, top] of pose.cover) {
      occupy(free, x + left, y + bottom, x + right + kerf, y + top + kerf, kerf + 1);
    }
    return translate(pose.shape, x, y);
  });
  const offcuts: Offcut[] = [];
  while (free.count > 0) {
    let best: Offcut | null = null;
    for (let i = 0; i < free.count; i++) {
      const offcut = offcutOf([free.left[i]!, free.bottom[i]!, free.right[i]!, free.top[i]!], task);
      if (!best || worth(offcut) > worth(best)) best = offcut;
    }
    const { x, y, width: w, height: h } = best!;
    offcuts.push(best!);
    occupy(free, x, y, x + w + kerf, y + h + kerf, kerf + 1);
  }
  const kept = offcuts.filter(({ keep }) => keep);
  const rects = kept.map(({ x, y, width: w, height: h }): Rect => [x, y, x + w, y + h]);
  return finished(filled, kinds, shapes, traceCuts(shapes, rects, width, height, kerf), offcuts);
}

function drawEdgeToEdge(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  width: number,
  height: number,
  filled: FilledSheet,
  first: 'x' | 'y',
  single: readonly PanelKind[],
): DrawnSheet {
  const { places, spaces } = filled;
  const { kerf } = task;
  const shapes: Polygon[] = [];
  const corners: (readonly [number, number])[] = [];
  const cuts: DrawnCut[] = [];
  const offcuts: Offcut[] = [];
  const cutOut = (space: number, x: number, y: number, w: number, h: number) => {
    const members = places.flatMap((place, i) => (place.space === space ? [i] : []));
    const boxes = members.map((member): Rect => {
      const place = places[member]!;
      const pose = kinds[place.kind]!.poses[place.pose]!;
      return [place.x, place.y, place.x + pose.width + kerf, place.y + pose.height + kerf];
    });
    const tree = boxes.length > 0 ? treeOf(boxes, first) : null;
    const layout: TreeLayout = layOutTree(tree, w + kerf, h + kerf, kerf);
    for (const [x0, y0, x1, y1] of layout.cuts) {
      cuts.push({ from: { x: x + x0, y: y + y0 }, to: { x: x + x1, y: y + y1 } });
    }
    for (const [left, bottom, right, top] of layout.leftover) {
      const offcut = offcutOf([x + left, y + bottom, x + right, y + top], task);
      if (offcut.width > 0 && offcut.height > 0) offcuts.push(offcut);
    }
    members.forEach((member, i) => {
      const [bx, by] = layout.at.get(i)!;
      const place = places[member]!;
      corners[member] = [x + bx, y + by];
      shapes[member] = translate(kinds[place.kind]!.poses[place.pose]!.shape, x + bx, y + by);
    });
  };
  cutOut(0, 0, 0, width, height);
  places.forEach((place, host) => {
    if (kinds[place.kind]!.isRectangle) return;
    const pose = kinds[place.kind]!.poses[place.pose]!;
    const [x, y] = corners[host]!;
    const opened = spaces.flatMap((space, i) => {
      if (space.host !== host) return [];
      const rect = pose.waste[space.waste]!;
      const isUsed = places.some((guest) => guest.space === i + 1);
      const [left, bottom, right, top] = rect;
      const { keep } = offcutOf([left, bottom, right + kerf, top + kerf], task);
      return isUsed || keep ? [{ number: i + 1, rect }] : [];
    });
    for (const [from, to] of openingCuts(
      pose,
      opened.map(({ rect }) => rect),
      kerf,
    )) {
      cuts.push({
        from: { x: x + from.x, y: y + from.y },
        to: { x: x + to.x, y: y + to.y },
        host,
      });
    }
    for (const { number, rect } of opened) {
      const [left, bottom, right, top] = rect;
      cutOut(number, x + left, y + bottom, right - left, top - bottom);
    }
  });
  const whole = finished(filled, kinds, shapes, cuts, offcuts);
  return places.some(({ kind, pose }) => kinds[kind]!.poses[pose]!.parts)
    ? partPairs(whole, filled, kinds, single, corners)
    : whole;
}

/** Every slanted pair parted by one more cut, after its rectangle has come out. */
function partPairs(
  whole: DrawnSheet,
  { places }: FilledSheet,
  kinds: readonly PanelKind[],
  single: readonly PanelKind[],
  corners: readonly (readonly [number, number])[],
): DrawnSheet {
  const shapes: Polygon[] = [];
  const panels: DrawnPanel[] = [];
  const slants: DrawnCut[] = [];
  const numbers = places.map((place, i) => {
    const number = shapes.length;
    const [x, y] = corners[i]!;
    const { parts, slant } = kinds[place.kind]!.poses[place.pose]!;
    if (!parts || !slant) {
      shapes.push(whole.shapes[i]!);
      panels.push(whole.panels[i]!);
      return number;
    }
    for (const { kind, pose, x: left, y: bottom } of parts) {
      shapes.push(translate(single[kind]!.poses[pose]!.shape, x + left, y + bottom));
      panels.push({ kind, pose });
    }
    const [from, to] = slant.map((point) => ({ x: x + point.x, y: y + point.y })) as [Point, Point];
    slants.push({ from, to });
    return number;
  });
  const cuts = whole.cuts.map((cut) => (cut.host === undefined ? cut : { ...cut, host: numbers[cut.host]! }));
  const length = slants.reduce((sum, cut) => sum + cutLength(cut), whole.cutLength);
  return { ...whole, shapes, panels, cuts: [...cuts, ...slants], cutLength: Math.round(length) };
}

function offcutOf([left, bottom, right, top]: Rect, { kerf, leastOffcut }: CuttingTask): Offcut {
  const [width, height] = [right - kerf - left, top - kerf - bottom];
  const [a, b] = leastOffcut;
  const keep = width > 0 && height > 0 && ((width >= a && height >= b) || (width >= b && height >= a));
  return { x: left, y: bottom, width, height, keep };
}

/** Any offcut that is kept before any that is not, then by area. */
function worth({ width, height, keep }: Offcut): number {
  return width * height + (keep ? 1e15 : 0);
}

function finished(
  { places }: FilledSheet,
  kinds: readonly PanelKind[],
  shapes: readonly Polygon[],
  cuts: readonly DrawnCut[],
  offcuts: readonly Offcut[],
): DrawnSheet {
  let largestOffcut = 0;
  for (const { width, height, keep } of offcuts) {
    if (keep) largestOffcut = Math.max(largestOffcut, width * height);
  }
  // Most sheets drawn are trials that never come to be compared by it.
  let pattern: string | undefined;
  return {
    shapes,
    panels: places.map(({ kind, pose }) => ({ kind: kinds[kind]!.single ?? kind, pose })),
    cuts,
    offcuts,
    largestOffcut,
    cutLength: Math.round(cuts.reduce((sum, cut) => sum + cutLength(cut), 0)),
    get pattern() {
      pattern ??= places
        .map(({ kind, pose }, i) => `${kind} ${pose} ${cornerKey(shapes[i]!)}`)
        .sort()
        .join();
      return pattern;
    },
  };
}

/** The least corner of a shape tells where it lies, as places of one kind and pose differ only by a move. */
function cornerKey({ outer }: Polygon): string {
  const { left, bottom } = boxOf(outer);
  return `${left} ${bottom}`;
}
