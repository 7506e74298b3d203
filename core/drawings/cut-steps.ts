import type { Cut, CuttingMethod } from '../cutting/plan';
import { boxOf, distanceToBoundary, type Point } from '../geometry/polygon';
import type { JobSheet } from '../worked-out';
import type { Hundredth } from '../units';

/** One thing to do at the shear or with the snips; stock sheet frame, hundredths. */
export type CutStep =
  | {
      readonly kind: 'part';
      readonly number: number;
      readonly from: Point;
      readonly to: Point;
      readonly direction: 'upright' | 'level' | 'slanted';
      /** From the stock sheet's left edge (upright) or foot (level); null for slanted cuts. */
      readonly fromEdge: Hundredth | null;
      /**
       * The same from the left edge or foot of the piece in hand, where that is not the stock sheet's own; what a stop on
       * the shear is set to. null where it is the same, and where cuts need not run right across.
       */
      readonly onPiece: Hundredth | null;
    }
  | {
      readonly kind: 'open';
      readonly number: number;
      /** The panel whose notches and holes are opened, after its rectangle has been cut out. */
      readonly panel: string;
      readonly lines: readonly { readonly from: Point; readonly to: Point }[];
    };

interface Piece {
  readonly left: Hundredth;
  readonly bottom: Hundredth;
  readonly right: Hundredth;
  readonly top: Hundredth;
}

/**
 * The cuts of a planned sheet, numbered from 1 in their order; all that open one panel's notches and holes are one step.
 * A cut lies along its panel's edge and takes its kerf on the far side, to the right or above.
 */
export function cutSteps(sheet: JobSheet, method: CuttingMethod, kerf: Hundredth): CutStep[] {
  const steps: CutStep[] = [];
  const opened = new Map<string, { from: Point; to: Point }[]>();
  let pieces: Piece[] = [{ left: 0, bottom: 0, right: sheet.width, top: sheet.height }];
  for (const cut of sheet.cuts) {
    const { from, to } = cut;
    const opens = cut.opens ?? (method === 'free' ? panelOpenedBy(cut, sheet) : undefined);
    const number = steps.length + 1;
    if (opens !== undefined) {
      const lines = opened.get(opens);
      if (lines) lines.push({ from, to });
      else {
        const first = [{ from, to }];
        opened.set(opens, first);
        steps.push({ kind: 'open', number, panel: opens, lines: first });
      }
      continue;
    }
    const direction = from.x === to.x ? 'upright' : from.y === to.y ? 'level' : 'slanted';
    const fromEdge = direction === 'upright' ? from.x : direction === 'level' ? from.y : null;
    const piece = method === 'edge-to-edge' ? pieces.find((one) => runsAcross(one, from, to)) : undefined;
    let onPiece: Hundredth | null = null;
    if (piece && fromEdge !== null) {
      const start = direction === 'upright' ? piece.left : piece.bottom;
      if (start > 0) onPiece = fromEdge - start;
      pieces = pieces.flatMap((one) => (one === piece ? parted(one, direction, fromEdge, kerf) : [one]));
    }
    steps.push({ kind: 'part', number, from, to, direction, fromEdge, onPiece });
  }
  return steps;
}

/**
 * The panel whose notch, hole or slant a cut opens: it runs along the panel's edge inside the panel's rectangle. Plans of
 * free cuts do not say so themselves.
 */
function panelOpenedBy({ from, to }: Cut, { placements }: JobSheet): string | undefined {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return placements.find(({ outline }) => {
    const { left, bottom, right, top } = boxOf(outline.outer);
    const isInside = left < middle.x && middle.x < right && bottom < middle.y && middle.y < top;
    return isInside && distanceToBoundary(middle, outline) <= 1;
  })?.mark;
}

/** Whether an upright or level cut runs through the piece from edge to edge (or all but a kerf of it). */
function runsAcross({ left, bottom, right, top }: Piece, from: Point, to: Point): boolean {
  if (from.x === to.x) {
    const [low, high] = from.y < to.y ? [from.y, to.y] : [to.y, from.y];
    return left < from.x && from.x < right && low < top && high > bottom && low <= bottom && high >= top;
  }
  if (from.y !== to.y) return false;
  const [low, high] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
  return bottom < from.y && from.y < top && low < right && high > left && low <= left && high >= right;
}

function parted(piece: Piece, direction: string, at: Hundredth, kerf: Hundredth): Piece[] {
  return direction === 'upright'
    ? [
        { ...piece, right: at },
        { ...piece, left: at + kerf },
      ]
    : [
        { ...piece, top: at },
        { ...piece, bottom: at + kerf },
      ];
}
