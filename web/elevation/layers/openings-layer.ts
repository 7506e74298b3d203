import { boxOf, type Polygon } from '../../../core/geometry/polygon';
import type { Opening } from '../../../core/job/schema';
import { polygonOf } from '../rings';
import { fillPolygon, inks, screenBox, strokeLine, strokePolygon, tracePolygon, type Pen } from './pen';

type Rectangle = ReturnType<typeof screenBox>;

/** Holes in the wall's surface in the builder's manner: leaf and hinge of a door, panes of a window, shade of a niche. */
export function paintOpenings(pen: Pen, openings: readonly Opening[], clear = false): void {
  for (const opening of openings) paintOpening(pen, opening, clear);
}

/** @param clear a photo lies under the drawing: only lines are drawn, so that it can be seen through them */
export function paintOpening(pen: Pen, opening: Opening, clear = false): void {
  const polygon = polygonOf(opening);
  const box = screenBox(pen.frame, boxOf(polygon.outer));
  if (!clear) fillPolygon(pen, polygon, '#f5f1e6');
  pen.context.save();
  tracePolygon(pen, polygon);
  pen.context.clip('evenodd');
  paintInside(pen, opening, polygon, box, clear);
  pen.context.restore();
  strokePolygon(pen, polygon, inks.ink, 1.5);
}

function paintInside(pen: Pen, opening: Opening, polygon: Polygon, box: Rectangle, clear: boolean): void {
  if (opening.kind === 'door') paintDoor(pen, opening, box);
  else if (opening.kind === 'window') paintWindow(pen, box, clear);
  else if (opening.kind === 'hatch') paintHatch(pen, box);
  else if (opening.kind === 'niche') paintNiche(pen, polygon);
}

/**
 * Two lines from the hinge side's middle to the far corners: full if the leaf comes towards the viewer, dashed if
 * it goes away (common practice in elevations, no source).
 */
function paintDoor(pen: Pen, door: Opening, { x, y, width, height }: Rectangle): void {
  const hinged = door.hinge === 'right' ? x + width : x;
  const far = door.hinge === 'right' ? x : x + width;
  const dash = door.swing === 'towards' ? [] : [6, 4];
  strokeLine(pen, [hinged, y + height / 2, far, y], inks.soft, 0.8, dash);
  strokeLine(pen, [hinged, y + height / 2, far, y + height], inks.soft, 0.8, dash);
  const handle = y + height - (door.handle ?? 1050) * pen.frame.scale;
  const inset = Math.min(width / 4, 65 * pen.frame.scale) * (far > hinged ? -1 : 1);
  pen.context.beginPath();
  pen.context.arc(far + inset, handle, Math.max(2, 18 * pen.frame.scale), 0, 2 * Math.PI);
  pen.context.fillStyle = inks.paper;
  pen.context.fill();
  pen.context.strokeStyle = inks.ink;
  pen.context.lineWidth = 1;
  pen.context.stroke();
}

/** A frame of 60 mm, one mullion from 900 mm of width, and two strokes of light on each pane. */
function paintWindow(pen: Pen, { x, y, width, height }: Rectangle, clear: boolean): void {
  const { context, frame } = pen;
  const rail = Math.min(60 * frame.scale, width / 6, height / 6);
  const panes = width / frame.scale > 900 ? 2 : 1;
  const paneWidth = (width - rail * (panes + 1)) / panes;
  for (let i = 0; i < panes; i++) {
    const left = Math.round(x + rail + i * (paneWidth + rail)) + 0.5;
    const top = Math.round(y + rail) + 0.5;
    const paneHeight = height - 2 * rail;
    context.fillStyle = inks.paper;
    if (!clear) context.fillRect(left, top, paneWidth, paneHeight);
    context.strokeStyle = inks.soft;
    context.lineWidth = 1;
    context.strokeRect(left, top, paneWidth, paneHeight);
    const reach = Math.min(paneWidth, paneHeight) * 0.3;
    for (const at of [0.3, 0.42]) {
      const [mx, my] = [left + paneWidth * at, top + paneHeight * at];
      strokeLine(pen, [mx - reach / 2, my + reach / 2, mx + reach / 2, my - reach / 2], inks.hairline, 1);
    }
  }
}

/** A flap: its frame and both diagonals. */
function paintHatch(pen: Pen, { x, y, width, height }: Rectangle): void {
  strokeLine(pen, [x, y, x + width, y + height], inks.soft, 0.8, [6, 4]);
  strokeLine(pen, [x, y + height, x + width, y], inks.soft, 0.8, [6, 4]);
}

/** The shade that the upper and left reveal throw into a recess. */
function paintNiche(pen: Pen, polygon: Polygon): void {
  const { context, frame } = pen;
  const depth = Math.max(3, 60 * frame.scale);
  fillPolygon(pen, polygon, 'rgb(31 45 54 / 16%)');
  context.save();
  context.translate(depth, depth);
  fillPolygon(pen, polygon, '#f5f1e6');
  strokePolygon(pen, polygon, inks.soft, 1);
  context.restore();
}
