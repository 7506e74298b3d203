import type { CutForest } from './cut-forest';
import type { FastRandom } from './fast-random';
import { HEIGHT, NONE, PLACE, WIDTH } from './node-memory';

/** One place in so many is passed over on purpose, so that the same ruin does not always heal the same way. */
const PASSED_OVER = 40;

/**
 * Places what is left out: the kind with the fewest places first, where it takes least from the worth of the leftovers.
 */
export class Recreate {
  /** What leaving out a panel of each kind counts; whole numbers, so that sums compare exactly. */
  readonly weight: Float64Array;
  /** Work done, ever, in units of about ten nanoseconds: the measure of a step. */
  work = 0;
  private readonly waiting: Int32Array;
  private readonly weightOfArea: Float64Array;
  /** By kind: how many places there are for it, and the cheapest. */
  private readonly options: Int32Array;
  private readonly price: Float64Array;
  private readonly node: Int32Array;
  private readonly way: Int32Array;
  private readonly along: Int32Array;
  private untilPassedOver = PASSED_OVER;

  constructor(
    private readonly forest: CutForest,
    private readonly random: FastRandom,
  ) {
    const { kindCount, area } = forest.goal;
    this.weightOfArea = area.map((share) => Math.ceil(1e6 * share));
    this.weight = Float64Array.from(this.weightOfArea);
    this.waiting = new Int32Array(kindCount);
    this.options = new Int32Array(kindCount);
    this.price = new Float64Array(kindCount);
    this.node = new Int32Array(kindCount);
    this.way = new Int32Array(kindCount);
    this.along = new Int32Array(kindCount);
  }

  /**
   * @param most gives up once what stays out weighs more
   * @returns weight of what stays out; Infinity if given up
   */
  run(most: number): number {
    const { forest, waiting, options, node, weight } = this;
    const { memory, left, leftovers } = forest;
    let count = 0;
    for (let kind = 0; kind < options.length; kind++) if (memory[left + kind]! > 0) waiting[count++] = kind;
    for (let i = 0; i < count; i++) this.lookEverywhere(waiting[i]!);
    let out = 0;
    while (count > 0) {
      const at = this.hardest(count);
      const kind = waiting[at]!;
      if (options[kind]! === 0) {
        out += memory[left + kind]! * weight[kind]!;
        if (out > most) return Infinity;
        waiting[at] = waiting[--count]!;
        continue;
      }
      const chosen = node[kind]!;
      const isUnopened = forest.isUnopened(chosen);
      const width = memory[chosen + WIDTH]!;
      const height = memory[chosen + HEIGHT]!;
      const stock = memory[leftovers + 4 * memory[chosen + PLACE]! + 3]!;
      forest.insert(chosen, kind, this.way[kind]!, this.along[kind]!);
      if (memory[left + kind]! === 0) waiting[at] = waiting[--count]!;
      for (let i = 0; i < count; i++) {
        const other = waiting[i]!;
        if (isUnopened || node[other] === chosen) {
          this.lookEverywhere(other);
          continue;
        }
        options[other]! -= this.waysInto(other, width, height, stock);
        for (let f = 0; f < forest.freshCount; f++) {
          this.look(other, leftovers + 4 * memory[forest.fresh[f]! + PLACE]!);
        }
      }
      this.work += 30;
    }
    return out;
  }

  /** Kinds left out count more from now on, so that others are left out in turn; returns what is out by the new weights. */
  weighMore(share: number): number {
    const { memory, left } = this.forest;
    let out = 0;
    for (let kind = 0; kind < this.options.length; kind++) {
      const number = memory[left + kind]!;
      if (number === 0) continue;
      this.weight[kind]! += Math.ceil(share * this.weightOfArea[kind]!);
      out += number * this.weight[kind]!;
    }
    return out;
  }

  /** Place in the list of the waiting kind with the fewest options, of equals the largest; now and then any. */
  private hardest(count: number): number {
    const { waiting, options, weightOfArea } = this;
    if (count === 1) return 0;
    let hardest = 0;
    let least = Infinity;
    let size = 0;
    for (let i = 0; i < count; i++) {
      const kind = waiting[i]!;
      const number = options[kind]!;
      if (number < least || (number === least && weightOfArea[kind]! > size)) {
        least = number;
        size = weightOfArea[kind]!;
        hardest = i;
      }
    }
    return least > 0 && this.isPassedOver() ? this.random.below(count) : hardest;
  }

  private isPassedOver(): boolean {
    if (--this.untilPassedOver > 0) return false;
    this.untilPassedOver = 1 + this.random.below(2 * PASSED_OVER);
    return true;
  }

  /** In how many ways the kind fits into a leftover. */
  private waysInto(kind: number, width: number, height: number, stock: number): number {
    const { firstWay, wayWidth, wayHeight, allowed, stockCount } = this.forest.goal;
    let number = 0;
    for (let way = firstWay[kind]!, end = firstWay[kind + 1]!; way < end; way++) {
      if (wayWidth[way]! <= width && wayHeight[way]! <= height) number++;
    }
    return number > 0 && allowed[kind * stockCount + stock]! === 0 ? 0 : number;
  }

  private lookEverywhere(kind: number): void {
    const { memory, leftovers, leftoverCount, goal } = this.forest;
    const way = goal.firstWay[kind]!;
    const short = Math.min(goal.wayWidth[way]!, goal.wayHeight[way]!);
    const long = Math.max(goal.wayWidth[way]!, goal.wayHeight[way]!);
    this.options[kind] = 0;
    this.price[kind] = Infinity;
    this.node[kind] = NONE;
    for (let at = leftovers, end = leftovers + 4 * leftoverCount; at < end; at += 4) {
      const width = memory[at]!;
      const height = memory[at + 1]!;
      if (width < short || height < short || (width < long && height < long)) continue;
      this.look(kind, at);
    }
    this.work += leftoverCount >> 3;
  }

  /** Counts the ways into a leftover of the list and remembers the cheapest so far. */
  private look(kind: number, at: number): void {
    const { forest, options, price, node } = this;
    const { memory, goal } = forest;
    const { firstWay, wayWidth, wayHeight, stockCount } = goal;
    const width = memory[at]!;
    const height = memory[at + 1]!;
    if (stockCount > 1 && goal.allowed[kind * stockCount + memory[at + 3]!]! === 0) return;
    for (let way = firstWay[kind]!, end = firstWay[kind + 1]!; way < end; way++) {
      const restX = width - wayWidth[way]!;
      const restY = height - wayHeight[way]!;
      if (restX < 0 || restY < 0) continue;
      options[kind]!++;
      this.work += 3;
      if (this.isPassedOver() && node[kind] !== NONE) continue;
      const beside = forest.worthOf(restX, height) + forest.worthOf(wayWidth[way]!, restY);
      const above = forest.worthOf(width, restY) + forest.worthOf(restX, wayHeight[way]!);
      const own = forest.worthOf(width, height) - (beside > above ? beside : above);
      if (own >= price[kind]!) continue;
      price[kind] = own;
      node[kind] = memory[at + 2]!;
      this.way[kind] = way;
      this.along[kind] = beside > above ? 0 : 1;
    }
  }
}
