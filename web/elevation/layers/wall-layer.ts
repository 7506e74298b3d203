import type { Vertex } from '../../../core/job/schema';
import { boxOf, type Box, type Ring } from '../../../core/geometry/polygon';
import { polygonOfVertices } from '../rings';
import { acrossOf, downOf, fillPolygon, inks, strokeLine, strokePolygon, type Pen } from './pen';

/** A grown person of 1.75 m; heights and widths in mm (common practice, no source). */
const figure = { height: 1750, headRadius: 105, shoulder: 1450, shoulderWidth: 460, hip: 850, hipWidth: 340 };

export interface WallDrawing {
  /** None while the job has no wall: then only the paper is drawn. */
  readonly outline: readonly Vertex[] | undefined;
  /** The standing figure for scale. */
  readonly figure: boolean;
  /** A photo lies under the wall: its surface is left clear. */
  readonly clear: boolean;
}

/** Paper with dots at round lengths, the wall's outline, the floor line beyond it and the datum. */
export function paintWall(pen: Pen, { outline, figure: withFigure, clear }: WallDrawing): void {
  paintGrid(pen);
  paintDatum(pen);
  if (!outline) return;
  const polygon = polygonOfVertices(outline);
  if (!clear) fillPolygon(pen, polygon, '#fbfaf2');
  strokePolygon(pen, polygon, inks.ink, 2);
  const box = boxOf(polygon.outer);
  paintFloor(pen, polygon.outer, box);
  if (withFigure) paintFigure(pen, box.right - Math.min(90_000, (box.right - box.left) / 3), box.bottom);
  paintDatum(pen);
}

/** A heavy line under the wall, a little beyond it where it ends at the side; none under stairs. */
function paintFloor(pen: Pen, ring: Ring, { left, bottom, right }: Box): void {
  const y = downOf(pen.frame, bottom);
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    if (from.y !== bottom || to.y !== bottom) return;
    const [start, end] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
    const x1 = acrossOf(pen.frame, start) - (start === left ? 10 : 0);
    const x2 = acrossOf(pen.frame, end) + (end === right ? 10 : 0);
    strokeLine(pen, [x1, y, x2, y], inks.ink, 3);
  });
}

/** Dots, at least 14 px apart, on round lengths from the datum. */
function paintGrid({ context, frame }: Pen): void {
  const step = [100, 250, 500, 1000, 2500, 5000, 10_000, 50_000].find((mm) => mm * frame.scale >= 14);
  if (!step) return;
  const gap = step * frame.scale;
  context.fillStyle = inks.hairline;
  for (let x = frame.originX % gap; x < frame.width; x += gap) {
    for (let y = frame.originY % gap; y < frame.height; y += gap) context.fillRect(x - 0.5, y - 0.5, 1, 1);
  }
}

/** The point that running dimensions are taken from. */
function paintDatum(pen: Pen): void {
  const x = acrossOf(pen.frame, 0);
  const y = downOf(pen.frame, 0);
  pen.context.beginPath();
  pen.context.arc(x, y, 6, 0, 2 * Math.PI);
  pen.context.strokeStyle = inks.ink;
  pen.context.lineWidth = 1;
  pen.context.stroke();
  strokeLine(pen, [x - 10, y, x + 10, y], inks.ink, 1);
  strokeLine(pen, [x, y - 10, x, y + 10], inks.ink, 1);
}

function paintFigure({ context, frame }: Pen, middle: number, floor: number): void {
  const x = (mm: number) => frame.originX + (middle / 100 + mm) * frame.scale;
  const y = (mm: number) => frame.originY - (floor / 100 + mm) * frame.scale;
  context.fillStyle = 'rgb(31 45 54 / 12%)';
  context.beginPath();
  context.arc(x(0), y(figure.height - figure.headRadius), figure.headRadius * frame.scale, 0, 2 * Math.PI);
  context.fill();
  context.beginPath();
  context.moveTo(x(-figure.shoulderWidth / 2), y(figure.shoulder));
  context.lineTo(x(figure.shoulderWidth / 2), y(figure.shoulder));
  context.lineTo(x(figure.hipWidth / 2), y(figure.hip));
  context.lineTo(x(80), y(figure.hip));
  context.lineTo(x(80), y(0));
  context.lineTo(x(-80), y(0));
  context.lineTo(x(-80), y(figure.hip));
  context.lineTo(x(-figure.hipWidth / 2), y(figure.hip));
  context.closePath();
  context.fill();
}
