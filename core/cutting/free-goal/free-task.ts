import type { PanelKind } from '../kinds';
import type { NestedSheet, NestTask } from '../nest';

/*
 * A task as the search for free cuts reads it: flat arrays by number of kind. Every length has the kerf on it, as in
 * `fill-sheet.ts`: a panel w × h takes (w + kerf) × (h + kerf) of a stock sheet (W + kerf) × (H + kerf).
 */

export interface FreeTask {
  readonly nestTask: NestTask;
  readonly kinds: readonly PanelKind[];
  readonly kerf: number;
  /** How many panels are to be placed. */
  readonly panelCount: number;
  /** Sides of the bounding box, kerf on them. */
  readonly long: Int32Array;
  readonly short: Int32Array;
  /** Least that a panel of the kind takes of a sheet: its box with kerf, or its true area where it is no rectangle. */
  readonly area: Float64Array;
  readonly isRectangle: Uint8Array;
  /** Sheets that may be opened: first one entry a stock format, then one a rack piece. */
  readonly formats: readonly SheetFormat[];
  /** 1 at kind × formats + format where the kind may be cut from the format and has room on it. */
  readonly allowed: Uint8Array;
}

export interface SheetFormat {
  readonly width: number;
  readonly height: number;
  readonly area: number;
  readonly stock: number;
  /** Number of the rack piece, or -1 for a stock format. */
  readonly rack: number;
  /** How many there are; Infinity for stock that can be bought as needed. */
  readonly available: number;
  /** What opening one adds to the measure of a plan: money first, then bought stock sheets, then rack pieces. */
  readonly charge: number;
}

/**
 * @param start sheets whose panels are to be placed
 * @param outside the other sheets of the plan, whose rack pieces and stock are taken
 */
export function readFreeTask(
  nestTask: NestTask,
  start: readonly NestedSheet[],
  outside: readonly NestedSheet[],
): FreeTask {
  const { task, kinds } = nestTask;
  const { kerf } = task;
  const formats = formatsOf(nestTask, start, outside);
  const long = Int32Array.from(kinds, ({ longSide }) => longSide + kerf);
  const short = Int32Array.from(kinds, ({ shortSide }) => shortSide + kerf);
  const allowed = new Uint8Array(kinds.length * formats.length);
  kinds.forEach((kind, k) => {
    formats.forEach(({ stock, width, height }, f) => {
      const hasRoom = long[k]! <= Math.max(width, height) && short[k]! <= Math.min(width, height);
      if (hasRoom && kind.allowed.includes(stock)) allowed[k * formats.length + f] = 1;
    });
  });
  return {
    nestTask,
    kinds,
    kerf,
    panelCount: start.reduce((sum, { filled }) => sum + filled.places.length, 0),
    long,
    short,
    area: Float64Array.from(kinds, ({ isRectangle, area }, k) => (isRectangle ? long[k]! * short[k]! : area)),
    isRectangle: Uint8Array.from(kinds, ({ isRectangle }) => (isRectangle ? 1 : 0)),
    formats,
    allowed,
  };
}

/** Number of the format that a stock sheet of a plan is. */
export function formatOf({ formats }: FreeTask, { stock, rack }: NestedSheet): number {
  return formats.findIndex((format) => format.stock === stock && format.rack === rack);
}

function formatsOf(
  { task }: NestTask,
  start: readonly NestedSheet[],
  outside: readonly NestedSheet[],
): SheetFormat[] {
  const { kerf, stock, rack } = task;
  const panels = task.panels.length;
  const open = (sheets: readonly NestedSheet[], format: number, piece: number) =>
    sheets.filter((sheet) => sheet.stock === format && sheet.rack === piece).length;
  // Where more are bought than can be had, it shall at least not become worse.
  const free = (available: number, format: number, piece: number) =>
    Math.max(open(start, format, piece), available - open(outside, format, piece));
  // One more bought stock sheet outweighs every rack piece, the smallest coin every bought stock sheet.
  const sheet = Math.min(rack.length, panels) + 1;
  const coin = sheet * (panels + 1);
  const sized = (width: number, height: number) => ({
    width: width + kerf,
    height: height + kerf,
    area: (width + kerf) * (height + kerf),
  });
  return [
    ...stock.map(({ width, height, price, available = Infinity }, i): SheetFormat => {
      return {
        ...sized(width, height),
        stock: i,
        rack: -1,
        available: free(available, i, -1),
        charge: price * coin + sheet,
      };
    }),
    ...rack.flatMap(({ stock: id, width, height, value = 0 }, i): SheetFormat[] => {
      const number = stock.findIndex((entry) => entry.id === id);
      if (number < 0) return [];
      return [
        {
          ...sized(width, height),
          stock: number,
          rack: i,
          available: free(1, number, i),
          charge: value * coin + 1,
        },
      ];
    }),
  ];
}
