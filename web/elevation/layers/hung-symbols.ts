import { isReadyHungKind, type ReadyHungKind } from '../../../core/job/hung-kinds';
import { condensed, inks, strokeLine, type Pen, type screenBox } from './pen';

type Rectangle = ReturnType<typeof screenBox>;
type Symbol = (pen: Pen, box: Rectangle) => void;

/** What a thing of this kind looks like from the front, within its box; kinds that someone has made are named where there is room. */
export function paintHungSymbol(pen: Pen, kind: string, box: Rectangle): void {
  if (isReadyHungKind(kind)) symbols[kind](pen, box);
  else paintName(pen, box, kind);
}

const symbols: Readonly<Record<ReadyHungKind, Symbol>> = {
  print: paintPrint,
  poster: paintPoster,
  clipboard: paintClipboard,
  map: paintMap,
  shelf: paintShelf,
  planter: paintPlanter,
  'tool-rack': paintToolRack,
  'letter-rail': paintLetterRail,
  'coat-hook': paintHook,
  'bicycle-hook': paintHook,
  'game-piece': paintGamePiece,
};

/** Lines of type within margins, as on a proof. */
function paintPrint(pen: Pen, { x, y, width, height }: Rectangle): void {
  const margin = Math.min(width, height) * 0.14;
  linesOfType(pen, { x: x + margin, y: y + margin, width: width - 2 * margin, height: height - 2 * margin });
}

/** A picture over a few lines. */
function paintPoster(pen: Pen, { x, y, width, height }: Rectangle): void {
  const margin = Math.min(width, height) * 0.1;
  const picture = { x: x + margin, y: y + margin, width: width - 2 * margin, height: height * 0.52 };
  pen.context.fillStyle = inks.hairline;
  pen.context.fillRect(picture.x, picture.y, picture.width, picture.height);
  const top = picture.y + picture.height + margin;
  linesOfType(pen, { x: x + margin, y: top, width: picture.width, height: y + height - margin - top });
}

/** The clip at the head of the board, a sheet below it. */
function paintClipboard(pen: Pen, { x, y, width, height }: Rectangle): void {
  const [clip, head] = [width * 0.4, height * 0.09];
  pen.context.fillStyle = inks.soft;
  pen.context.fillRect(x + (width - clip) / 2, y, clip, head);
  const margin = width * 0.12;
  const top = y + head + margin;
  linesOfType(pen, { x: x + margin, y: top, width: width - 2 * margin, height: y + height - margin - top });
}

/** Its folds, and a river across them. */
function paintMap(pen: Pen, { x, y, width, height }: Rectangle): void {
  for (const part of [0.25, 0.5, 0.75])
    strokeLine(pen, [x + width * part, y, x + width * part, y + height], inks.hairline, 1);
  strokeLine(pen, [x, y + height / 2, x + width, y + height / 2], inks.hairline, 1);
  const { context } = pen;
  context.beginPath();
  context.moveTo(x, y + height * 0.3);
  context.bezierCurveTo(
    x + width * 0.35,
    y + height * 0.05,
    x + width * 0.55,
    y + height * 0.95,
    x + width,
    y + height * 0.65,
  );
  stroke(pen, inks.soft, 1.4);
}

/** The board seen from its front edge, the strip behind it on the wall. */
function paintShelf(pen: Pen, { x, y, width, height }: Rectangle): void {
  const board = Math.max(3, height * 0.22);
  pen.context.fillStyle = inks.hairline;
  pen.context.fillRect(x, y + height - board, width, board);
  strokeLine(pen, [x, y + height - board, x + width, y + height - board], inks.ink, 1);
}

/** A pot in the lower half, leaves above it. */
function paintPlanter(pen: Pen, { x, y, width, height }: Rectangle): void {
  const { context } = pen;
  const rim = y + height * 0.5;
  context.beginPath();
  context.moveTo(x + width * 0.12, rim);
  context.lineTo(x + width * 0.88, rim);
  context.lineTo(x + width * 0.74, y + height * 0.96);
  context.lineTo(x + width * 0.26, y + height * 0.96);
  context.closePath();
  context.fillStyle = inks.hairline;
  context.fill();
  stroke(pen, inks.ink, 1);
  for (const lean of [-0.34, -0.12, 0.12, 0.34]) {
    const tip = { x: x + width * (0.5 + lean), y: y + height * (0.08 + Math.abs(lean) * 0.4) };
    context.beginPath();
    context.moveTo(x + width / 2, rim);
    context.quadraticCurveTo(x + width * (0.5 + lean * 0.3), tip.y, tip.x, tip.y);
    stroke(pen, inks.soft, 1.4);
  }
}

/** A bar with slots that tools stand in. */
function paintToolRack(pen: Pen, { x, y, width, height }: Rectangle): void {
  const bar = { top: y + height * 0.3, foot: y + height * 0.55 };
  strokeLine(pen, [x, bar.top, x + width, bar.top], inks.ink, 1);
  strokeLine(pen, [x, bar.foot, x + width, bar.foot], inks.ink, 1);
  const count = Math.max(3, Math.min(12, Math.round(width / Math.max(12, height * 0.6))));
  for (let i = 0; i < count; i++) {
    const at = x + (width * (i + 0.5)) / count;
    strokeLine(pen, [at, bar.top - height * 0.14, at, y + height * 0.9], inks.soft, 2);
  }
}

/** A groove along its foot, letters standing in it. */
function paintLetterRail(pen: Pen, { x, y, width, height }: Rectangle): void {
  const groove = y + height * 0.74;
  strokeLine(pen, [x, groove, x + width, groove], inks.ink, 1);
  const tall = height * 0.42;
  const count = Math.max(3, Math.floor((width * 0.6) / Math.max(4, tall)));
  for (let i = 0; i < count; i++) {
    const at = x + width * 0.04 + (i * width * 0.6) / count;
    pen.context.fillStyle = inks.soft;
    pen.context.fillRect(at, groove - tall, Math.max(1.5, tall * 0.6), tall);
  }
}

/** A plate and the hook that comes off it. */
function paintHook(pen: Pen, { x, y, width, height }: Rectangle): void {
  const radius = Math.min(width * 0.3, height * 0.2);
  const [cx, cy] = [x + width / 2, y + height * 0.66];
  pen.context.beginPath();
  pen.context.moveTo(cx - radius, y + height * 0.2);
  pen.context.lineTo(cx - radius, cy);
  pen.context.arc(cx, cy, radius, Math.PI, 0, true);
  stroke(pen, inks.ink, Math.max(1.5, Math.min(4, width * 0.08)));
}

function paintGamePiece(pen: Pen, { x, y, width, height }: Rectangle): void {
  pen.context.beginPath();
  pen.context.arc(x + width / 2, y + height / 2, Math.min(width, height) * 0.3, 0, 2 * Math.PI);
  pen.context.fillStyle = inks.hairline;
  pen.context.fill();
  stroke(pen, inks.ink, 1);
}

function paintName({ context }: Pen, { x, y, width, height }: Rectangle, name: string): void {
  context.font = `12px ${condensed}`;
  if (height < 14 || context.measureText(name).width > width - 6) return;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = inks.ink;
  context.fillText(name, x + width / 2, y + height / 2);
}

/** At most twelve, at least 4 px apart; the last one is short. */
function linesOfType(pen: Pen, { x, y, width, height }: Rectangle): void {
  const count = Math.min(12, Math.floor(height / 5));
  for (let i = 0; i < count; i++) {
    const at = Math.round(y + (height * (i + 0.5)) / count) + 0.5;
    strokeLine(pen, [x, at, x + width * (i === count - 1 ? 0.55 : 1), at], inks.hairline, 1);
  }
}

function stroke({ context }: Pen, ink: string, width: number): void {
  context.strokeStyle = ink;
  context.lineWidth = width;
  context.stroke();
}
