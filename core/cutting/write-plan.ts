import { boxOf, translate, type Point } from '../geometry/polygon';
import { runSteps, type Steps } from '../panels/pace';
import { drawSheet, type DrawnSheet } from './draw-sheet';
import type { FilledSheet } from './fill-sheet';
import type { NestedSheet, NestTask } from './nest';
import type { Bounds } from './lower-bound';
import type { DeliveryPlan, Placement, PlannedSheet, StockFormat } from './plan';
import { allTurns, shapeKey, turned, type Turn } from './poses';
import { trimCuts } from './trim-cuts';

const SHEETS_OF_A_STEP = 64;

/** Stock sheets that are filled alike are drawn once. */
export type Drawings = WeakMap<FilledSheet, DrawnSheet>;

export function drawn(drawings: Drawings, nestTask: NestTask, sheet: NestedSheet): DrawnSheet {
  let drawing = drawings.get(sheet.filled);
  if (!drawing) {
    const { width, height } = sizeOf(nestTask, sheet);
    drawing = drawSheet(nestTask.task, nestTask.kinds, width, height, sheet.filled, nestTask.single);
    drawings.set(sheet.filled, drawing);
  }
  return drawing;
}

export function sizeOf({ task }: NestTask, { stock, rack }: NestedSheet): { width: number; height: number } {
  return rack < 0 ? task.stock[stock]! : task.rack[rack]!;
}

interface WrittenSheet {
  readonly sheet: NestedSheet;
  /** Numbers of its panels in the task. */
  readonly members: readonly number[];
  readonly planned: PlannedSheet;
}

/**
 * Stock sheets that were written once, by the first panel on them: of a large plan a better one changes few, and whoever
 * reads it knows the others again.
 */
const written = new WeakMap<DrawnSheet, Map<number, WrittenSheet>>();

function writtenFrom(drawing: DrawnSheet): Map<number, WrittenSheet> {
  let known = written.get(drawing);
  if (!known) written.set(drawing, (known = new Map()));
  return known;
}

/** Turns kinds into the panels they stand for, in the order of the task, stock sheet after stock sheet. */
export function writePlan(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  bounds: Bounds,
  drawings: Drawings,
): DeliveryPlan {
  return runSteps(writePlanInSteps(nestTask, sheets, bounds, drawings));
}

/** The same, with pauses. */
export function* writePlanInSteps(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  bounds: Bounds,
  drawings: Drawings,
): Steps<DeliveryPlan> {
  const { task } = nestTask;
  const kinds = nestTask.single ?? nestTask.kinds;
  const taken = kinds.map(() => 0);
  const turnOf = turnFinder(nestTask);
  const writeSheet = (sheet: NestedSheet, drawing: DrawnSheet, members: readonly number[]): PlannedSheet => {
    const { width, height } = sizeOf(nestTask, sheet);
    const placements = drawing.panels.map(({ kind, pose }, place): Placement => {
      const member = members[place]!;
      return {
        mark: task.panels[member]!.mark,
        outline: drawing.shapes[place]!,
        ...turnOf(member, kind, pose),
      };
    });
    const planned: PlannedSheet = {
      stock: task.stock[sheet.stock]!.id,
      fromRack: sheet.rack < 0 ? null : task.rack[sheet.rack]!.id,
      width,
      height,
      placements,
      offcuts: drawing.offcuts,
      cuts: drawing.cuts.map(({ host, ...cut }) =>
        host === undefined ? cut : { ...cut, opens: placements[host]!.mark },
      ),
    };
    return sheet.rack < 0 ? withMargins(planned, task.stock[sheet.stock]!, task.kerf) : planned;
  };
  const planned: PlannedSheet[] = [];
  for (const [i, sheet] of sheets.entries()) {
    if (i % SHEETS_OF_A_STEP === SHEETS_OF_A_STEP - 1) yield undefined;
    const drawing = drawn(drawings, nestTask, sheet);
    const members = drawing.panels.map(({ kind }) => kinds[kind]!.members[taken[kind]!++]!);
    const known = writtenFrom(drawing);
    const before = known.get(members[0]!);
    const isKnown =
      before?.sheet.rack === sheet.rack && members.every((member, i) => member === before.members[i]);
    if (isKnown) planned.push(before.planned);
    else {
      const fresh = writeSheet(sheet, drawing, members);
      known.set(members[0]!, { sheet, members, planned: fresh });
      planned.push(fresh);
    }
  }
  const bought = sheets.filter(({ rack }) => rack < 0);
  return {
    sheets: planned,
    newSheets: bought.length,
    lowerBound: bounds.newSheets,
    cost: bought.reduce((sum, { stock }) => sum + task.stock[stock]!.price, 0),
    costLowerBound: bounds.cost,
  };
}

/** The same on the whole stock sheet, whose margins come off first. */
function withMargins(planned: PlannedSheet, format: StockFormat, kerf: number): PlannedSheet {
  const { trim } = format;
  if (!trim) return planned;
  const { left, right, bottom, top } = trim;
  const moved = ({ x, y }: Point): Point => ({ x: x + left, y: y + bottom });
  return {
    ...planned,
    width: planned.width + left + right,
    height: planned.height + bottom + top,
    placements: planned.placements.map((placement) => ({
      ...placement,
      outline: translate(placement.outline, left, bottom),
    })),
    offcuts: planned.offcuts.map((offcut) => ({ ...offcut, ...moved(offcut) })),
    cuts: [
      ...trimCuts(format, kerf),
      ...planned.cuts.map((cut) => ({ ...cut, from: moved(cut.from), to: moved(cut.to) })),
    ],
  };
}

/** How a panel, as it is drawn on the wall, becomes the shape that lies on the stock sheet. */
function turnFinder({ task, ...read }: NestTask): (member: number, kind: number, pose: number) => Turn {
  const kinds = read.single ?? read.kinds;
  const known = new Map<string, Turn>();
  return (member, kind, number) => {
    const pose = kinds[kind]!.poses[number]!;
    const { outline } = task.panels[member]!;
    if (kinds[kind]!.isRectangle) {
      const { left, right } = boxOf(outline.outer);
      return right - left === pose.width ? allTurns[0]! : allTurns[1]!;
    }
    const key = `${number}#${kind}#${shapeKey(turned(outline, allTurns[0]!))}`;
    let turn = known.get(key);
    if (!turn) {
      const wanted = shapeKey(pose.shape);
      turn = allTurns.find((candidate) => shapeKey(turned(outline, candidate)) === wanted);
      if (!turn) throw new Error(`Panel ${task.panels[member]!.mark} does not turn into its place.`);
      known.set(key, turn);
    }
    return turn;
  };
}
