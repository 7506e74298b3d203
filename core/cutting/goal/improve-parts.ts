import type { NestedSheet, NestTask } from '../nest';
import type { Random } from '../random';
import { sizeOf } from '../write-plan';
import { improveByGoal } from './improve';

/** A plan of more panels than this is improved a part at a time; so many panels make a part. */
const MOST_PANELS = 800;
const PART_PANELS = 400;
/** Steps without success after which another part is taken. */
const PATIENCE = 150;
/** How many sheets of a part are the emptiest there are, the others being any. */
const SHARE_EMPTIEST = 0.5;
/** A stock sheet filled beyond this share can give nothing back. */
const FULL = 0.999;

/**
 * `improveByGoal` for plans of any size: of a large one some sheets at a time, mostly emptier ones, each part until it
 * has given nothing for a while.
 */
export function* improveInParts(
  nestTask: NestTask,
  start: readonly NestedSheet[],
  random: Random,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  const fillOf = (sheet: NestedSheet) => {
    const { width, height } = sizeOf(nestTask, sheet);
    return sheet.filled.area / (width * height);
  };
  const full = start.filter((sheet) => fillOf(sheet) >= FULL);
  let open = start.filter((sheet) => fillOf(sheet) < FULL);
  if (panelsOn(open) <= MOST_PANELS) {
    for (const better of improveByGoal(nestTask, open, random, full)) yield better && [...full, ...better];
    return;
  }
  for (;;) {
    open.sort((a, b) => fillOf(a) - fillOf(b));
    const chosen = choosePart(open, random);
    let part: readonly NestedSheet[] = open.filter((sheet) => chosen.has(sheet));
    const rest = open.filter((sheet) => !chosen.has(sheet));
    const search = improveByGoal(nestTask, part, random, [...full, ...rest]);
    for (let patience = PATIENCE; patience > 0; patience--) {
      const better = search.next();
      if (better.done) break;
      if (better.value) {
        part = better.value;
        patience = PATIENCE;
        yield [...full, ...rest, ...part];
      } else yield undefined;
    }
    open = [...rest, ...part];
    yield undefined;
  }
}

/** @param sheets the emptiest first */
function choosePart(sheets: readonly NestedSheet[], random: Random): Set<NestedSheet> {
  const chosen = new Set<NestedSheet>();
  let panels = 0;
  for (let next = 0; panels < PART_PANELS && chosen.size < sheets.length;) {
    let sheet = sheets[Math.floor(random() * sheets.length)]!;
    if (random() < SHARE_EMPTIEST) sheet = sheets[next++]!;
    if (chosen.has(sheet)) continue;
    chosen.add(sheet);
    panels += sheet.filled.places.length;
  }
  return chosen;
}

function panelsOn(sheets: readonly NestedSheet[]): number {
  return sheets.reduce((sum, { filled }) => sum + filled.places.length, 0);
}
