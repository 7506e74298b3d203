import { boxOf, polygonArea, type Box, type Polygon } from '../geometry/polygon';
import { freeSpaces, occupy } from './free-spaces';
import type { CuttingTask } from './plan';
import { allTurns, shapeKey, turned, type Turn } from './poses';
import { coverOf, type Rect } from './slabs';

/** Panels that are alike count as one kind: same shape, however turned, and the same stock. */
export interface PanelKind {
  /** Numbers of its panels in the task. */
  readonly members: readonly number[];
  /** Numbers of the stock formats it may be cut from and whose sheet it fits. */
  readonly stock: readonly number[];
  /** These and the formats it may be cut from of which only a rack piece has room for it. */
  readonly allowed: readonly number[];
  /** Every way it may lie that differs from the others. */
  readonly poses: readonly Pose[];
  readonly isRectangle: boolean;
  /** True area, hundredths squared. */
  readonly area: number;
  /** Sides of its bounding rectangle. */
  readonly longSide: number;
  readonly shortSide: number;
}

export interface Pose {
  readonly turn: Turn;
  /** Lower left corner of its box at the origin. */
  readonly shape: Polygon;
  readonly width: number;
  readonly height: number;
  /** Rectangles that cover it. */
  readonly cover: readonly Rect[];
  /** Rectangles of waste inside its box, kerf to the panel taken off, apart from each other by a kerf. */
  readonly waste: readonly Rect[];
}

/**
 * @throws Error if a panel fits no stock format it may be cut from (the layout never makes such a panel)
 */
export function kindsOf(task: CuttingTask): PanelKind[] {
  const groups = new Map<string, Group>();
  const known = new Map<string, string>();
  task.panels.forEach((panel, number) => {
    const box = boxOf(panel.outline.outer);
    const may = task.stock.flatMap((format, number) => (panel.stock.includes(format.id) ? [number] : []));
    const stock = may.filter((number) => hasRoom(task.stock[number]!, box));
    const allowed = may.filter((number) => {
      const { id } = task.stock[number]!;
      return stock.includes(number) || task.rack.some((piece) => piece.stock === id && hasRoom(piece, box));
    });
    if (stock.length === 0) throw new Error(`Panel ${panel.mark} fits no stock sheet it may be cut from.`);
    const turns = allowed.some((s) => task.stock[s]!.hasFace) ? allTurns.slice(0, 4) : allTurns;
    const shape = turned(panel.outline, allTurns[0]!);
    const own = `${shapeKey(shape)}#${allowed.join()}`;
    let key = known.get(own);
    if (key === undefined) {
      const keys = turns.map((turn) => shapeKey(turned(shape, turn)));
      key = `${keys.sort()[0]!}#${allowed.join()}`;
      known.set(own, key);
    }
    const group = groups.get(key);
    if (group) group.members.push(number);
    else groups.set(key, { members: [number], shape, stock, allowed, turns });
  });
  return [...groups.values()].map(({ members, shape, stock, allowed, turns }) => {
    const { right, top } = boxOf(shape.outer);
    const area = polygonArea(shape);
    const isRectangle = area === right * top;
    return {
      members,
      stock,
      allowed,
      poses: posesOf(shape, turns, isRectangle, task.kerf),
      isRectangle,
      area,
      longSide: Math.max(right, top),
      shortSide: Math.min(right, top),
    };
  });
}

interface Group {
  readonly members: number[];
  readonly shape: Polygon;
  readonly stock: readonly number[];
  readonly allowed: readonly number[];
  readonly turns: readonly Turn[];
}

/** One way round or the other. */
function hasRoom(sheet: { width: number; height: number }, { left, bottom, right, top }: Box): boolean {
  const [width, height] = [right - left, top - bottom];
  return (width <= sheet.width && height <= sheet.height) || (height <= sheet.width && width <= sheet.height);
}

function posesOf(shape: Polygon, turns: readonly Turn[], isRectangle: boolean, kerf: number): Pose[] {
  const poses = new Map<string, Pose>();
  for (const turn of turns) {
    const lying = turned(shape, turn);
    const key = shapeKey(lying);
    if (poses.has(key)) continue;
    const { right: width, top: height } = boxOf(lying.outer);
    const cover = isRectangle ? [[0, 0, width, height] as const] : coverOf(lying);
    const waste = isRectangle ? [] : wasteOf(cover, width, height, kerf);
    poses.set(key, { turn, shape: lying, width, height, cover, waste });
  }
  return [...poses.values()];
}

/** Rectangles smaller than this are no use even to the smallest panel; 10 mm. */
const LEAST_WASTE = 1000;

/** The largest free rectangle of the box, then the largest of what is left, and so on. */
function wasteOf(cover: readonly Rect[], width: number, height: number, kerf: number): Rect[] {
  const free = freeSpaces(0, 0, width + kerf, height + kerf);
  const take = ([left, bottom, right, top]: Rect) =>
    occupy(free, left, bottom, right + kerf, top + kerf, kerf + LEAST_WASTE);
  cover.forEach(take);
  const waste: Rect[] = [];
  while (free.count > 0) {
    let best = 0;
    const area = (i: number) => (free.right[i]! - free.left[i]!) * (free.top[i]! - free.bottom[i]!);
    for (let i = 1; i < free.count; i++) if (area(i) > area(best)) best = i;
    const rect: Rect = [
      free.left[best]!,
      free.bottom[best]!,
      free.right[best]! - kerf,
      free.top[best]! - kerf,
    ];
    waste.push(rect);
    take(rect);
  }
  return waste;
}
