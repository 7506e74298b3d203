import { fillSheet } from './fill-sheet';
import { compare, measureSheets } from './measure';
import { nest, type NestedSheet, type NestRule, type NestTask } from './nest';
import type { Random } from './random';
import { disturbedRule } from './rules';
import { boughtOf, chargeOf, hasLimits } from './shortage';
import { drawn, sizeOf, type Drawings } from './write-plan';

/** A stock sheet filled beyond this share can give nothing back. */
const FULL = 0.999;
/** How often the emptiest stock sheet is among those taken apart. */
const SHARE_EMPTIEST = 0.6;

/** A plan in which a few sheets are new. */
export interface Renested {
  readonly sheets: readonly NestedSheet[];
  readonly fresh: readonly NestedSheet[];
  /** Whether these sheets differ in anything that plans are measured by. */
  readonly measures: 'alike' | 'otherwise';
}

/**
 * Takes a few stock sheets apart, one of them mostly the emptiest, and nests their panels again under a
 * disturbed rule, with their rack pieces and sometimes another.
 *
 * @param polish false: panels are to gather on fewer, fuller sheets; true: offcuts are to grow, cuts to shorten
 * @returns the plan so changed, or null if the attempt was worse or nothing could be taken apart
 */
export function renest(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  polish: boolean,
  random: Random,
  drawings: Drawings,
): Renested | null {
  const chosen = chooseSheets(nestTask, sheets, polish, random);
  if (chosen.length === 0) return null;
  const old = chosen.map((i) => sheets[i]!);
  const counts = nestTask.kinds.map(() => 0);
  for (const { filled } of old) for (const { kind } of filled.places) counts[kind]!++;
  const kinds = counts.flatMap((count, kind) => (count > 0 ? [kind] : []));
  const gone = new Set(chosen);
  const others = hasLimits(nestTask.task)
    ? boughtOf(
        nestTask.task,
        sheets.filter((_, i) => !gone.has(i)),
      )
    : undefined;
  const rule = disturbedRule(nestTask, kinds, random);
  const squeezed =
    polish && old.length === 1 ? squeeze(nestTask, old[0]!, rule, [...counts], random, drawings) : null;
  const fresh = squeezed
    ? [squeezed]
    : nest(nestTask, rule, counts, chooseRack(nestTask, sheets, old, random), others);
  const [measured, before] = polish
    ? [fresh, old].map((some) => measureSheets(nestTask, some, drawings, others))
    : [fresh, old].map((some) => gathering(nestTask, some, others));
  const difference = compare(measured!, before!);
  if (difference > 0) return null;
  const patterns = (some: readonly NestedSheet[]) =>
    some
      .map((sheet) => drawn(drawings, nestTask, sheet).pattern)
      .sort()
      .join('\n');
  const isAlike = polish && difference === 0 && patterns(fresh) === patterns(old);
  return { sheets: inPlace(sheets, chosen, fresh), fresh, measures: isAlike ? 'alike' : 'otherwise' };
}

/** New sheets stand where the old ones stood, so that the panels of a kind stay on the sheets they were on. */
function inPlace(
  sheets: readonly NestedSheet[],
  chosen: readonly number[],
  fresh: readonly NestedSheet[],
): NestedSheet[] {
  const changed = [...sheets, ...fresh.slice(chosen.length)];
  chosen.forEach((at, i) => {
    if (i < fresh.length) changed[at] = fresh[i]!;
  });
  for (const at of chosen.slice(fresh.length).reverse()) changed.splice(at, 1);
  return changed;
}

function chooseSheets(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  polish: boolean,
  random: Random,
): number[] {
  const open: number[] = [];
  let emptiest = -1;
  let least = FULL;
  for (const [i, sheet] of sheets.entries()) {
    const { width, height } = sizeOf(nestTask, sheet);
    const share = sheet.filled.area / (width * height);
    if (share >= FULL) continue;
    open.push(i);
    if (share < least) [emptiest, least] = [i, share];
  }
  const wanted = Math.min(open.length, polish ? 1 + Math.floor(random() * 2) : 2 + Math.floor(random() * 4));
  const chosen = new Set<number>();
  if (open.length > 0 && random() < SHARE_EMPTIEST) chosen.add(emptiest);
  while (chosen.size < wanted) chosen.add(open[Math.floor(random() * open.length)]!);
  return [...chosen].sort((a, b) => a - b);
}

/**
 * The same panels on a part of the same stock sheet, so narrow that a strip along a whole side stays free that is
 * larger than the largest offcut so far; null if they do not fit.
 */
function squeeze(
  nestTask: NestTask,
  sheet: NestedSheet,
  rule: NestRule,
  counts: number[],
  random: Random,
  drawings: Drawings,
): NestedSheet | null {
  const { task, kinds } = nestTask;
  const { width, height } = sizeOf(nestTask, sheet);
  const { largestOffcut } = drawn(drawings, nestTask, sheet);
  const beside = random() < 0.5;
  const strip = Math.floor(largestOffcut / (beside ? height : width)) + 1 + task.kerf;
  const { score, ways } = rule;
  const settings = { kinds, kerf: task.kerf, edgeToEdge: task.method === 'edge-to-edge', score, ways };
  const filled = beside
    ? fillSheet(settings, width - strip, height, rule.order, counts)
    : fillSheet(settings, width, height - strip, rule.order, counts);
  return filled && counts.every((count) => count === 0) ? { ...sheet, filled } : null;
}

/** The pieces taken apart, sometimes less one, sometimes with one more from the rack. */
function chooseRack(
  { task }: NestTask,
  sheets: readonly NestedSheet[],
  old: readonly NestedSheet[],
  random: Random,
): number[] {
  if (task.rack.length === 0) return [];
  const rack = old.flatMap(({ rack: piece }) => (piece < 0 ? [] : [piece]));
  if (rack.length > 0 && random() < 0.4) rack.splice(Math.floor(random() * rack.length), 1);
  const used = new Set(sheets.map(({ rack: piece }) => piece));
  const idle = task.rack.flatMap((_, piece) => (used.has(piece) ? [] : [piece]));
  if (idle.length > 0 && random() < 0.4) rack.push(idle[Math.floor(random() * idle.length)]!);
  return rack;
}

/** Cost, bought stock sheets, rack pieces; then how unevenly all are filled: full ones leave one empty. */
function gathering(
  { task }: NestTask,
  sheets: readonly NestedSheet[],
  others: readonly number[] | undefined,
): number[] {
  const bought = sheets.filter(({ rack }) => rack < 0).length;
  const squares = sheets.reduce((sum, { filled }) => sum + filled.area * filled.area, 0);
  return [chargeOf(task, sheets, others), bought, sheets.length - bought, -squares];
}
