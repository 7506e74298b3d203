import type { MmBox, MmPoint } from '../../../core/job/shape';
import type { HandOutcome } from '../../../core/panels/by-hand/hand-outcomes';
import type { Box, Point } from '../../../core/geometry/polygon';
import { acrossOf, condensed, downOf, inks, screenBox, strokeLine, type Pen } from './pen';

export interface ByHandDrawing {
  /** Of each zone, with the box round it. */
  readonly zones: readonly { readonly box: Box; readonly outcomes: readonly HandOutcome[] }[];
  readonly starts: readonly { readonly at: MmPoint; readonly box: Box; readonly inHand: boolean }[];
  /** Where no joint may lie, as it is being drawn. */
  readonly band: MmBox | null;
  /** The panel that is to be joined with another. */
  readonly first: MmPoint | null;
}

/** What was chosen by hand: each with a sign of its own and its words, and the starts with their cross. */
export function paintByHand(pen: Pen, { zones, starts, band, first }: ByHandDrawing): void {
  pen.context.save();
  for (const { box, outcomes } of zones) for (const outcome of outcomes) paintOutcome(pen, outcome, box);
  for (const start of starts) paintStart(pen, start);
  if (band) {
    const { x, y, width, height } = band;
    paintBand(pen, { left: x * 100, bottom: y * 100, right: (x + width) * 100, top: (y + height) * 100 });
  }
  if (first) paintDisc(pen, acrossOf(pen.frame, first.x * 100), downOf(pen.frame, first.y * 100), '+');
  pen.context.restore();
}

function paintOutcome(pen: Pen, { wish, state }: HandOutcome, zone: Box): void {
  const { frame } = pen;
  const asked = state === 'met' ? '' : ', not met';
  switch (wish.kind) {
    case 'joint-on-line': {
      const { axis, at } = wish;
      const [x, y] = [acrossOf(frame, at.x), downOf(frame, at.y)];
      if (axis === 'x')
        strokeLine(
          pen,
          [x, downOf(frame, zone.bottom), x, downOf(frame, zone.top)],
          inks.ink,
          2,
          [10, 3, 2, 3],
        );
      else
        strokeLine(
          pen,
          [acrossOf(frame, zone.left), y, acrossOf(frame, zone.right), y],
          inks.ink,
          2,
          [10, 3, 2, 3],
        );
      paintDisc(pen, x, y, axis === 'x' ? '|' : '–');
      return paintWords(pen, x, y, `${wish.id} joint here${asked}`);
    }
    case 'no-joints': {
      const { left, right, bottom, top } = wish.band;
      const box = {
        left: left ?? zone.left,
        right: right ?? zone.right,
        bottom: bottom ?? zone.bottom,
        top: top ?? zone.top,
      };
      paintBand(pen, box);
      const { x, y } = screenBox(frame, box);
      return paintWords(pen, x - 6, y + 12, `${wish.id} no joints here${asked}`);
    }
    case 'whole-panel':
      return paintPoint(pen, wish.at, '■', `${wish.id} whole${asked}`);
    case 'split': {
      if (state === 'lost') return;
      return paintPoint(pen, wish.at, wish.axis === 'x' ? '↔' : '↕', `${wish.id} split${asked}`);
    }
    case 'join': {
      const [a, b] = [wish.at, wish.with].map(({ x, y }) => [acrossOf(frame, x), downOf(frame, y)] as const);
      strokeLine(pen, [...a!, ...b!], inks.ink, 1.5, [2, 3]);
      paintDisc(pen, ...b!, '+');
      return paintPoint(pen, wish.at, '+', `${wish.id} joined${asked}`);
    }
    default:
  }
}

function paintPoint(pen: Pen, at: Point, sign: string, words: string): void {
  const [x, y] = [acrossOf(pen.frame, at.x), downOf(pen.frame, at.y)];
  paintDisc(pen, x, y, sign);
  paintWords(pen, x, y, words);
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

function paintDisc({ context }: Pen, x: number, y: number, sign: string): void {
  context.beginPath();
  context.arc(x, y, 9, 0, 2 * Math.PI);
  context.fillStyle = inks.paper;
  context.fill();
  context.strokeStyle = inks.ink;
  context.lineWidth = 1.5;
  context.stroke();
  context.font = `600 13px ${condensed}`;
  context.fillStyle = inks.ink;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(sign, x, y + 0.5);
}

/** On paper, so that they can be read over hatching. */
function paintWords({ context, frame }: Pen, x: number, y: number, words: string): void {
  context.font = `600 12px ${condensed}`;
  context.textBaseline = 'middle';
  const width = context.measureText(words).width;
  const isLeft = x + 14 + width > frame.width;
  const from = isLeft ? x - 14 - width : x + 14;
  context.fillStyle = inks.paper;
  context.fillRect(from - 3, y - 9, width + 6, 18);
  context.fillStyle = inks.ink;
  context.textAlign = 'left';
  context.fillText(words, from, y + 0.5);
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
