import type { NestedSheet, NestTask } from '../nest';

/*
 * The panels of some sheets as the goal search reads them: flat arrays by number of kind, way round and format. Every
 * length has the kerf on it, as in `fill-sheet.ts`: a panel w × h takes (w + kerf) × (h + kerf) of a stock sheet
 * (W + kerf) × (H + kerf).
 */

export interface GoalTask {
  readonly nestTask: NestTask;
  readonly kindCount: number;
  /** Number of each kind in the task that is nested. */
  readonly kinds: Int32Array;
  /** How many panels of each kind there are. */
  readonly counts: Int32Array;
  /** Ways round: those of kind k begin at `firstWay[k]` and end before `firstWay[k + 1]`; one for a square, else two. */
  readonly firstWay: Int32Array;
  readonly wayWidth: Int32Array;
  readonly wayHeight: Int32Array;
  /** Number of the kind's pose that stands for the way. */
  readonly wayPose: Int32Array;
  /** Rectangles of waste, by way; in the order of the pose. */
  readonly firstWaste: Int32Array;
  readonly wasteWidth: Int32Array;
  readonly wasteHeight: Int32Array;
  readonly mostWaste: number;
  /** True area of a panel of the kind, as a share of the largest sheet. */
  readonly area: Float64Array;
  /** Sheets that may be opened: first one entry a stock format, then one a rack piece. */
  readonly formats: readonly SheetFormat[];
  readonly stockCount: number;
  /** 1 at kind × stock formats + stock where the kind may be cut from the stock. */
  readonly allowed: Uint8Array;
  /** The least short side and the least long side of any panel: a leftover below them is of no use. */
  readonly leastShort: number;
  readonly leastLong: number;
  /** Area of the largest sheet. */
  readonly largest: number;
}

export interface SheetFormat {
  readonly width: number;
  readonly height: number;
  readonly stock: number;
  /** Number of the rack piece, or -1 for a stock format. */
  readonly rack: number;
  /** How many there are; Infinity for stock that can be bought as needed. */
  readonly available: number;
  /** What opening one adds to the measure of a plan: money first, then bought sheets, then rack pieces. */
  readonly charge: number;
}

/**
 * @param sheets whose panels are to be placed
 * @param outside the other sheets of the plan, whose rack pieces and stock are taken
 */
export function readGoalTask(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  outside: readonly NestedSheet[],
): GoalTask {
  const counts = nestTask.kinds.map(() => 0);
  for (const { filled } of sheets) for (const { kind } of filled.places) counts[kind]!++;
  const kinds = counts.flatMap((count, kind) => (count > 0 ? [kind] : []));
  const formats = formatsOf(nestTask, outside);
  const largest = Math.max(...formats.map(({ width, height }) => width * height));
  const { kerf, stock } = nestTask.task;
  const list = kinds.map((kind) => nestTask.kinds[kind]!);
  return {
    nestTask,
    kindCount: kinds.length,
    kinds: Int32Array.from(kinds),
    counts: Int32Array.from(kinds, (kind) => counts[kind]!),
    ...waysOf(nestTask, kinds),
    area: Float64Array.from(list, ({ area }) => area / largest),
    formats,
    stockCount: stock.length,
    allowed: Uint8Array.from(
      list.flatMap(({ allowed }) => stock.map((_, number) => Number(allowed.includes(number)))),
    ),
    leastShort: Math.min(...list.map(({ shortSide }) => shortSide)) + kerf,
    leastLong: Math.min(...list.map(({ longSide }) => longSide)) + kerf,
    largest,
  };
}

/** What a plan is measured by before its offcuts and cuts, as one number. */
export function chargeOf({ formats }: GoalTask, sheets: readonly NestedSheet[]): number {
  let charge = 0;
  for (const sheet of sheets) charge += formats[formatOf(formats, sheet)]!.charge;
  return charge;
}

/** Whether there are as many sheets of every format as the plan takes. */
export function canBeHad({ formats }: GoalTask, sheets: readonly NestedSheet[]): boolean {
  const taken = formats.map(() => 0);
  for (const sheet of sheets) taken[formatOf(formats, sheet)]!++;
  return formats.every(({ available }, format) => taken[format]! <= available);
}

export function formatOf(formats: readonly SheetFormat[], { stock, rack }: NestedSheet): number {
  return formats.findIndex((format) => format.stock === stock && format.rack === rack);
}

type Ways = Pick<
  GoalTask,
  | 'firstWay'
  | 'wayWidth'
  | 'wayHeight'
  | 'wayPose'
  | 'firstWaste'
  | 'wasteWidth'
  | 'wasteHeight'
  | 'mostWaste'
>;

function waysOf({ task: { kerf }, kinds }: NestTask, numbers: readonly number[]): Ways {
  const firstWay = [0];
  const widths: number[] = [];
  const heights: number[] = [];
  const poses: number[] = [];
  const firstWaste = [0];
  const wasteWidths: number[] = [];
  const wasteHeights: number[] = [];
  let mostWaste = 0;
  for (const number of numbers) {
    const kind = kinds[number]!;
    kind.poses.forEach(({ width, height, waste }, p) => {
      // Two poses with the same box are the same to an edge-to-edge cut.
      if (kind.poses.findIndex((other) => other.width === width && other.height === height) < p) return;
      widths.push(width + kerf);
      heights.push(height + kerf);
      poses.push(p);
      for (const [left, bottom, right, top] of waste) {
        wasteWidths.push(right - left + kerf);
        wasteHeights.push(top - bottom + kerf);
      }
      firstWaste.push(wasteWidths.length);
      mostWaste = Math.max(mostWaste, waste.length);
    });
    firstWay.push(widths.length);
  }
  return {
    firstWay: Int32Array.from(firstWay),
    wayWidth: Int32Array.from(widths),
    wayHeight: Int32Array.from(heights),
    wayPose: Int32Array.from(poses),
    firstWaste: Int32Array.from(firstWaste),
    wasteWidth: Int32Array.from(wasteWidths),
    wasteHeight: Int32Array.from(wasteHeights),
    mostWaste,
  };
}

function formatsOf({ task }: NestTask, outside: readonly NestedSheet[]): SheetFormat[] {
  const { kerf, stock, rack, panels } = task;
  // One more bought sheet outweighs every rack piece, the smallest coin every bought sheet.
  const sheet = rack.length + 1;
  const coin = sheet * (panels.length + 1);
  const taken = new Set(outside.map((other) => other.rack));
  return [
    ...stock.map(({ width, height, price, available = Infinity }, number): SheetFormat => ({
      width: width + kerf,
      height: height + kerf,
      stock: number,
      rack: -1,
      available: available - outside.filter((other) => other.rack < 0 && other.stock === number).length,
      charge: price * coin + sheet,
    })),
    ...rack.flatMap(({ stock: id, width, height, value = 0 }, number): SheetFormat[] => {
      const own = stock.findIndex((entry) => entry.id === id);
      if (own < 0 || taken.has(number)) return [];
      const charge = value * coin + 1;
      return [{ width: width + kerf, height: height + kerf, stock: own, rack: number, available: 1, charge }];
    }),
  ];
}
