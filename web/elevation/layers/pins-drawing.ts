import type { Pin } from '../../../core/job/schema';
import { toScreen, type Frame, type ScreenPoint } from '../frame';
import { condensed, inks, type Pen } from './pen';

/** Each pinned photo: a dot at its place, its name on a little label over it, its date where it is known. */
export function paintPins(pen: Pen, pins: readonly Pin[]): void {
  const { context, frame } = pen;
  for (const { id, at, date } of pins) {
    const { px, py } = toScreen(frame, { x: at[0], y: at[1] });
    const words = date ? `${id} · ${date}` : id;
    context.font = `600 13px ${condensed}`;
    const width = context.measureText(words).width + 12;
    const [left, top] = [px - 9, py - 34];
    context.beginPath();
    context.moveTo(px, py);
    context.lineTo(px + 7, top + 20);
    context.lineTo(left + width, top + 20);
    context.lineTo(left + width, top);
    context.lineTo(left, top);
    context.lineTo(left, top + 20);
    context.lineTo(px - 4, top + 20);
    context.closePath();
    context.fillStyle = inks.paper;
    context.fill();
    context.strokeStyle = inks.ink;
    context.lineWidth = 1.2;
    context.stroke();
    context.beginPath();
    context.arc(px, py, 2.5, 0, 2 * Math.PI);
    context.fillStyle = inks.ink;
    context.fill();
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    context.fillText(words, left + 6, top + 10.5);
  }
}

/** The pin whose label or dot is under a point of the screen, the one painted last first. */
export function pinAt(
  frame: Frame,
  pins: readonly Pin[],
  { px, py }: ScreenPoint,
  touch: boolean,
): Pin | undefined {
  const slack = touch ? 10 : 3;
  return pins.findLast(({ id, at, date }) => {
    const place = toScreen(frame, { x: at[0], y: at[1] });
    // About 7 px a letter: near enough for a hand.
    const width = (date ? id.length + date.length + 3 : id.length) * 7 + 10;
    const [left, top] = [place.px - 9 - slack, place.py - 34 - slack];
    return px >= left && px <= left + width + 2 * slack && py >= top && py <= place.py + 3 + slack;
  });
}
