/*
 * Tries every way of laying small panels, made of unit squares, on given sheets. Only for a handful of panels on
 * sheets of a few squares; there it is certain.
 */

/** Squares it covers, from its lower left corner. */
export type Squares = readonly (readonly [x: number, y: number])[];

export interface UnitSheet {
  readonly stock: string;
  readonly width: number;
  readonly height: number;
}

export interface UnitPanel {
  readonly squares: Squares;
  readonly stock: readonly string[];
}

/** Whether all panels can be cut from these sheets, quarter turns and turning over allowed. */
export function canBeCut(panels: readonly UnitPanel[], sheets: readonly UnitSheet[]): boolean {
  const sorted = [...panels].sort((a, b) => b.squares.length - a.squares.length);
  const poses = sorted.map(({ squares }) => posesOf(squares));
  const taken = sheets.map(({ height }) => new Array<number>(height).fill(0));
  let left = sorted.reduce((sum, { squares }) => sum + squares.length, 0);
  if (left > sheets.reduce((sum, { width, height }) => sum + width * height, 0)) return false;

  const place = (i: number): boolean => {
    if (i === sorted.length) return true;
    const tried = new Set<string>();
    for (const [s, sheet] of sheets.entries()) {
      if (!sorted[i]!.stock.includes(sheet.stock)) continue;
      const rows = taken[s]!;
      // Sheets that are alike and taken alike give nothing new.
      const state = `${sheet.stock} ${sheet.width} ${rows.join()}`;
      if (tried.has(state)) continue;
      tried.add(state);
      for (const pose of poses[i]!) {
        for (let y = 0; y + pose.rows.length <= sheet.height; y++) {
          for (let x = 0; x + pose.width <= sheet.width; x++) {
            if (pose.rows.some((row, j) => rows[y + j]! & (row << x))) continue;
            pose.rows.forEach((row, j) => (rows[y + j]! |= row << x));
            if (place(i + 1)) return true;
            pose.rows.forEach((row, j) => (rows[y + j]! &= ~(row << x)));
          }
        }
      }
    }
    return false;
  };
  left = 0;
  return place(left);
}

interface UnitPose {
  readonly width: number;
  /** Bit x of row y: square x, y. */
  readonly rows: readonly number[];
}

function posesOf(squares: Squares): UnitPose[] {
  const poses = new Map<string, UnitPose>();
  for (const over of [1, -1]) {
    let turned = squares.map(([x, y]) => [over * x, y] as [number, number]);
    for (let turn = 0; turn < 4; turn++) {
      turned = turned.map(([x, y]) => [-y, x]);
      const x0 = Math.min(...turned.map(([x]) => x));
      const y0 = Math.min(...turned.map(([, y]) => y));
      const width = Math.max(...turned.map(([x]) => x)) - x0 + 1;
      const height = Math.max(...turned.map(([, y]) => y)) - y0 + 1;
      const rows = new Array<number>(height).fill(0);
      for (const [x, y] of turned) rows[y - y0]! |= 1 << (x - x0);
      poses.set(rows.join(), { width, rows });
    }
  }
  return [...poses.values()];
}
