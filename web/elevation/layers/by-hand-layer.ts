import type { MmBox, MmPoint } from '../../../core/job/shape';
import type { Box } from '../../../core/geometry/polygon';
import { bandBox, signFont, type HandSign } from '../by-hand/hand-signs';
import { discRadius, type PxArea } from '../by-hand/sign-places';
import { acrossOf, condensed, downOf, inks, screenBox, strokeLine, type Pen } from './pen';

export interface ByHandDrawing {
  readonly signs: readonly HandSign[];
  readonly starts: readonly { readonly at: MmPoint; readonly box: Box; readonly inHand: boolean }[];
  /** Where no joint may lie, as it is being drawn. */
  readonly band: MmBox | null;
  /** The panel that is to be joined with another. */
  readonly first: MmPoint | null;
}

/** What was chosen by hand: each with a sign of its own and its words, and the starts with their cross. */
export function paintByHand(pen: Pen, { signs, starts, band, first }: ByHandDrawing): void {
  pen.context.save();
  for (const sign of signs) paintPlace(pen, sign);
  for (const start of starts) paintStart(pen, start);
  if (band) {
    const { x, y, width, height } = band;
    paintBand(pen, { left: x * 100, bottom: y * 100, right: (x + width) * 100, top: (y + height) * 100 });
  }
  for (const sign of signs) paintSign(pen, sign);
  if (first) paintDisc(pen, acrossOf(pen.frame, first.x * 100), downOf(pen.frame, first.y * 100), '+');
  pen.context.restore();
}

/** Where on the wall a choice is: under all signs, so that it runs through none. */
function paintPlace(pen: Pen, { wish, box: zone, spot, disc, isChosen }: HandSign): void {
  const { frame } = pen;
  const width = isChosen ? 3 : 2;
  switch (wish.kind) {
    case 'joint-on-line': {
      const line: readonly [number, number, number, number] =
        wish.axis === 'x'
          ? [spot.x, downOf(frame, zone.bottom), spot.x, downOf(frame, zone.top)]
          : [acrossOf(frame, zone.left), spot.y, acrossOf(frame, zone.right), spot.y];
      return strokeLine(pen, line, inks.ink, width, [10, 3, 2, 3]);
    }
    case 'no-joints':
      return paintBand(pen, bandBox(wish.band, zone));
    case 'join': {
      const [x, y] = [acrossOf(frame, wish.with.x), downOf(frame, wish.with.y)];
      strokeLine(pen, [disc.x, disc.y, x, y], inks.ink, 1.5, [2, 3]);
      return paintDot(pen, x, y);
    }
    default:
      // A sign that had to make room leads to its place.
      if (Math.hypot(spot.x - disc.x, spot.y - disc.y) <= discRadius) return;
      strokeLine(pen, [disc.x, disc.y, spot.x, spot.y], inks.ink, 1);
      paintDot(pen, spot.x, spot.y);
  }
}

function paintSign(pen: Pen, { disc, plate, glyph, isChosen }: HandSign): void {
  if (plate) paintPlate(pen, plate, isChosen);
  paintDisc(pen, disc.x, disc.y, glyph, isChosen);
}

function paintDot({ context }: Pen, x: number, y: number): void {
  context.beginPath();
  context.arc(x, y, 3, 0, 2 * Math.PI);
  context.fillStyle = inks.ink;
  context.fill();
}

/** Brackets in two corners and a thin rim: nothing is hatched, as what lies there is to be seen. */
function paintBand(pen: Pen, box: Box): void {
  const { x, y, width, height } = screenBox(pen.frame, box);
  const lines = [
    [x, y, x + width, y],
    [x + width, y, x + width, y + height],
    [x + width, y + height, x, y + height],
    [x, y + height, x, y],
  ] as const;
  for (const line of lines) strokeLine(pen, line, inks.ink, 1, [6, 4]);
  const arm = Math.min(14, width / 2, height / 2);
  for (const [cx, cy, dx, dy] of [
    [x, y, 1, 1],
    [x + width, y, -1, 1],
    [x, y + height, 1, -1],
    [x + width, y + height, -1, -1],
  ] as const) {
    strokeLine(pen, [cx, cy, cx + dx * arm, cy], inks.ink, 3);
    strokeLine(pen, [cx, cy, cx, cy + dy * arm], inks.ink, 3);
  }
}

function paintDisc({ context }: Pen, x: number, y: number, glyph: string, isChosen = false): void {
  context.beginPath();
  context.arc(x, y, discRadius, 0, 2 * Math.PI);
  context.fillStyle = isChosen ? inks.ink : inks.paper;
  context.fill();
  context.strokeStyle = inks.ink;
  context.lineWidth = 1.5;
  context.stroke();
  context.font = `600 13px ${condensed}`;
  context.fillStyle = isChosen ? inks.paper : inks.ink;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(glyph, x, y + 0.5);
}

/** On paper, so that they can be read over hatching; framed where chosen. */
function paintPlate(
  { context }: Pen,
  { left, right, top, bottom, text }: PxArea & { readonly text: string },
  isChosen: boolean,
): void {
  context.font = signFont;
  context.textBaseline = 'middle';
  context.textAlign = 'left';
  context.fillStyle = inks.paper;
  context.fillRect(left, top, right - left, bottom - top);
  if (isChosen) {
    context.strokeStyle = inks.ink;
    context.lineWidth = 1.5;
    context.strokeRect(left, top, right - left, bottom - top);
  }
  context.fillStyle = inks.ink;
  context.fillText(text, left + 3, (top + bottom) / 2 + 0.5);
}

/** A square on the corner that the panels start from, with a cross through the zone while it is moved. */
function paintStart(pen: Pen, { at, box, inHand }: ByHandDrawing['starts'][number]): void {
  const { context, frame } = pen;
  const [x, y] = [acrossOf(frame, at.x * 100), downOf(frame, at.y * 100)];
  if (inHand) {
    strokeLine(
      pen,
      [x, downOf(frame, box.bottom) + 12, x, downOf(frame, box.top) - 12],
      inks['red-lead'],
      1.5,
    );
    strokeLine(
      pen,
      [acrossOf(frame, box.left) - 12, y, acrossOf(frame, box.right) + 12, y],
      inks['red-lead'],
      1.5,
    );
  } else {
    strokeLine(pen, [x, y + 12, x, y - 22], inks['red-lead'], 1.5);
    strokeLine(pen, [x - 12, y, x + 22, y], inks['red-lead'], 1.5);
  }
  context.fillStyle = inHand ? inks['red-lead'] : inks.paper;
  context.fillRect(x - 6, y - 6, 12, 12);
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 2;
  context.strokeRect(x - 6, y - 6, 12, 12);
}
