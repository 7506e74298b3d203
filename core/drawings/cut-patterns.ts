import type { Placement } from '../cutting/plan';
import type { JobSheet, WorkedOut } from '../worked-out';
import { signedMark } from './panel-marks';

/** Stock sheets that are cut alike: drawn once. */
export interface CutPattern {
  readonly number: number;
  /** In the order of the plan; all have the same sizes at the same places, each its own marks. */
  readonly sheets: readonly JobSheet[];
  /** The first of them: what is drawn. */
  readonly drawn: JobSheet;
  /**
   * What lies at each place, one entry a place in the order of `drawn.placements`, marks in the order of `sheets`, those
   * of closing panels with their sign.
   */
  readonly places: readonly {
    readonly key: string;
    readonly placement: Placement;
    readonly marks: readonly string[];
  }[];
}

export interface WholeSheets {
  readonly stock: string;
  readonly delivery: string;
  /** Pieces of the rack that are panels as they are; else bought. */
  readonly racked: boolean;
  readonly sheets: readonly JobSheet[];
}

/** The plan as a workshop reads it: patterns to cut by number, whole sheets by delivery and stock, bought or racked. */
export function cutPatterns({ cutting, walls }: WorkedOut): { patterns: CutPattern[]; whole: WholeSheets[] } {
  const panels = walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));
  const names = new Map(panels.map((panel) => [panel.mark, signedMark(panel)]));
  const patterns = new Map<number, JobSheet[]>();
  const whole = new Map<string, JobSheet[]>();
  for (const sheet of cutting.sheets) {
    const [group, key] = isWhole(sheet)
      ? ([whole, `${sheet.delivery} ${sheet.stock} ${sheet.fromRack === null}`] as const)
      : ([patterns, sheet.pattern] as const);
    const sheets = (group as Map<string | number, JobSheet[]>).get(key);
    if (sheets) sheets.push(sheet);
    else (group as Map<string | number, JobSheet[]>).set(key, [sheet]);
  }
  return {
    patterns: [...patterns]
      .sort(([a], [b]) => a - b)
      .map(([number, sheets]) => patternOf(number, sheets, names)),
    whole: [...whole.values()].map((sheets) => ({
      stock: sheets[0]!.stock,
      delivery: sheets[0]!.delivery,
      racked: sheets[0]!.fromRack !== null,
      sheets,
    })),
  };
}

/** A whole sheet has one placement and no cuts. */
export function isWhole({ placements, cuts }: JobSheet): boolean {
  return placements.length === 1 && cuts.length === 0;
}

function patternOf(
  number: number,
  sheets: readonly JobSheet[],
  names: ReadonlyMap<string, string>,
): CutPattern {
  const drawn = sheets[0]!;
  // Sheets of a pattern may hold their panels in another order.
  const marksAt = sheets.map(
    ({ placements }) =>
      new Map(
        placements.map((placement) => [placeKey(placement), names.get(placement.mark) ?? placement.mark]),
      ),
  );
  return {
    number,
    sheets,
    drawn,
    places: drawn.placements.map((placement, i) => ({
      key: letters(i),
      placement,
      marks: marksAt.map((marks) => marks.get(placeKey(placement))!),
    })),
  };
}

function placeKey({ outline }: Placement): string {
  return JSON.stringify(outline);
}

/** a … z, aa, ab …; l and o are left out, they read as figures. */
function letters(index: number): string {
  const alphabet = 'abcdefghijkmnpqrstuvwxyz';
  const last = alphabet[index % alphabet.length]!;
  return index < alphabet.length ? last : letters(Math.floor(index / alphabet.length) - 1) + last;
}
