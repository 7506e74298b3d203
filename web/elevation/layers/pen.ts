import type { Polygon, Ring } from '../../../core/geometry/polygon';
import { colours } from '../../../core/drawings/colours';
import type { Frame } from '../frame';

/** What every layer draws with: the frame it draws in, the context, and the look's inks. */
export interface Pen {
  readonly context: CanvasRenderingContext2D;
  readonly frame: Frame;
}

export const inks = { ...colours, tint: '#faece5', tapeLine: '#a58f3c' } as const;

export const sans = "'Fira Sans', sans-serif";
export const condensed = "'Fira Sans Condensed', 'Fira Sans', sans-serif";

/** px across of a length on the wall in hundredths, on the middle of a pixel so that thin lines stay sharp. */
export function acrossOf({ originX, scale }: Frame, x: number): number {
  return Math.floor(originX + (x / 100) * scale) + 0.5;
}

/** px down of a height on the wall in hundredths, likewise. */
export function downOf({ originY, scale }: Frame, y: number): number {
  return Math.floor(originY - (y / 100) * scale) + 0.5;
}

/**
 * Adds a closed ring (hundredths, wall frame) to a path. Upright and level edges lie on the middle of a
 * pixel; corners of sloping and curved edges stay where they are, so that arcs stay smooth.
 */
export function traceRing(path: CanvasPath, frame: Frame, ring: Ring): void {
  let before = ring.at(-1)!;
  ring.forEach((point, i) => {
    const after = ring[i + 1] ?? ring[0]!;
    const upright = point.x === before.x || point.x === after.x;
    const level = point.y === before.y || point.y === after.y;
    const px = upright ? acrossOf(frame, point.x) : frame.originX + (point.x / 100) * frame.scale;
    const py = level ? downOf(frame, point.y) : frame.originY - (point.y / 100) * frame.scale;
    if (i === 0) path.moveTo(px, py);
    else path.lineTo(px, py);
    before = point;
  });
  path.closePath();
}

/** Starts a path of a polygon and its holes; fill it by the even-odd rule. */
export function tracePolygon(pen: Pen, polygon: Polygon): void {
  pen.context.beginPath();
  traceRing(pen.context, pen.frame, polygon.outer);
  for (const hole of polygon.holes) traceRing(pen.context, pen.frame, hole);
}

export function fillPolygon(pen: Pen, polygon: Polygon, fill: string | CanvasPattern): void {
  tracePolygon(pen, polygon);
  pen.context.fillStyle = fill;
  pen.context.fill('evenodd');
}

export function strokePolygon(
  pen: Pen,
  polygon: Polygon,
  stroke: string,
  width: number,
  dash: number[] = [],
): void {
  const { context } = pen;
  tracePolygon(pen, polygon);
  context.strokeStyle = stroke;
  context.lineWidth = width;
  context.setLineDash(dash);
  context.stroke();
  context.setLineDash([]);
}

/** A straight stroke between two points in px. */
export function strokeLine(
  { context }: Pen,
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  stroke: string,
  width: number,
  dash: number[] = [],
): void {
  context.beginPath();
  context.moveTo(x1, y1);
  context.lineTo(x2, y2);
  context.strokeStyle = stroke;
  context.lineWidth = width;
  context.setLineDash(dash);
  context.stroke();
  context.setLineDash([]);
}

/** The rectangle in px that a box in hundredths covers. */
export function screenBox(frame: Frame, box: { left: number; bottom: number; right: number; top: number }) {
  const x = acrossOf(frame, box.left);
  const y = downOf(frame, box.top);
  return { x, y, width: acrossOf(frame, box.right) - x, height: downOf(frame, box.bottom) - y };
}

/** 12 px wide; what a finger may miss it by is wider. */
export function paintSquare({ context }: Pen, px: number, py: number, fill: string): void {
  const [x, y] = [Math.round(px) - 5.5, Math.round(py) - 5.5];
  context.fillStyle = fill;
  context.fillRect(x, y, 11, 11);
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1.5;
  context.strokeRect(x, y, 11, 11);
}
