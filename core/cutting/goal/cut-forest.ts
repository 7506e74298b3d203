import type { CutTree } from '../cut-tree';
import type { GoalTask } from './goal-task';
import {
  ALONG,
  FIRST,
  FILLED,
  FORMAT,
  HEIGHT,
  INNER,
  LEFTOVER,
  NEXT,
  NEXT_WASTE,
  NodeMemory,
  NONE,
  PARENT,
  PLACE,
  ROOT,
  STOCK,
  WASTE,
  WAY,
  WHAT,
  WIDTH,
} from './node-memory';
import { tightenUpwards } from './tighten';

/*
 * Stock sheets being cut edge to edge, as a forest of trees without coordinates. An inner node is a piece whose
 * children lie side by side or one above the other, as long as the piece is broad, each cut the other way; a leaf is
 * a panel or a leftover. A piece has at least two children, of which at most one, the first, is a leftover: pieces
 * may change places, so what is left over gathers. Rectangles of waste inside a panel's box are roots of their own
 * while the panel is placed. Sheets open when a panel is put on them and close when they are empty.
 */
export class CutForest extends NodeMemory {
  /** What the charges of open sheets may come to. */
  limit = 0;
  /** Leftovers of use that the last `insert` made. */
  readonly fresh: Int32Array;
  freshCount = 0;
  /** By format: a leftover that stands for all sheets of it that are not open. */
  private readonly unopened: Int32Array;

  constructor(goal: GoalTask) {
    super(goal);
    this.fresh = new Int32Array(2 + goal.mostWaste);
    this.unopened = Int32Array.from(goal.formats, ({ width, height }, format) => {
      const node = this.newNode(NONE, width, height);
      this.put(node + WHAT, LEFTOVER);
      this.put(node + ROOT, NONE);
      this.put(node + FORMAT, format);
      return node;
    });
    this.keep();
  }

  setLimit(limit: number): void {
    this.limit = limit;
    this.offerSheets();
  }

  /** Whether a leftover of the list stands for sheets that are not open. */
  isUnopened(leftover: number): boolean {
    return this.memory[leftover + ROOT]! === NONE;
  }

  /** Lists an unopened sheet of every format that is left and can be paid. */
  private offerSheets(): void {
    const { formats } = this.goal;
    for (let f = 0; f < formats.length; f++) {
      const { available, charge, stock } = formats[f]!;
      const node = this.unopened[f]!;
      const isOffered = this.memory[this.open + f]! < available && this.spent + charge <= this.limit;
      if (isOffered === (this.memory[node + PLACE]! !== NONE)) continue;
      if (isOffered) this.list(node, stock);
      else this.unlist(node);
    }
  }

  private openSheet(format: number): number {
    const { width, height, stock, charge } = this.goal.formats[format]!;
    const root = this.newNode(NONE, width, height);
    this.put(root + FORMAT, format);
    this.put(root + STOCK, stock);
    this.put(root + FILLED, 0);
    this.put(this.open + format, this.memory[this.open + format]! + 1);
    this.spent += charge;
    this.offerSheets();
    return root;
  }

  private closeSheet(root: number): void {
    const format = this.memory[root + FORMAT]!;
    this.put(this.open + format, this.memory[this.open + format]! - 1);
    this.spent -= this.goal.formats[format]!.charge;
    this.freeNode(root);
    this.offerSheets();
  }

  /** What sheets that could still be opened would add to the worth of leftovers, at the best rate for the charge. */
  unopenedWorth(): number {
    const { formats, stockCount } = this.goal;
    let rate = 0;
    let worth = 0;
    for (let f = 0; f < formats.length; f++) {
      const { width, height, charge } = formats[f]!;
      if (f >= stockCount) {
        if (this.memory[this.open + f]! === 0) worth += this.worthOf(width, height);
      } else rate = Math.max(rate, this.worthOf(width, height) / charge);
    }
    return worth + Math.floor((this.limit - this.spent) * rate);
  }

  /**
   * Places a panel in the lower left of a leftover.
   *
   * @param leftover from the list; an unopened one opens a sheet
   * @param along which cut comes first where there are two: 0 the one beside the panel, 1 the one above it
   */
  insert(leftover: number, kind: number, way: number, along: number): void {
    const { memory, goal } = this;
    this.freshCount = 0;
    let node = leftover;
    if (this.isUnopened(leftover)) node = this.openSheet(memory[leftover + FORMAT]!);
    else this.dropLeftover(node);
    const width = goal.wayWidth[way]!;
    const height = goal.wayHeight[way]!;
    const restX = memory[node + WIDTH]! - width;
    const restY = memory[node + HEIGHT]! - height;
    let panel = node;
    if (restX > 0 && restY > 0)
      panel = this.divide(this.divide(node, along, width, height), 1 - along, width, height);
    else if (restX > 0) panel = this.divide(node, 0, width, height);
    else if (restY > 0) panel = this.divide(node, 1, width, height);
    this.makePanel(panel, kind, way);
  }

  /**
   * Cuts a piece off a node that is nothing at the moment; the rest becomes a leftover.
   *
   * @param width, height the one along the cut is ignored
   * @returns the piece, being nothing
   */
  private divide(node: number, along: number, width: number, height: number): number {
    const { memory } = this;
    const parent = memory[node + PARENT]!;
    const fullWidth = memory[node + WIDTH]!;
    const fullHeight = memory[node + HEIGHT]!;
    let rest = node;
    let whole = parent;
    if (parent === NONE || memory[parent + ALONG]! !== along) {
      whole = node;
      this.put(whole + WHAT, INNER);
      this.put(whole + ALONG, along);
      this.put(whole + FIRST, NONE);
      this.addTaking(whole);
      rest = this.newNode(whole, 0, 0);
      this.putFirst(rest, whole);
    }
    const piece = this.newNode(whole, along === 0 ? width : fullWidth, along === 0 ? fullHeight : height);
    this.putAfter(piece, rest);
    if (along === 0) this.makeLeftover(rest, fullWidth - width, fullHeight);
    else this.makeLeftover(rest, fullWidth, fullHeight - height);
    if (memory[rest + PLACE]! !== NONE) this.fresh[this.freshCount++] = rest;
    return piece;
  }

  private makePanel(node: number, kind: number, way: number): void {
    const { memory, goal } = this;
    const root = memory[node + ROOT]!;
    this.put(node + WHAT, kind);
    this.put(node + WAY, way);
    this.put(root + FILLED, memory[root + FILLED]! + this.shareOf(kind, root));
    this.put(this.left + kind, memory[this.left + kind]! - 1);
    this.addTaking(node);
    let next = NONE;
    for (let w = goal.firstWaste[way + 1]! - 1; w >= goal.firstWaste[way]!; w--) {
      const waste = this.newNode(NONE, goal.wasteWidth[w]!, goal.wasteHeight[w]!);
      this.put(waste + FORMAT, NONE);
      this.put(waste + STOCK, memory[root + STOCK]!);
      this.put(waste + FILLED, 0);
      this.put(waste + NEXT_WASTE, next);
      this.makeLeftover(waste, goal.wasteWidth[w]!, goal.wasteHeight[w]!);
      if (memory[waste + PLACE]! !== NONE) this.fresh[this.freshCount++] = waste;
      next = waste;
    }
    this.put(node + WASTE, next);
  }

  private shareOf(kind: number, root: number): number {
    const { memory, goal } = this;
    return Math.round(
      (1e6 * goal.area[kind]! * goal.largest) / (memory[root + WIDTH]! * memory[root + HEIGHT]!),
    );
  }

  /**
   * Takes a panel or an inner node out with all that is in it; an emptied sheet is closed.
   *
   * @param tight whether pieces above are made as narrow as their panels let them be
   */
  remove(taken: number, tight: boolean): void {
    const { memory } = this;
    let node = taken;
    this.empty(node);
    for (;;) {
      const parent = memory[node + PARENT]!;
      if (parent === NONE) break;
      let width = memory[node + WIDTH]!;
      let height = memory[node + HEIGHT]!;
      const first = memory[parent + FIRST]!;
      if (first !== node) {
        this.unlink(node, parent);
        if (memory[first + WHAT]! === LEFTOVER) {
          if (memory[parent + ALONG]! === 0) width += memory[first + WIDTH]!;
          else height += memory[first + HEIGHT]!;
          this.dropLeftover(first);
          this.freeNode(node);
          node = first;
        } else this.putFirst(node, parent);
      }
      if (memory[node + NEXT]! !== NONE) {
        this.makeLeftover(node, width, height);
        if (tight) tightenUpwards(this, parent);
        return;
      }
      this.freeNode(node);
      this.dropTaking(parent);
      node = parent;
    }
    if (memory[node + FORMAT]! === NONE)
      this.makeLeftover(node, memory[node + WIDTH]!, memory[node + HEIGHT]!);
    else this.closeSheet(node);
  }

  /** Frees everything below a node and in its waste, and takes it off the lists; the node itself is nothing then. */
  private empty(node: number): void {
    const { memory } = this;
    const what = memory[node + WHAT]!;
    if (what === LEFTOVER) {
      this.dropLeftover(node);
      return;
    }
    this.dropTaking(node);
    if (what === INNER) {
      let child = memory[node + FIRST]!;
      while (child !== NONE) {
        const next = memory[child + NEXT]!;
        this.empty(child);
        this.freeNode(child);
        child = next;
      }
      return;
    }
    const root = memory[node + ROOT]!;
    this.put(root + FILLED, memory[root + FILLED]! - this.shareOf(what, root));
    this.put(this.left + what, memory[this.left + what]! + 1);
    let waste = memory[node + WASTE]!;
    while (waste !== NONE) {
      const next = memory[waste + NEXT_WASTE]!;
      this.empty(waste);
      this.freeNode(waste);
      waste = next;
    }
  }

  /** Opens a sheet and places the panels of a tree on it, whatever the limit. */
  plant(format: number, tree: CutTree, panelOf: (box: number) => readonly [kind: number, way: number]): void {
    this.freshCount = 0;
    this.grow(this.openSheet(format), tree, panelOf);
  }

  private grow(start: number, tree: CutTree, panelOf: (box: number) => readonly [number, number]): void {
    const { memory } = this;
    let node = start;
    const parent = memory[node + PARENT]!;
    const across = parent === NONE ? 0 : 1 - memory[parent + ALONG]!;
    for (const along of [across, 1 - across]) {
      const rest = along === 0 ? memory[node + WIDTH]! - tree.width : memory[node + HEIGHT]! - tree.height;
      if (rest > 0) node = this.divide(node, along, tree.width, tree.height);
    }
    if ('box' in tree) {
      const [kind, way] = panelOf(tree.box);
      this.makePanel(node, kind, way);
      this.freshCount = 0;
      return;
    }
    const along = tree.along === 'x' ? 0 : 1;
    let rest = node;
    for (const child of tree.children.slice(0, -1)) {
      this.dropLeftover(rest);
      const piece = this.divide(rest, along, child.width, child.height);
      if (memory[rest + WHAT]! === INNER) rest = memory[rest + FIRST]!;
      this.freshCount = 0;
      this.grow(piece, child, panelOf);
    }
    this.dropLeftover(rest);
    this.grow(rest, tree.children[tree.children.length - 1]!, panelOf);
  }
}
