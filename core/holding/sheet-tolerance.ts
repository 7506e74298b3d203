import type { Mm } from '../units';
import { note } from './calculation';

/** How a sheet was ordered. */
export interface SheetOrder {
  readonly standard: 'EN 10131' | 'EN 10143';
  /** Least yield strength, MPa; absent: below 260. */
  readonly yieldStrength?: number;
  readonly tolerance: 'normal' | 'special';
  /** Width of the coil or sheet it was cut from. */
  readonly width: Mm;
}

interface Row {
  readonly standard: SheetOrder['standard'];
  /** Yield strength, MPa: from, and below. */
  readonly yields: readonly [number, number];
  /** ± mm for widths to 1200, to 1500, above. */
  readonly normal: readonly [number, number, number];
  readonly special: readonly [number, number, number];
}

/**
 * Tolerance of thickness, ± mm, for 0.40 < t ≤ 0.60 mm. EN 10131:2006 tables 1 and 2 (cold rolled), EN 10143 table 1 (hot-dip
 * coated), as reproduced.
 */
const rows: readonly Row[] = [
  { standard: 'EN 10131', yields: [0, 260], normal: [0.03, 0.04, 0.05], special: [0.025, 0.03, 0.035] },
  { standard: 'EN 10131', yields: [260, 340], normal: [0.04, 0.05, 0.06], special: [0.03, 0.035, 0.04] },
  { standard: 'EN 10143', yields: [0, 260], normal: [0.04, 0.05, 0.06], special: [0.035, 0.04, 0.045] },
];

export interface ThicknessTolerance {
  /** ±. */
  readonly by: Mm;
  readonly source: string;
}

/**
 * By how much a sheet may be thinner than it is called; ± 8 % where no standard was named or none of its rows fits.
 *
 * @example thicknessTolerance(0.5, { standard: 'EN 10131', tolerance: 'normal', width: 1250 }).by // 0.04
 */
export function thicknessTolerance(thickness: Mm, order?: SheetOrder): ThicknessTolerance {
  const row = order && thickness > 0.4 && thickness <= 0.6 ? rowOf(order) : undefined;
  if (!order || !row) return { by: 0.08 * thickness, source: `${note}, section 3: ± 8 %` };
  const column = order.width <= 1200 ? 0 : order.width <= 1500 ? 1 : 2;
  return { by: row[order.tolerance][column], source: `${order.standard}, ${order.tolerance} tolerance` };
}

function rowOf({ standard, yieldStrength = 0 }: SheetOrder): Row | undefined {
  return rows.find(
    (row) => row.standard === standard && yieldStrength >= row.yields[0] && yieldStrength < row.yields[1],
  );
}
