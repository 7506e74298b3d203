import type { Rect } from './slabs';

/*
 * An edge-to-edge plan of one rectangle: rows of rows of panels, without coordinates. Laid out again from the
 * tree, everything moves as far to the lower left as it can, and what is left over gathers at the right and top.
 */

export type CutTree =
  | { readonly box: number; readonly width: number; readonly height: number }
  | {
      /** 'x': children stand side by side; 'y': one above the other. */
      readonly along: 'x' | 'y';
      readonly children: readonly CutTree[];
      readonly width: number;
      readonly height: number;
    };

/** A cut and what it leaves, kerf still included: real lengths are less by one kerf. */
export interface TreeLayout {
  /** Lower left corner by number of box. */
  readonly at: Map<number, readonly [x: number, y: number]>;
  /** In the order of cutting; a kerf's lower or left bank. */
  readonly cuts: (readonly [x0: number, y0: number, x1: number, y1: number])[];
  readonly leftover: Rect[];
}

/**
 * @param boxes kerf included; they must be parted by cuts that run right across (see `separable.ts`)
 * @param first direction preferred where both would do
 * @throws Error if they cannot be parted
 */
export function treeOf(boxes: readonly Rect[], first: 'x' | 'y'): CutTree {
  return grow(
    boxes.map((_, i) => i),
    boxes,
    first,
  );
}

function grow(members: readonly number[], boxes: readonly Rect[], first: 'x' | 'y'): CutTree {
  if (members.length === 1) {
    const [left, bottom, right, top] = boxes[members[0]!]!;
    return { box: members[0]!, width: right - left, height: top - bottom };
  }
  for (const along of first === 'x' ? (['x', 'y'] as const) : (['y', 'x'] as const)) {
    const parts = partsAlong(members, boxes, along === 'x' ? 0 : 1);
    if (parts.length === 1) continue;
    const children = parts.map((part) => grow(part, boxes, first));
    const sum = (side: 'width' | 'height') => children.reduce((total, child) => total + child[side], 0);
    const most = (side: 'width' | 'height') => Math.max(...children.map((child) => child[side]));
    return along === 'x'
      ? { along, children, width: sum('width'), height: most('height') }
      : { along, children, width: most('width'), height: sum('height') };
  }
  throw new Error('These panels cannot be parted edge to edge.');
}

function partsAlong(members: readonly number[], boxes: readonly Rect[], low: 0 | 1): number[][] {
  const sorted = [...members].sort((a, b) => boxes[a]![low] - boxes[b]![low] || a - b);
  const parts: number[][] = [];
  let reach = -Infinity;
  for (const member of sorted) {
    const box = boxes[member]!;
    if (box[low] >= reach) parts.push([]);
    parts[parts.length - 1]!.push(member);
    reach = Math.max(reach, box[low + 2]!);
  }
  return parts;
}

/**
 * Cuts the tree out of a rectangle. Leftovers come off first, the larger one across the whole piece.
 *
 * @param tree null: nothing is on it
 * @param width, height of the rectangle, kerf included
 */
export function layOutTree(tree: CutTree | null, width: number, height: number, kerf: number): TreeLayout {
  const layout: TreeLayout = { at: new Map(), cuts: [], leftover: [] };
  if (tree) layOut(tree, 0, 0, width, height, kerf, layout);
  else layout.leftover.push([0, 0, width, height]);
  return layout;
}

function layOut(
  tree: CutTree,
  x: number,
  y: number,
  width: number,
  height: number,
  kerf: number,
  out: TreeLayout,
): void {
  const trimRight = (full: number) => {
    if (tree.width === width) return;
    out.cuts.push([x + tree.width - kerf, y, x + tree.width - kerf, y + full - kerf]);
    out.leftover.push([x + tree.width, y, x + width, y + full]);
  };
  const trimTop = (full: number) => {
    if (tree.height === height) return;
    out.cuts.push([x, y + tree.height - kerf, x + full - kerf, y + tree.height - kerf]);
    out.leftover.push([x, y + tree.height, x + full, y + height]);
  };
  if ((width - tree.width - kerf) * (height - kerf) >= (height - tree.height - kerf) * (width - kerf)) {
    trimRight(height);
    trimTop(tree.width);
  } else {
    trimTop(width);
    trimRight(tree.height);
  }
  if ('box' in tree) {
    out.at.set(tree.box, [x, y]);
    return;
  }
  let [cx, cy] = [x, y];
  const pieces = tree.children.map((child, i) => {
    const piece = [cx, cy] as const;
    if (tree.along === 'x') cx += child.width;
    else cy += child.height;
    const last = i + 1 === tree.children.length;
    if (!last && tree.along === 'x') out.cuts.push([cx - kerf, y, cx - kerf, y + tree.height - kerf]);
    if (!last && tree.along === 'y') out.cuts.push([x, cy - kerf, x + tree.width - kerf, cy - kerf]);
    return piece;
  });
  tree.children.forEach((child, i) => {
    const [px, py] = pieces[i]!;
    if (tree.along === 'x') layOut(child, px, py, child.width, tree.height, kerf, out);
    else layOut(child, px, py, tree.width, child.height, kerf, out);
  });
}
