import { buildUpKind, type BuildUpKind } from '../../../core/job/build-up-kinds';
import { boxOf, type Polygon } from '../../../core/geometry/polygon';
import type { Zone } from '../../../core/job/schema';
import { titleOfZone } from '../../job/changes/names';
import { polygonOf } from '../rings';
import {
  acrossOf,
  downOf,
  fillPolygon,
  inks,
  sans,
  strokeLine,
  strokePolygon,
  tracePolygon,
  type Pen,
} from './pen';

/** Every zone by what it does: steel and coating in red lead, water to write on, slate to chalk on. */
export function paintZones(pen: Pen, zones: readonly Zone[], faint: boolean): void {
  for (const zone of zones) paintZone(pen, zone, faint);
}

/** One zone; faint where another station's work is in the foreground. */
export function paintZone(pen: Pen, zone: Zone, faint: boolean): void {
  const polygon = polygonOf(zone);
  const kind = buildUpKind(zone.buildUp);
  pen.context.save();
  if (faint) pen.context.globalAlpha = 0.4;
  paintSurface(pen, polygon, kind);
  paintEdge(pen, polygon, kind);
  pen.context.restore();
  paintName(pen, polygon, zone, faint);
}

function paintSurface(pen: Pen, polygon: Polygon, { magnetic, surface }: BuildUpKind): void {
  if (surface === 'chalk') fillPolygon(pen, polygon, inks.slate);
  else if (surface === 'writable') {
    fillPolygon(pen, polygon, inks.water);
    paintRules(pen, polygon);
  } else if (magnetic === 'steel') fillPolygon(pen, polygon, 'rgb(233 185 164 / 40%)');
  else if (magnetic === 'coating') fillPolygon(pen, polygon, 'rgb(233 185 164 / 18%)');
}

/** Steel has a firm edge; a coating's is dashed, and so is that of a coat which only writes or chalks. */
function paintEdge(pen: Pen, polygon: Polygon, { magnetic }: BuildUpKind): void {
  if (magnetic === 'steel') strokePolygon(pen, polygon, inks['red-lead'], 1.5);
  else strokePolygon(pen, polygon, magnetic === 'coating' ? inks['red-lead'] : inks.ink, 1.5, [7, 4]);
}

/** Faint lines as on writing paper, every 125 mm. */
function paintRules(pen: Pen, polygon: Polygon): void {
  const { context, frame } = pen;
  const { left, bottom, right, top } = boxOf(polygon.outer);
  if (125 * frame.scale < 5) return;
  context.save();
  tracePolygon(pen, polygon);
  context.clip('evenodd');
  for (let y = top - 12_500; y > bottom; y -= 12_500) {
    const down = downOf(frame, y);
    strokeLine(pen, [acrossOf(frame, left), down, acrossOf(frame, right), down], 'rgb(93 104 112 / 28%)', 1);
  }
  context.restore();
}

/**
 * Above the zone's highest corner, outside, so that it hides neither panels nor fittings; it runs toward the zone's
 * middle. A rim of paper keeps it legible over lines.
 */
function paintName({ context, frame }: Pen, polygon: Polygon, zone: Zone, faint: boolean): void {
  const { left, right, top } = boxOf(polygon.outer);
  const room = ((right - left) / 100) * frame.scale;
  const highest = polygon.outer.filter(({ y }) => y === top).map(({ x }) => x);
  const fromLeft = Math.min(...highest) - left <= right - Math.max(...highest);
  const words = `${titleOfZone(zone)}, ${buildUpKind(zone.buildUp).label.toLowerCase()}`;
  context.font = `600 13px ${sans}`;
  context.textBaseline = 'alphabetic';
  context.textAlign = fromLeft ? 'left' : 'right';
  const text = context.measureText(words).width <= Math.max(room, 120) ? words : zone.id;
  const at = [
    acrossOf(frame, fromLeft ? Math.min(...highest) : Math.max(...highest)),
    downOf(frame, top) - 7,
  ] as const;
  context.strokeStyle = inks.paper;
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeText(text, ...at);
  context.lineJoin = 'miter';
  context.fillStyle = faint ? inks.soft : inks.ink;
  context.fillText(text, ...at);
}
