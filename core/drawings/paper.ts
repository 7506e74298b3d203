import type { Mm } from '../units';
import { paperSizes } from '../job/paper-sizes';
import type { Page, PaperPoint } from './page';

/** A rectangle on paper, mm, y up. */
export interface PaperBox {
  readonly left: Mm;
  readonly bottom: Mm;
  readonly right: Mm;
  readonly top: Mm;
}

/** `paper` mm on the drawing stand for `real` mm on the wall. */
export interface Scale {
  readonly paper: number;
  readonly real: number;
}

/**
 * ISO 5455:1979, 5.1, largest first. 1:25 and 1:2.5 are not among them. Enlargements are left out: nothing
 * that Lodeplan draws is smaller than its paper needs it.
 */
export const scales: readonly Scale[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].map(
  (real) => ({ paper: 1, real }),
);

/** Width and height of a page in mm as it is read. */
export function pageSize({ format, landscape }: Pick<Page, 'format' | 'landscape'>): {
  width: Mm;
  height: Mm;
} {
  const [short, long] = paperSizes[format];
  return landscape ? { width: long, height: short } : { width: short, height: long };
}

/**
 * The inside of the frame: filing margin 20 mm at the left, the other margins 10 mm.
 * Source: ISO 5457:1999 (A4 portrait 180 × 277, A3 landscape 390 × 277).
 */
export function drawingSpace(page: Pick<Page, 'format' | 'landscape'>): PaperBox {
  const { width, height } = pageSize(page);
  return { left: 20, bottom: 10, right: width - 10, top: height - 10 };
}

/**
 * The largest scale of the list at which a drawing of real size `width` × `height` fits into `room`.
 *
 * @returns undefined if even 1:10000 is too large
 * @example largestScale(5400, 2700, 340, 180) // 1:20
 */
export function largestScale(width: Mm, height: Mm, roomWidth: Mm, roomHeight: Mm): Scale | undefined {
  // A hair of tolerance, so that a drawing which fills its room exactly is not turned away by binary dust.
  return scales.find(
    (scale) => onPaper(width, scale) <= roomWidth + 1e-9 && onPaper(height, scale) <= roomHeight + 1e-9,
  );
}

/** A real length at a scale, mm on paper. */
export function onPaper(length: Mm, scale: Scale): Mm {
  return (length * scale.paper) / scale.real;
}

/** "1:20". */
export function ratioOf(scale: Scale): string {
  return `${scale.paper}:${scale.real}`;
}

/** "SCALE 1:20", the designation of ISO 5455, clause 3. */
export function scaleDesignation(scale: Scale): string {
  return `SCALE ${ratioOf(scale)}`;
}

export function boxWidth(box: PaperBox): Mm {
  return box.right - box.left;
}

export function boxHeight(box: PaperBox): Mm {
  return box.top - box.bottom;
}

/** Anticlockwise corners from the lower left. */
export function cornersOf({ left, bottom, right, top }: PaperBox): PaperPoint[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

/** Whether two boxes share more than an edge. */
export function boxesOverlap(a: PaperBox, b: PaperBox): boolean {
  return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

/** A box grown by `by` on every side. */
export function grownBox(box: PaperBox, by: Mm): PaperBox {
  return { left: box.left - by, bottom: box.bottom - by, right: box.right + by, top: box.top + by };
}
