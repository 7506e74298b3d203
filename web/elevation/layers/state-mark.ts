import type { HungState } from '../../hanging/state-words';
import { inks, type Pen } from './pen';

/**
 * The mark of a state, told by its shape alone: a full square stands, a half one stands on its tested half, a triangle
 * points down where it falls, an open ring is not known, a slotted head is a screw.
 */
export function paintStateMark(pen: Pen, state: HungState, x: number, y: number, size = 1): void {
  const { context } = pen;
  context.save();
  context.translate(x, y);
  context.scale(size, size);
  context.lineJoin = 'round';
  context.strokeStyle = inks.paper;
  context.fillStyle = inks.paper;
  context.lineWidth = 5;
  outline(context, state);
  context.stroke();
  context.fill();
  const ink = state === 'does not hold' ? inks['red-lead'] : inks.ink;
  context.strokeStyle = ink;
  context.fillStyle = ink;
  context.lineWidth = 1.8;
  outline(context, state);
  context.stroke();
  if (state === 'holds' || state === 'does not hold') context.fill();
  else if (state === 'holds only if tested') context.fillRect(-5.5, 0, 11, 5.5);
  else if (state === 'screwed to a fixing point') slot(context);
  else question(context);
  context.restore();
}

function outline(context: CanvasRenderingContext2D, state: HungState): void {
  context.beginPath();
  if (state === 'holds' || state === 'holds only if tested') context.rect(-5.5, -5.5, 11, 11);
  else if (state === 'does not hold') {
    context.moveTo(-6.5, -5.5);
    context.lineTo(6.5, -5.5);
    context.lineTo(0, 6);
    context.closePath();
  } else context.arc(0, 0, 6, 0, 2 * Math.PI);
}

function slot(context: CanvasRenderingContext2D): void {
  context.beginPath();
  context.moveTo(-4, 4);
  context.lineTo(4, -4);
  context.lineWidth = 2.2;
  context.stroke();
}

function question(context: CanvasRenderingContext2D): void {
  context.font = "600 10px 'Fira Sans', sans-serif";
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText('?', 0, 0.5);
}
