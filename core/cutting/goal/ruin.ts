import type { CutForest } from './cut-forest';
import type { FastRandom } from './fast-random';
import { FILLED, FORMAT, NONE, ROOT } from './node-memory';

/** How many nodes are taken out on average: anywhere, and from two or three sheets alone. */
const ANYWHERE = 4;
const FROM_FEW = 6;
/** How often the sheets are few, and how often the emptier of two is preferred otherwise. */
const SHARE_FROM_FEW = 0.5;
const SHARE_EMPTIER = 0.5;
/** Draws for a node of the few sheets. */
const DRAWS = 60;

/** Takes a few random nodes out: panels, and inner nodes with all that is in them. */
export function ruin(forest: CutForest, random: FastRandom): void {
  if (random.share() < SHARE_FROM_FEW) ruinFew(forest, random);
  else ruinAnywhere(forest, random);
}

function ruinAnywhere(forest: CutForest, random: FastRandom): void {
  const { memory } = forest;
  for (let more = 1 + random.below(2 * ANYWHERE - 1); more > 0 && forest.takingCount > 0; more--) {
    let node = anyNode(forest, random);
    if (random.share() < SHARE_EMPTIER) {
      const other = anyNode(forest, random);
      if (memory[memory[other + ROOT]! + FILLED]! < memory[memory[node + ROOT]! + FILLED]!) node = other;
    }
    forest.remove(node, true);
  }
}

function ruinFew(forest: CutForest, random: FastRandom): void {
  const { memory } = forest;
  if (forest.takingCount === 0) return;
  const a = memory[anyNode(forest, random) + ROOT]!;
  const b = memory[anyNode(forest, random) + ROOT]!;
  const c = random.share() < 0.5 ? b : memory[anyNode(forest, random) + ROOT]!;
  for (let more = 1 + random.below(2 * FROM_FEW - 1); more > 0 && forest.takingCount > 0; more--) {
    let draws = DRAWS;
    let node: number;
    let root: number;
    do {
      if (draws-- === 0) return;
      node = anyNode(forest, random);
      root = memory[node + ROOT]!;
    } while (root !== a && root !== b && root !== c);
    forest.remove(node, true);
  }
}

function anyNode(forest: CutForest, random: FastRandom): number {
  return forest.memory[forest.takings + random.below(forest.takingCount)]!;
}

/** Closes the emptiest sheets until those that are open can be paid. */
export function closeEmptiest(forest: CutForest): void {
  const { memory } = forest;
  while (forest.spent > forest.limit && forest.takingCount > 0) {
    let emptiest = NONE;
    let least = Infinity;
    for (let i = 0; i < forest.takingCount; i++) {
      const root = memory[memory[forest.takings + i]! + ROOT]!;
      if (memory[root + FORMAT]! === NONE || memory[root + FILLED]! >= least) continue;
      emptiest = root;
      least = memory[root + FILLED]!;
    }
    forest.remove(emptiest, false);
  }
}
