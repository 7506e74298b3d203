import { boxOf, type Polygon } from '../../../core/geometry/polygon';
import type { Fitting } from '../../../core/job/schema';
import { polygonOf } from '../rings';
import {
  condensed,
  fillPolygon,
  inks,
  screenBox,
  strokeLine,
  strokePolygon,
  tracePolygon,
  type Pen,
} from './pen';

type Rectangle = ReturnType<typeof screenBox>;

/** What sits on the wall, each with a plain symbol inside its true outline. */
export function paintFittings(pen: Pen, fittings: readonly Fitting[]): void {
  for (const fitting of fittings) paintFitting(pen, fitting);
}

export function paintFitting(pen: Pen, fitting: Fitting): void {
  const polygon = polygonOf(fitting);
  const box = screenBox(pen.frame, boxOf(polygon.outer));
  fillPolygon(pen, polygon, inks.paper);
  if (Math.min(box.width, box.height) >= 7) {
    pen.context.save();
    tracePolygon(pen, polygon);
    pen.context.clip();
    if (Object.hasOwn(symbols, fitting.kind)) symbols[fitting.kind]!(pen, box, polygon);
    else if (fitting.kind !== 'free') paintName(pen, box, fitting.name || fitting.kind);
    pen.context.restore();
  }
  strokePolygon(pen, polygon, inks.ink, 1.3);
}

type Symbol = (pen: Pen, box: Rectangle, polygon: Polygon) => void;

const symbols: Readonly<Record<string, Symbol>> = {
  socket: paintSocket,
  switch: paintSwitch,
  light: paintLight,
  thermostat: paintThermostat,
  radiator: paintRadiator,
  pipe: paintPipe,
  'beam-end': paintBeamEnd,
};

/** A kind that has no symbol, such as one of the user's own, is named where there is room. */
function paintName({ context }: Pen, { x, y, width, height }: Rectangle, name: string): void {
  context.font = `12px ${condensed}`;
  if (height < 14 || context.measureText(name).width > width - 6) return;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = inks.ink;
  context.fillText(name, x + width / 2, y + height / 2);
}

/** One round outlet for each whole height that fits along the width. */
function paintSocket(pen: Pen, { x, y, width, height }: Rectangle): void {
  const across = width >= height;
  const [long, short] = across ? [width, height] : [height, width];
  const count = Math.max(1, Math.min(6, Math.round(long / short)));
  for (let i = 0; i < count; i++) {
    const at = (long * (i + 0.5)) / count;
    const [cx, cy] = across ? [x + at, y + height / 2] : [x + width / 2, y + at];
    circle(pen, cx, cy, Math.min(short, long / count) * 0.3);
  }
}

/** A rocker: the plate parted across its middle, tilted. */
function paintSwitch(pen: Pen, { x, y, width, height }: Rectangle): void {
  const inset = Math.min(width, height) * 0.22;
  pen.context.strokeStyle = inks.ink;
  pen.context.lineWidth = 1;
  pen.context.strokeRect(x + inset, y + inset, width - 2 * inset, height - 2 * inset);
  strokeLine(pen, [x + inset, y + height / 2, x + width - inset, y + height / 2], inks.ink, 1);
}

/** A circle with its cross. */
function paintLight(pen: Pen, { x, y, width, height }: Rectangle): void {
  const r = Math.min(width, height) * 0.36;
  const [cx, cy] = [x + width / 2, y + height / 2];
  const d = r * Math.SQRT1_2;
  circle(pen, cx, cy, r);
  strokeLine(pen, [cx - d, cy - d, cx + d, cy + d], inks.ink, 1);
  strokeLine(pen, [cx - d, cy + d, cx + d, cy - d], inks.ink, 1);
}

/** A dial with its hand. */
function paintThermostat(pen: Pen, { x, y, width, height }: Rectangle): void {
  const r = Math.min(width, height) * 0.32;
  const [cx, cy] = [x + width / 2, y + height / 2];
  circle(pen, cx, cy, r);
  strokeLine(pen, [cx, cy, cx + r * 0.7, cy - r * 0.7], inks.ink, 1.2);
}

/** Columns as they stand, about 60 mm apart, never closer than 4 px. */
function paintRadiator(pen: Pen, { x, y, width, height }: Rectangle): void {
  const gap = Math.max(4, 60 * pen.frame.scale);
  const columns = Math.max(1, Math.floor(width / gap));
  for (let i = 1; i < columns; i++) {
    const at = Math.round(x + (width * i) / columns) + 0.5;
    strokeLine(pen, [at, y, at, y + height], inks.soft, 1);
  }
  const rail = height * 0.08;
  strokeLine(pen, [x, y + rail, x + width, y + rail], inks.soft, 1);
  strokeLine(pen, [x, y + height - rail, x + width, y + height - rail], inks.soft, 1);
}

/** Cut across: a cross through its middle; alongside: its centre line. */
function paintPipe(pen: Pen, { x, y, width, height }: Rectangle, polygon: Polygon): void {
  const [cx, cy] = [x + width / 2, y + height / 2];
  const round = polygon.outer.length > 8;
  const dash = [8, 3, 2, 3];
  if (round || width >= height) strokeLine(pen, [x, cy, x + width, cy], inks.soft, 1, round ? [] : dash);
  if (round || height > width) strokeLine(pen, [cx, y, cx, y + height], inks.soft, 1, round ? [] : dash);
}

/** Both diagonals, as timber cut across is drawn. */
function paintBeamEnd(pen: Pen, { x, y, width, height }: Rectangle): void {
  strokeLine(pen, [x, y, x + width, y + height], inks.soft, 1);
  strokeLine(pen, [x, y + height, x + width, y], inks.soft, 1);
}

function circle({ context }: Pen, x: number, y: number, radius: number): void {
  context.beginPath();
  context.arc(x, y, Math.max(1, radius), 0, 2 * Math.PI);
  context.strokeStyle = inks.ink;
  context.lineWidth = 1;
  context.stroke();
}
