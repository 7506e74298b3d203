import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CutForest } from '../../core/cutting/goal/cut-forest';
import { FastRandom } from '../../core/cutting/goal/fast-random';
import { readGoalTask } from '../../core/cutting/goal/goal-task';
import {
  ALONG,
  BEFORE,
  FILLED,
  FIRST,
  FORMAT,
  HEIGHT,
  INNER,
  LEFTOVER,
  NEXT,
  NEXT_WASTE,
  NONE,
  PARENT,
  PLACE,
  ROOT,
  STOCK,
  WASTE,
  WAY,
  WHAT,
  WIDTH,
} from '../../core/cutting/goal/node-memory';
import { Recreate } from '../../core/cutting/goal/recreate';
import { closeEmptiest, ruin } from '../../core/cutting/goal/ruin';
import { readNestTask } from '../../core/cutting/nest';
import { nestWithRack } from '../../core/cutting/nest-with-rack';
import { orderedRules } from '../../core/cutting/rules';
import { randomTasks } from './random-tasks';

test('after random ruins, places and returns the forest is what its nodes say, counted anew', () => {
  fc.assert(
    fc.property(randomTasks('edge-to-edge'), fc.integer({ min: 1 }), (task, seed) => {
      const nestTask = readNestTask(task);
      const sheets = nestWithRack(nestTask, orderedRules(nestTask)[0]!);
      const goal = readGoalTask(nestTask, sheets, []);
      const forest = new CutForest(goal);
      const random = new FastRandom(seed);
      const recreate = new Recreate(forest, random);
      const dearest = Math.max(...goal.formats.map(({ charge }) => charge));
      forest.setLimit(dearest * task.panels.length);
      recreate.run(Infinity);
      expectSound(forest);
      for (let turn = 0; turn < 40; turn++) {
        if (turn % 10 === 9) {
          forest.setLimit(Math.max(0, forest.spent - 1));
          closeEmptiest(forest);
          recreate.run(Infinity);
        }
        forest.keep();
        const before = turn % 8 === 0 ? picture(forest) : '';
        ruin(forest, random);
        if (random.below(3) > 0) recreate.run(random.below(2) === 0 ? Infinity : 100_000);
        expectSound(forest);
        if (random.below(2) === 0) {
          forest.takeBack();
          expectSound(forest);
          if (before !== '') expect(picture(forest)).toBe(before);
        }
      }
    }),
    { numRuns: 50 },
  );
});

/** Everything that a forest remembers. */
function picture(forest: CutForest): string {
  return `${forest.memory.join()} ${forest.worth} ${forest.spent}`;
}

interface Counted {
  readonly placed: number[];
  readonly takings: number[];
  readonly leftovers: number[];
  worth: number;
}

function expectSound(forest: CutForest): void {
  const { memory, goal } = forest;
  const takings = Array.from(memory.subarray(forest.takings, forest.takings + forest.takingCount));
  const sheets = [...new Set(takings.map((node) => memory[node + ROOT]!))].filter(
    (root) => memory[root + FORMAT]! !== NONE,
  );
  const counted: Counted = { placed: [...goal.counts].fill(0), takings: [], leftovers: [], worth: 0 };
  for (const root of sheets) {
    const { width, height, stock } = goal.formats[memory[root + FORMAT]!]!;
    expect([memory[root + WIDTH], memory[root + HEIGHT], memory[root + STOCK]]).toEqual([
      width,
      height,
      stock,
    ]);
    expect(memory[root + WHAT]).not.toBe(LEFTOVER);
    countNode(forest, root, NONE, root, counted);
  }
  expect(counted.takings.sort()).toEqual(takings.sort());
  goal.counts.forEach((count, kind) =>
    expect(memory[forest.left + kind]! + counted.placed[kind]!, 'placed and left').toBe(count),
  );
  expect(forest.worth).toBe(counted.worth);

  let spent = 0;
  const unopened: number[] = [];
  goal.formats.forEach(({ charge, available }, format) => {
    const open = sheets.filter((root) => memory[root + FORMAT] === format).length;
    expect(memory[forest.open + format]).toBe(open);
    expect(open).toBeLessThanOrEqual(available);
    spent += open * charge;
    if (open < available && forest.spent + charge <= forest.limit) unopened.push(format);
  });
  expect(forest.spent).toBe(spent);
  expect(forest.spent).toBeLessThanOrEqual(forest.limit);

  const listed = Array.from({ length: forest.leftoverCount }, (_, i) => {
    const at = forest.leftovers + 4 * i;
    const node = memory[at + 2]!;
    expect(memory[node + PLACE]).toBe(i);
    expect([memory[at], memory[at + 1]]).toEqual([memory[node + WIDTH], memory[node + HEIGHT]]);
    if (forest.isUnopened(node)) expect(unopened).toContain(memory[node + FORMAT]);
    else expect(memory[at + 3]).toBe(memory[memory[node + ROOT]! + STOCK]);
    return node;
  });
  const opened = listed.filter((node) => !forest.isUnopened(node));
  expect(opened.sort()).toEqual(counted.leftovers.sort());
  expect(listed.length - opened.length).toBe(unopened.length);
}

/** @returns how full the node is, in millionths of the root */
function countNode(forest: CutForest, node: number, parent: number, root: number, counted: Counted): number {
  const { memory, goal } = forest;
  const field = (at: number) => memory[node + at]!;
  expect([field(PARENT), field(ROOT)]).toEqual([parent, root]);
  const what = field(WHAT);
  let filled = 0;
  if (what === LEFTOVER) {
    const worth = forest.worthOf(field(WIDTH), field(HEIGHT));
    counted.worth += worth;
    if (worth > 0) counted.leftovers.push(node);
    expect(Math.min(field(WIDTH), field(HEIGHT))).toBeGreaterThan(0);
    return 0;
  }
  counted.takings.push(node);
  if (what === INNER) {
    const along = field(ALONG);
    const [length, breadth] = along === 0 ? [WIDTH, HEIGHT] : [HEIGHT, WIDTH];
    let [number, sum, before] = [0, 0, NONE];
    for (let child = field(FIRST); child !== NONE; child = memory[child + NEXT]!) {
      expect(memory[child + BEFORE]).toBe(before);
      expect(memory[child + breadth]).toBe(field(breadth));
      if (memory[child + WHAT] === INNER) expect(memory[child + ALONG]).toBe(1 - along);
      if (memory[child + WHAT] === LEFTOVER) expect(number).toBe(0);
      sum += memory[child + length]!;
      filled += countNode(forest, child, node, root, counted);
      before = child;
      number++;
    }
    expect(number).toBeGreaterThan(1);
    expect(sum).toBe(field(length));
  } else {
    counted.placed[what]!++;
    const way = field(WAY);
    expect(way).toBeGreaterThanOrEqual(goal.firstWay[what]!);
    expect(way).toBeLessThan(goal.firstWay[what + 1]!);
    expect([field(WIDTH), field(HEIGHT)]).toEqual([goal.wayWidth[way], goal.wayHeight[way]]);
    expect(goal.allowed[what * goal.stockCount + memory[root + STOCK]!]).toBe(1);
    let wastes = 0;
    for (let waste = field(WASTE); waste !== NONE; waste = memory[waste + NEXT_WASTE]!, wastes++) {
      const w = goal.firstWaste[way]! + wastes;
      expect([memory[waste + WIDTH], memory[waste + HEIGHT]]).toEqual([
        goal.wasteWidth[w],
        goal.wasteHeight[w],
      ]);
      countNode(forest, waste, NONE, waste, counted);
    }
    expect(wastes).toBe(goal.firstWaste[way + 1]! - goal.firstWaste[way]!);
    const size = memory[root + WIDTH]! * memory[root + HEIGHT]!;
    filled = Math.round((1e6 * goal.area[what]! * goal.largest) / size);
  }
  if (parent === NONE) expect(field(FILLED)).toBe(filled);
  return filled;
}
