import { offsetRound } from '../../geometry/clip';
import { isRectilinear, polygonArea, regionArea } from '../../geometry/polygon';
import type { PanelKind } from '../kinds';
import { leastCover, type CoverFormat } from '../least-cover';
import type { CuttingTask } from '../plan';
import type { BoundSize, Extent, Visit } from '../weighings';
import { inscribedRectangles } from './inscribed';
import { notchesOf, withoutGuests, type Notch } from './notches';

export interface Bounds {
  /** Bought stock sheets that no plan can undercut. */
  readonly newSheets: number;
  /** Minor units. */
  readonly cost: number;
}

/** A plan charged this much buys more than can be had (see `shortage.ts`); then counts bind nobody. */
const SHORT = 1e12;

/** The panels that only certain formats can give, ready to be weighed, and what is known so far. */
export class BoundPart {
  newSheets = 0;
  cost = 0;
  /** Rectangles that lie in the panels or that they take up, kerf included. */
  readonly sizes: readonly BoundSize[];
  /** Whatever holds panels, kerf included: the formats, then their rack, then notches of other panels. */
  readonly carriers: readonly Extent[];
  readonly formats: readonly CoverFormat[];
  private readonly own: readonly PanelKind[];
  private readonly plain: readonly Extent[];
  private readonly notches: readonly Notch[];

  /**
   * @param stock numbers of the formats
   * @param plan figures of some plan of the part: nothing higher is looked for
   */
  constructor(
    private readonly task: CuttingTask,
    kinds: readonly PanelKind[],
    stock: readonly number[],
    private readonly plan: Bounds = { newSheets: Infinity, cost: Infinity },
    hasCounts = false,
  ) {
    this.own = kinds.filter((kind) => kind.allowed.every((one) => stock.includes(one)));
    const bought = stock.map((one) => task.stock[one]!);
    this.formats = bought.map(({ price, available }) => ({
      price,
      available: hasCounts ? available : undefined,
    }));
    const ids = new Set(bought.map(({ id }) => id));
    this.plain = [...bought, ...task.rack.filter((piece) => ids.has(piece.stock))];
    const takesBox = (kind: PanelKind) =>
      task.method === 'edge-to-edge' && isRectilinear(kind.poses[0]!.shape);
    const kerf = this.own.every(takesBox) ? task.kerf : Math.floor(task.kerf * Math.SQRT1_2);
    const grow = ({ width, height }: Extent) => ({ width: width + kerf, height: height + kerf });
    const all = this.own.flatMap((kind): BoundSize[] => {
      const count = kind.members.length;
      if (kind.isRectangle || takesBox(kind))
        return [{ ...grow({ width: kind.longSide, height: kind.shortSide }), count }];
      return inscribedRectangles(kind.poses[0]!.shape, kerf).map((size) => ({ ...size, count }));
    });
    const hosts = kinds.filter(
      (kind) => !kind.isRectangle && takesBox(kind) && kind.allowed.some((one) => stock.includes(one)),
    );
    const { sizes, notches } = withoutGuests(all, notchesOf(hosts, task.kerf));
    this.sizes = sizes;
    this.notches = notches;
    this.carriers = [...this.plain.map(grow), ...notches];
  }

  get isEmpty(): boolean {
    return this.own.length === 0;
  }

  get isProved(): boolean {
    return this.newSheets >= this.plan.newSheets && this.cost >= this.plan.cost;
  }

  /** What a weighing says: the stock sheets must carry the weight that the rack, and the notches, cannot. */
  readonly consider: Visit = (total, most) => {
    const { formats, plain, notches } = this;
    let rest = total;
    for (let c = formats.length; c < most.length; c++)
      rest -= most[c]! * (notches[c - plain.length]?.count ?? 1);
    const bound = leastCover(rest, this.formats, most, this.cost);
    if (bound.newSheets > this.newSheets) this.newSheets = bound.newSheets;
    if (bound.cost > this.cost) this.cost = bound.cost;
    return this.isProved ? 'stop' : 'go on';
  };

  /** By true area grown by half a kerf all round. */
  considerArea(): void {
    const half = Math.floor(this.task.kerf / 2);
    this.consider(
      this.own.reduce((sum, kind) => sum + kind.members.length * grownArea(kind, half), 0),
      this.plain.map(({ width, height }) => grownRectangle(width, height, half)),
    );
  }
}

/**
 * Formats that share panels, directly or through others, are bound together, and each by the panels that it
 * alone can give.
 */
export interface BoundGroup {
  readonly whole: BoundPart;
  readonly apart: readonly BoundPart[];
}

export function boundGroups(task: CuttingTask, kinds: readonly PanelKind[], plan?: Bounds): BoundGroup[] {
  const hasCounts = plan !== undefined && plan.cost < SHORT;
  const groups = connectedStock(task, kinds);
  return groups.map((stock) => ({
    whole: new BoundPart(task, kinds, stock, groups.length === 1 ? plan : undefined, hasCounts),
    apart:
      stock.length > 1 ? stock.map((one) => new BoundPart(task, kinds, [one], undefined, hasCounts)) : [],
  }));
}

/** What all groups need together. */
export function sumOf(groups: readonly BoundGroup[]): Bounds {
  let newSheets = 0;
  let cost = 0;
  for (const { whole, apart } of groups) {
    newSheets += Math.max(
      whole.newSheets,
      apart.reduce((sum, part) => sum + part.newSheets, 0),
    );
    cost += Math.max(
      whole.cost,
      apart.reduce((sum, part) => sum + part.cost, 0),
    );
  }
  return { newSheets, cost };
}

function connectedStock(task: CuttingTask, kinds: readonly PanelKind[]): number[][] {
  let groups = task.stock.map((_, stock) => [stock]);
  for (const { allowed: stock } of kinds) {
    const joined = groups.filter((group) => group.some((one) => stock.includes(one)));
    if (joined.length > 1) groups = [...groups.filter((group) => !joined.includes(group)), joined.flat()];
  }
  return groups;
}

/** Area of the panel and everything within half a kerf of it, a little less rather than more. */
function grownArea({ isRectangle, longSide, shortSide, area, poses }: PanelKind, half: number): number {
  if (half === 0) return area;
  if (isRectangle) return grownRectangle(longSide, shortSide, half);
  const shape = poses[0]!.shape;
  const roundingLoss = 2 * polygonPerimeter(shape.outer) + 8 * half;
  return Math.max(polygonArea(shape), regionArea(offsetRound([shape], half)) - roundingLoss);
}

function grownRectangle(width: number, height: number, half: number): number {
  return width * height + 2 * (width + height) * half + Math.PI * half * half;
}

function polygonPerimeter(ring: readonly { x: number; y: number }[]): number {
  return ring.reduce((total, point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return total + Math.hypot(next.x - point.x, next.y - point.y);
  }, 0);
}
