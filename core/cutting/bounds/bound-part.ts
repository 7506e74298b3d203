import { offsetRound } from '../../geometry/clip';
import { isRectilinear, polygonArea, regionArea } from '../../geometry/polygon';
import type { PanelKind } from '../kinds';
import { leastCover, type CoverFormat } from '../least-cover';
import type { Steps } from '../../panels/pace';
import type { CuttingTask, StockFormat } from '../plan';
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

interface PartContent {
  readonly own: readonly PanelKind[];
  readonly formats: readonly CoverFormat[];
  readonly bought: readonly StockFormat[];
  /** What every side of a panel and of a sheet is grown by. */
  readonly kerf: number;
  readonly sizes: readonly BoundSize[];
  readonly notches: readonly Notch[];
}

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

  private constructor(
    private readonly task: CuttingTask,
    { own, formats, bought, kerf, sizes, notches }: PartContent,
    private readonly plan: Bounds,
  ) {
    const ids = new Set(bought.map(({ id }) => id));
    const grow = ({ width, height }: Extent) => ({ width: width + kerf, height: height + kerf });
    this.own = own;
    this.formats = formats;
    this.plain = [...bought, ...task.rack.filter((piece) => ids.has(piece.stock))];
    this.sizes = sizes;
    this.notches = notches;
    this.carriers = [...this.plain.map(grow), ...notches];
  }

  /**
   * @param stock numbers of the formats
   * @param plan figures of some plan of the part: nothing higher is looked for
   */
  static *read(
    task: CuttingTask,
    kinds: readonly PanelKind[],
    stock: readonly number[],
    plan: Bounds = { newSheets: Infinity, cost: Infinity },
    hasCounts = false,
  ): Steps<BoundPart> {
    const own = kinds.filter((kind) => kind.allowed.every((one) => stock.includes(one)));
    const bought = stock.map((one) => task.stock[one]!);
    const formats = bought.map(({ price, available }) => ({
      price,
      available: hasCounts ? available : undefined,
    }));
    const takesBox = (kind: PanelKind) =>
      task.method === 'edge-to-edge' && isRectilinear(kind.poses[0]!.shape);
    const kerf = own.every(takesBox) ? task.kerf : Math.floor(task.kerf * Math.SQRT1_2);
    const all: BoundSize[] = [];
    for (const kind of own) {
      const count = kind.members.length;
      if (kind.isRectangle || takesBox(kind))
        all.push({ width: kind.longSide + kerf, height: kind.shortSide + kerf, count });
      else {
        for (const size of inscribedRectangles(kind.poses[0]!.shape, kerf)) all.push({ ...size, count });
        yield undefined;
      }
    }
    const hosts = kinds.filter(
      (kind) => !kind.isRectangle && takesBox(kind) && kind.allowed.some((one) => stock.includes(one)),
    );
    const notches = yield* notchesOf(hosts, task.kerf);
    yield undefined;
    return new BoundPart(task, { own, formats, bought, kerf, ...withoutGuests(all, notches) }, plan);
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

export function* boundGroups(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  plan?: Bounds,
): Steps<BoundGroup[]> {
  const hasCounts = plan !== undefined && plan.cost < SHORT;
  const groups: BoundGroup[] = [];
  const all = connectedStock(task, kinds);
  for (const stock of all) {
    const whole = yield* BoundPart.read(task, kinds, stock, all.length === 1 ? plan : undefined, hasCounts);
    const apart: BoundPart[] = [];
    if (stock.length > 1)
      for (const one of stock) apart.push(yield* BoundPart.read(task, kinds, [one], undefined, hasCounts));
    groups.push({ whole, apart });
  }
  return groups;
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
