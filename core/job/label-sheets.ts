import { paperSizes, type Paper } from './paper-sizes';
import type { Job } from './schema';

/** A sheet of labels, all lengths mm. */
export interface LabelSheet {
  readonly paper: Paper;
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly gapAcross: number;
  readonly gapDown: number;
}

/**
 * Grids that label sheets often have. Common practice, no source: sheets of the same grid differ by tenths, so the numbers
 * are to be held against the sheet itself.
 */
export const usualLabelSheets: readonly LabelSheet[] = [
  sheet('A4', 2, 4, 4.65, 13.1, 2.5, 0),
  sheet('A4', 2, 5, 4.65, 6, 2.5, 0),
  sheet('A4', 2, 7, 4.65, 15.15, 2.5, 0),
  sheet('A4', 3, 7, 7.2, 15.15, 2.55, 0),
  sheet('A4', 3, 8, 0, 0, 0, 0),
  sheet('A3', 4, 7, 9.3, 15, 2.5, 0),
  sheet('Letter', 2, 5, 3.95, 12.7, 4.8, 0),
  sheet('Letter', 3, 10, 4.75, 12.7, 3.2, 0),
];

export const usualLabelSheet = usualLabelSheets[2]!;

/** mm. Smaller labels have no room for a mark that can be read from a ladder. */
export const leastLabel = { width: 40, height: 22 } as const;

/** As the job has it, with usual values in place of what it does not say. */
export function labelSheetOf({ printing }: Pick<Job, 'printing'>): LabelSheet {
  const { first: _, ...given } = printing?.labels ?? {};
  return {
    ...usualLabelSheet,
    ...Object.fromEntries(Object.entries(given).filter(([, of]) => of !== undefined)),
  };
}

/** Width and height of one label; less than nothing where margins and gaps leave none. */
export function labelSize({ paper, columns, rows, ...room }: LabelSheet): { width: number; height: number } {
  const [wide, high] = paperSizes[paper];
  return {
    width: (wide - room.left - room.right - (columns - 1) * room.gapAcross) / columns,
    height: (high - room.top - room.bottom - (rows - 1) * room.gapDown) / rows,
  };
}

/** Margins alike on opposite sides. */
function sheet(
  paper: Paper,
  columns: number,
  rows: number,
  aside: number,
  above: number,
  gapAcross: number,
  gapDown: number,
): LabelSheet {
  return { paper, columns, rows, left: aside, right: aside, top: above, bottom: above, gapAcross, gapDown };
}
