import { treeOf, type CutTree } from '../cut-tree';
import type { FilledPlace, WasteSpace } from '../fill-sheet';
import type { NestedSheet } from '../nest';
import { arePartedEdgeToEdge } from '../separable';
import type { Rect } from '../slabs';
import type { CutForest } from './cut-forest';
import { formatOf } from './goal-task';
import {
  ALONG,
  FIRST,
  FORMAT,
  HEIGHT,
  INNER,
  LEFTOVER,
  NEXT,
  NEXT_WASTE,
  NONE,
  ROOT,
  WASTE,
  WAY,
  WHAT,
  WIDTH,
} from './node-memory';

/**
 * Opens the sheets of a plan with what lies on them, whatever the limit. Panels in the waste of others, and all panels of a
 * sheet that does not part edge to edge, are left out.
 */
export function plantSheets(forest: CutForest, sheets: readonly NestedSheet[]): void {
  const { goal } = forest;
  const { kinds, task } = goal.nestTask;
  const numberOf = new Map([...goal.kinds].map((kind, number) => [kind, number]));
  for (const sheet of sheets) {
    const places = sheet.filled.places.filter(({ space }) => space === 0);
    const boxes = places.map(({ kind, pose, x, y }): Rect => {
      const { width, height } = kinds[kind]!.poses[pose]!;
      return [x, y, x + width + task.kerf, y + height + task.kerf];
    });
    const tree = partedTree(boxes);
    if (!tree) continue;
    forest.plant(formatOf(goal.formats, sheet), tree, (box) => {
      const kind = numberOf.get(places[box]!.kind)!;
      const [left, , right] = boxes[box]!;
      const way = goal.firstWay[kind]!;
      return [kind, goal.wayWidth[way] === right - left ? way : way + 1];
    });
  }
}

/** null if the boxes overlap or do not part. Boxes of panels interlocked in free cutting may overlap. */
function partedTree(boxes: readonly Rect[]): CutTree | null {
  const overlap = boxes.some(([left, bottom, right, top], i) =>
    boxes.some((b, j) => j < i && left < b[2] && b[0] < right && bottom < b[3] && b[1] < top),
  );
  const parted =
    !overlap &&
    arePartedEdgeToEdge({
      count: boxes.length,
      left: boxes.map(([left]) => left),
      bottom: boxes.map(([, bottom]) => bottom),
      right: boxes.map(([, , right]) => right),
      top: boxes.map(([, , , top]) => top),
    });
  return parted ? treeOf(boxes, 'x') : null;
}

/** The open sheets with coordinates: leftovers to the right and at the top. */
export function writeSheets(forest: CutForest): NestedSheet[] {
  const { memory, goal } = forest;
  const roots = new Set<number>();
  for (let i = 0; i < forest.takingCount; i++) roots.add(memory[memory[forest.takings + i]! + ROOT]!);
  return [...roots].flatMap((root) => {
    const format = memory[root + FORMAT]!;
    if (format === NONE) return [];
    const { stock, rack } = goal.formats[format]!;
    return [{ stock, rack, filled: writeSheet(forest, root) }];
  });
}

/** A space still to be written: its root, its number, and where its corner lies in the frame of its places. */
type Open = readonly [root: number, space: number, x: number, y: number];

function writeSheet({ memory, goal }: CutForest, sheet: number): NestedSheet['filled'] {
  const { kinds, task } = goal.nestTask;
  const isFree = task.method === 'free';
  const places: FilledPlace[] = [];
  const spaces: WasteSpace[] = [];
  const open: Open[] = [[sheet, 0, 0, 0]];
  let area = 0;
  for (let next = open.shift(); next; next = open.shift()) {
    const [root, space, x0, y0] = next;
    const visit = (node: number, x: number, y: number): void => {
      const what = memory[node + WHAT]!;
      if (what === INNER) {
        for (let child = memory[node + FIRST]!; child !== NONE; child = memory[child + NEXT]!) {
          if (memory[child + WHAT]! === LEFTOVER) continue;
          visit(child, x, y);
          if (memory[node + ALONG]! === 0) x += memory[child + WIDTH]!;
          else y += memory[child + HEIGHT]!;
        }
      } else if (what >= 0) {
        const kind = goal.kinds[what]!;
        const pose = goal.wayPose[memory[node + WAY]!]!;
        const { waste } = kinds[kind]!.poses[pose]!;
        const host = places.length;
        places.push({ kind, pose, x, y, space });
        area += kinds[kind]!.area;
        let inside = memory[node + WASTE]!;
        waste.forEach(([left, bottom], number) => {
          // Cut freely, there is one frame; edge to edge, every space has its own.
          if (isFree) open.push([inside, 0, x + left, y + bottom]);
          else {
            spaces.push({ host, waste: number });
            open.push([inside, spaces.length, 0, 0]);
          }
          inside = memory[inside + NEXT_WASTE]!;
        });
      }
    };
    visit(root, x0, y0);
  }
  return { places, spaces, area };
}
