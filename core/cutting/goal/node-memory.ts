import type { GoalTask } from './goal-task';

/*
 * The memory of a `CutForest`. Everything lies in one array of whole numbers: the nodes of the trees, the leftovers
 * that may take a panel, everything that may be taken out, and what is not placed. Every write is noted, so that a
 * change that turns out worse is taken back by playing the notes backwards, without copying anything.
 */

/** Fields of a node; a node's number is where it begins in the memory. */
export const WIDTH = 0;
export const HEIGHT = 1;
/** Number of the kind for a panel, or LEFTOVER, INNER or UNUSED. */
export const WHAT = 2;
/** Of a panel: its way round. */
export const WAY = 3;
/** Of an inner node: 0 if its children lie side by side, 1 if one above the other. */
export const ALONG = 4;
/** The node above, or NONE for a root. */
export const PARENT = 5;
export const FIRST = 6;
export const NEXT = 7;
export const BEFORE = 8;
export const ROOT = 9;
/** Place in the list of leftovers (NONE for one of no use), else in that of what may be taken out. */
export const PLACE = 10;
/** Of a root: its format, or NONE for one of waste. */
export const FORMAT = 11;
/** Of a root: the stock it is of. */
export const STOCK = 12;
/** Of a root: how full it is, in millionths. */
export const FILLED = 13;
/** Of a panel: the first root of waste in it, or NONE. */
export const WASTE = 14;
/** Of a root of waste: the next one in the same panel. */
export const NEXT_WASTE = 15;
const STRIDE = 16;

export const LEFTOVER = -1;
export const INNER = -2;
export const UNUSED = -3;
export const NONE = -1;

const LEFTOVERS = 0;
const TAKINGS = 1;
const FREE = 2;
const TOP = 3;
const HEADER = 4;

export class NodeMemory {
  readonly memory: Int32Array;
  /** Where the leftovers of use are listed, four numbers each: width, height, node, stock. */
  readonly leftovers: number;
  /** Where panels and inner nodes are listed. */
  readonly takings: number;
  /** Where it is counted how many panels of each kind are not placed. */
  readonly left: number;
  /** Where it is counted how many sheets of each format are open. */
  readonly open: number;
  /** Worth of all leftovers in open sheets. */
  worth = 0;
  /** Charges of the open sheets. */
  spent = 0;

  private notes = new Int32Array(1 << 12);
  private noted = 0;
  private worthKept = 0;
  private spentKept = 0;
  private readonly scale: number;

  constructor(readonly goal: GoalTask) {
    const { kindCount, formats, counts, mostWaste } = goal;
    const panels = counts.reduce((sum, count) => sum + count, 0);
    const most = (6 + mostWaste) * panels + 2 * formats.length + 16;
    this.left = HEADER;
    this.open = this.left + kindCount;
    this.leftovers = this.open + formats.length;
    this.takings = this.leftovers + 4 * most;
    const nodes = this.takings + most;
    this.memory = new Int32Array(nodes + most * STRIDE);
    this.memory[FREE] = NONE;
    this.memory[TOP] = nodes;
    this.memory.set(counts, this.left);
    this.scale = 2 ** 20 / goal.largest;
  }

  /**
   * What a leftover may be good for: its area to a power above 1, so that few large leftovers are worth more than
   * many small ones; 0 where no panel fits. A whole number, so that sums stay exact.
   */
  worthOf(width: number, height: number): number {
    const { leastShort, leastLong } = this.goal;
    if (
      width < height ? width < leastShort || height < leastLong : height < leastShort || width < leastLong
    ) {
      return 0;
    }
    const area = width * height * this.scale;
    return Math.floor(area * Math.sqrt(Math.sqrt(area)));
  }

  get leftoverCount(): number {
    return this.memory[LEFTOVERS]!;
  }

  get takingCount(): number {
    return this.memory[TAKINGS]!;
  }

  /** What has been done since the last time stays. */
  keep(): void {
    this.noted = 0;
    this.worthKept = this.worth;
    this.spentKept = this.spent;
  }

  /** Takes back everything since `keep`. */
  takeBack(): void {
    const { notes, memory } = this;
    for (let n = this.noted - 2; n >= 0; n -= 2) memory[notes[n]!] = notes[n + 1]!;
    this.noted = 0;
    this.worth = this.worthKept;
    this.spent = this.spentKept;
  }

  put(at: number, value: number): void {
    const n = this.noted;
    if (n === this.notes.length) {
      const longer = new Int32Array(2 * n);
      longer.set(this.notes);
      this.notes = longer;
    }
    this.notes[n] = at;
    this.notes[n + 1] = this.memory[at]!;
    this.noted = n + 2;
    this.memory[at] = value;
  }

  /** A node below `parent` that is nothing yet. */
  newNode(parent: number, width: number, height: number): number {
    const { memory } = this;
    let node = memory[FREE]!;
    if (node === NONE) {
      node = memory[TOP]!;
      this.put(TOP, node + STRIDE);
    } else this.put(FREE, memory[node + NEXT]!);
    this.put(node + WIDTH, width);
    this.put(node + HEIGHT, height);
    this.put(node + WHAT, UNUSED);
    this.put(node + PARENT, parent);
    this.put(node + ROOT, parent === NONE ? node : memory[parent + ROOT]!);
    this.put(node + NEXT, NONE);
    this.put(node + BEFORE, NONE);
    this.put(node + PLACE, NONE);
    return node;
  }

  freeNode(node: number): void {
    this.put(node + WHAT, UNUSED);
    this.put(node + NEXT, this.memory[FREE]!);
    this.put(FREE, node);
  }

  makeLeftover(node: number, width: number, height: number): void {
    const { memory } = this;
    this.put(node + WIDTH, width);
    this.put(node + HEIGHT, height);
    this.put(node + WHAT, LEFTOVER);
    const worth = this.worthOf(width, height);
    if (worth === 0) {
      this.put(node + PLACE, NONE);
      return;
    }
    this.worth += worth;
    this.list(node, memory[memory[node + ROOT]! + STOCK]!);
  }

  /** The node is no leftover any more. */
  dropLeftover(node: number): void {
    const { memory } = this;
    if (memory[node + PLACE]! === NONE) return;
    this.worth -= this.worthOf(memory[node + WIDTH]!, memory[node + HEIGHT]!);
    this.unlist(node);
  }

  resizeLeftover(node: number, width: number, height: number): void {
    this.dropLeftover(node);
    this.makeLeftover(node, width, height);
  }

  list(node: number, stock: number): void {
    const { memory } = this;
    const place = memory[LEFTOVERS]!;
    const at = this.leftovers + 4 * place;
    this.put(at, memory[node + WIDTH]!);
    this.put(at + 1, memory[node + HEIGHT]!);
    this.put(at + 2, node);
    this.put(at + 3, stock);
    this.put(node + PLACE, place);
    this.put(LEFTOVERS, place + 1);
  }

  unlist(node: number): void {
    const { memory } = this;
    const place = memory[node + PLACE]!;
    const last = memory[LEFTOVERS]! - 1;
    if (place !== last) {
      const from = this.leftovers + 4 * last;
      const to = this.leftovers + 4 * place;
      for (let i = 0; i < 4; i++) this.put(to + i, memory[from + i]!);
      this.put(memory[from + 2]! + PLACE, place);
    }
    this.put(node + PLACE, NONE);
    this.put(LEFTOVERS, last);
  }

  addTaking(node: number): void {
    const place = this.memory[TAKINGS]!;
    this.put(this.takings + place, node);
    this.put(node + PLACE, place);
    this.put(TAKINGS, place + 1);
  }

  dropTaking(node: number): void {
    const { memory } = this;
    const place = memory[node + PLACE]!;
    const last = memory[TAKINGS]! - 1;
    if (place !== last) {
      const other = memory[this.takings + last]!;
      this.put(this.takings + place, other);
      this.put(other + PLACE, place);
    }
    this.put(node + PLACE, NONE);
    this.put(TAKINGS, last);
  }

  /** A node becomes the first child; it must know its parent. */
  putFirst(node: number, parent: number): void {
    const first = this.memory[parent + FIRST]!;
    this.put(node + BEFORE, NONE);
    this.put(node + NEXT, first);
    if (first !== NONE) this.put(first + BEFORE, node);
    this.put(parent + FIRST, node);
  }

  putAfter(node: number, before: number): void {
    const next = this.memory[before + NEXT]!;
    this.put(node + BEFORE, before);
    this.put(node + NEXT, next);
    this.put(before + NEXT, node);
    if (next !== NONE) this.put(next + BEFORE, node);
  }

  unlink(node: number, parent: number): void {
    const { memory } = this;
    const before = memory[node + BEFORE]!;
    const next = memory[node + NEXT]!;
    if (before === NONE) this.put(parent + FIRST, next);
    else this.put(before + NEXT, next);
    if (next !== NONE) this.put(next + BEFORE, before);
  }
}
