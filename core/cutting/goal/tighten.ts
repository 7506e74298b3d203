import {
  ALONG,
  BEFORE,
  FIRST,
  HEIGHT,
  INNER,
  LEFTOVER,
  NEXT,
  NONE,
  PARENT,
  WHAT,
  WIDTH,
  type NodeMemory,
} from './node-memory';

/** Once something has been taken out of it: makes a piece, and every piece above it, as narrow as its panels let it be. */
export function tightenUpwards(forest: NodeMemory, lowest: number): void {
  const { memory } = forest;
  let piece = lowest;
  for (let above = memory[piece + PARENT]!; above !== NONE; above = memory[piece + PARENT]!) {
    tighten(forest, piece, above);
    piece = above;
  }
}

/** The breadth that every child of a piece has left over goes to the leftover beside the piece. */
function tighten(forest: NodeMemory, piece: number, above: number): void {
  const { memory } = forest;
  const across = memory[piece + ALONG]! === 0 ? HEIGHT : WIDTH;
  const spare = spareBreadth(memory, piece, across);
  if (spare === 0) return;
  let child = memory[piece + FIRST]!;
  while (child !== NONE) {
    const next = memory[child + NEXT]!;
    if (memory[child + WHAT]! === LEFTOVER) narrow(forest, child, across, spare);
    else {
      const leftover = memory[child + FIRST]!;
      forest.put(child + across, memory[child + across]! - spare);
      if (memory[leftover + across]! > spare) narrow(forest, leftover, across, spare);
      else {
        forest.dropLeftover(leftover);
        forest.unlink(leftover, child);
        forest.freeNode(leftover);
        const only = memory[child + FIRST]!;
        if (memory[only + NEXT]! === NONE) absorb(forest, piece, child, only);
      }
    }
    child = next;
  }
  forest.put(piece + across, memory[piece + across]! - spare);
  const width = across === WIDTH ? spare : memory[above + WIDTH]!;
  const height = across === WIDTH ? memory[above + HEIGHT]! : spare;
  addLeftover(forest, above, width, height);
}

/** 0 if some child needs the whole breadth of the piece. */
function spareBreadth(memory: Int32Array, piece: number, across: number): number {
  let spare = Infinity;
  for (let child = memory[piece + FIRST]!; child !== NONE; child = memory[child + NEXT]!) {
    const what = memory[child + WHAT]!;
    if (what === LEFTOVER) continue;
    if (what !== INNER) return 0;
    const first = memory[child + FIRST]!;
    if (memory[first + WHAT]! !== LEFTOVER) return 0;
    if (memory[first + across]! < spare) spare = memory[first + across]!;
  }
  return spare;
}

function narrow(forest: NodeMemory, leftover: number, side: number, by: number): void {
  const width = forest.memory[leftover + WIDTH]!;
  const height = forest.memory[leftover + HEIGHT]!;
  if (side === WIDTH) forest.resizeLeftover(leftover, width - by, height);
  else forest.resizeLeftover(leftover, width, height - by);
}

/** A leftover as broad as the piece joins the leftover the piece has, or becomes it. */
function addLeftover(forest: NodeMemory, piece: number, width: number, height: number): void {
  const { memory } = forest;
  const first = memory[piece + FIRST]!;
  if (memory[first + WHAT]! === LEFTOVER) {
    const [side, by] = memory[piece + ALONG]! === 0 ? [WIDTH, width] : [HEIGHT, height];
    narrow(forest, first, side, -by);
    return;
  }
  const leftover = forest.newNode(piece, width, height);
  forest.putFirst(leftover, piece);
  forest.makeLeftover(leftover, width, height);
}

/** A child with a single child gives it its place; one that is cut the piece's own way is dissolved in the piece. */
function absorb(forest: NodeMemory, piece: number, child: number, only: number): void {
  const { memory } = forest;
  forest.dropTaking(child);
  if (memory[only + WHAT]! !== INNER) {
    replace(forest, piece, child, only, only);
    forest.freeNode(child);
    return;
  }
  forest.dropTaking(only);
  const leftover = memory[only + FIRST]!;
  const hasLeftover = memory[leftover + WHAT]! === LEFTOVER;
  const width = memory[leftover + WIDTH]!;
  const height = memory[leftover + HEIGHT]!;
  if (hasLeftover) {
    forest.dropLeftover(leftover);
    forest.unlink(leftover, only);
    forest.freeNode(leftover);
  }
  const first = memory[only + FIRST]!;
  let last = first;
  for (;;) {
    forest.put(last + PARENT, piece);
    const next = memory[last + NEXT]!;
    if (next === NONE) break;
    last = next;
  }
  replace(forest, piece, child, first, last);
  forest.freeNode(only);
  forest.freeNode(child);
  if (hasLeftover) addLeftover(forest, piece, width, height);
}

/** A run of nodes takes a child's place. */
function replace(forest: NodeMemory, piece: number, child: number, first: number, last: number): void {
  const { memory } = forest;
  const before = memory[child + BEFORE]!;
  const next = memory[child + NEXT]!;
  forest.put(first + PARENT, piece);
  forest.put(first + BEFORE, before);
  forest.put(last + NEXT, next);
  if (before === NONE) forest.put(piece + FIRST, first);
  else forest.put(before + NEXT, first);
  if (next !== NONE) forest.put(next + BEFORE, last);
}
