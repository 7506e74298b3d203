import { offsetRound } from '../geometry/clip';
import { polygonArea, regionArea } from '../geometry/polygon';
import { leastCover } from './least-cover';
import type { PanelKind } from './kinds';
import type { CuttingTask } from './plan';
import { inscribedRectangle } from './slabs';
import { weigh, type BoundSize, type Extent, type Visit } from './weighings';

export interface Bounds {
  /** Bought stock sheets that no plan can undercut. */
  readonly newSheets: number;
  /** Minor units. */
  readonly cost: number;
}

/**
 * What no plan of this task can undercut, for its method, kerf and rack.
 *
 * Panels are weighed in many ways, each with a most that a stock sheet and a rack piece can carry: by true area
 * grown by half a kerf all round, and by products of dual feasible functions of the sides. The stock sheets must
 * carry the weight that the rack cannot. A panel that is no rectangle is weighed as a rectangle inscribed in
 * it, so that whatever lies in its notches stays free.
 *
 * Kerf. Edge to edge, two rectangles are always a whole kerf apart in width or in height. Cut freely, and
 * beside panels that are no rectangles, they may lie corner to corner, and only kerf/√2 is sure.
 *
 * @param plan figures of some plan for this task: once the bounds reach them, nothing higher is looked for
 */
export function boundsOf(task: CuttingTask, kinds: readonly PanelKind[], plan?: Bounds): Bounds {
  let newSheets = 0;
  let cost = 0;
  const groups = connectedStock(task, kinds);
  for (const stock of groups) {
    const whole = boundOf(task, kinds, stock, groups.length === 1 ? plan : undefined);
    // Panels that one stock alone can give need stock sheets of that stock, whatever else the others do.
    const apart = stock.length > 1 ? stock.map((one) => boundOf(task, kinds, [one])) : [];
    newSheets += Math.max(whole.newSheets, sum(apart.map((bound) => bound.newSheets)));
    cost += Math.max(whole.cost, sum(apart.map((bound) => bound.cost)));
  }
  return { newSheets, cost };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Stock formats that share panels, directly or through others, stand together. */
function connectedStock(task: CuttingTask, kinds: readonly PanelKind[]): number[][] {
  let groups = task.stock.map((_, stock) => [stock]);
  for (const { allowed: stock } of kinds) {
    const joined = groups.filter((group) => group.some((one) => stock.includes(one)));
    if (joined.length > 1) groups = [...groups.filter((group) => !joined.includes(group)), joined.flat()];
  }
  return groups;
}

/** For the panels that only these formats can give. */
function boundOf(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  stock: readonly number[],
  enough: Bounds = { newSheets: Infinity, cost: Infinity },
): Bounds {
  const own = kinds.filter((kind) => kind.allowed.every((one) => stock.includes(one)));
  if (own.length === 0) return { newSheets: 0, cost: 0 };
  const bought = stock.map((one) => task.stock[one]!);
  const ids = new Set(stock.map((one) => task.stock[one]!.id));
  const rack = task.rack.filter((piece) => ids.has(piece.stock));
  const onlyRectangles = own.every(({ isRectangle }) => isRectangle);
  const kerf =
    task.method === 'edge-to-edge' && onlyRectangles ? task.kerf : Math.floor(task.kerf * Math.SQRT1_2);
  const grow = (size: { width: number; height: number }) => ({
    width: size.width + kerf,
    height: size.height + kerf,
  });
  const sizes = own.flatMap((kind): BoundSize[] => {
    const count = kind.members.length;
    if (kind.isRectangle) {
      return [{ ...grow({ width: kind.longSide, height: kind.shortSide }), count }];
    }
    const inscribed = inscribedRectangle(kind.poses[0]!.shape);
    if (!inscribed) return [];
    const [left, bottom, right, top] = inscribed;
    return [{ ...grow({ width: right - left, height: top - bottom }), count }];
  });
  const carriers: readonly Extent[] = [...bought, ...rack];
  let newSheets = 0;
  let cost = 0;
  const consider: Visit = (total, most) => {
    let rest = total;
    for (let c = bought.length; c < carriers.length; c++) rest -= most[c]!;
    const bound = leastCover(rest, bought, most);
    if (bound.newSheets > newSheets) newSheets = bound.newSheets;
    if (bound.cost > cost) cost = bound.cost;
    return newSheets >= enough.newSheets && cost >= enough.cost ? 'stop' : 'go on';
  };
  const half = Math.floor(task.kerf / 2);
  const byArea = consider(
    sum(own.map((kind) => kind.members.length * grownArea(kind, half))),
    carriers.map(({ width, height }) => width * height + 2 * (width + height) * half + Math.PI * half * half),
  );
  if (byArea === 'go on') weigh(sizes, carriers.map(grow), bought.length, consider);
  return { newSheets, cost };
}

/** Area of the panel and everything within half a kerf of it, a little less rather than more. */
function grownArea({ isRectangle, longSide, shortSide, area, poses }: PanelKind, half: number): number {
  if (half === 0) return area;
  if (isRectangle) return area + 2 * (longSide + shortSide) * half + Math.PI * half * half;
  const shape = poses[0]!.shape;
  const roundingLoss = 2 * polygonPerimeter(shape.outer) + 8 * half;
  return Math.max(polygonArea(shape), regionArea(offsetRound([shape], half)) - roundingLoss);
}

function polygonPerimeter(ring: readonly { x: number; y: number }[]): number {
  return ring.reduce((total, point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return total + Math.hypot(next.x - point.x, next.y - point.y);
  }, 0);
}
