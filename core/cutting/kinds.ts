import { boxOf, polygonArea, type Polygon } from '../geometry/polygon';
import { freeSpaces, occupy } from './free-spaces';
import type { CuttingTask, StockFormat } from './plan';
import { allTurns, shapeKey, turned, type Turn } from './poses';
import { coverOf, type Rect } from './slabs';

/** Panels that are alike count as one kind: same shape, however turned, and the same stock. */
export interface PanelKind {
  /** Numbers of its panels in the task. */
  readonly members: readonly number[];
  /** Numbers of the stock formats it may be cut from and fits on. */
  readonly stock: readonly number[];
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
  const groups = new Map<
    string,
    { members: number[]; shape: Polygon; stock: number[]; turns: readonly Turn[] }
  >();
  const known = new Map<string, string>();
  task.panels.forEach((panel, number) => {
    const stock = stockFor(panel.outline, panel.stock, task.stock);
    if (stock.length === 0) throw new Error(`Panel ${panel.mark} fits no stock sheet it may be cut from.`);
    const turns = stock.some((s) => task.stock[s]!.hasFace) ? allTurns.slice(0, 4) : allTurns;
    const shape = turned(panel.outline, allTurns[0]!);
    const own = `${shapeKey(shape)}#${stock.join()}`;
    let key = known.get(own);
    if (key === undefined) {
      const keys = turns.map((turn) => shapeKey(turned(shape, turn)));
      key = `${keys.sort()[0]!}#${stock.join()}`;
      known.set(own, key);
    }
    const group = groups.get(key);
    if (group) group.members.push(number);
    else groups.set(key, { members: [number], shape, stock, turns });
  });
  return [...groups.values()].map(({ members, shape, stock, turns }) => {
    const { right, top } = boxOf(shape.outer);
    const area = polygonArea(shape);
    const isRectangle = area === right * top;
    return {
      members,
      stock,
      poses: posesOf(shape, turns, isRectangle, task.kerf),
      isRectangle,
      area,
      longSide: Math.max(right, top),
      shortSide: Math.min(right, top),
    };
  });
}

/** Stock formats that the panel may be cut from and whose sheet it fits, one way round or the other. */
function stockFor(outline: Polygon, ids: readonly string[], stock: readonly StockFormat[]): number[] {
  const { left, bottom, right, top } = boxOf(outline.outer);
  const [width, height] = [right - left, top - bottom];
  return stock.flatMap((format, number) => {
    const fits =
      (width <= format.width && height <= format.height) ||
      (height <= format.width && width <= format.height);
    return fits && ids.includes(format.id) ? [number] : [];
  });
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
