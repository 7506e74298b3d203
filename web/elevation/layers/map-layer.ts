import type { MapBand } from '../../../core/holding/holding-map';
import { hookWords } from '../../../core/holding/map-words';
import { boxOf, boxOfRegion, type Polygon } from '../../../core/geometry/polygon';
import { hatchOf } from '../../hanging/map-hatch';
import { acrossOf, condensed, downOf, inks, traceRing, type Pen } from './pen';

/** The holding map: each band hatched in its own way and bounded, with what a hook there carries wherever there is room. */
export function paintHoldingMap(pen: Pen, bands: readonly MapBand[]): void {
  for (const band of bands) paintBand(pen, band);
  for (const band of bands) for (const polygon of band.region) paintFigure(pen, polygon, hookWords(band));
}

function paintBand({ context, frame }: Pen, band: MapBand): void {
  const path = new Path2D();
  for (const { outer, holes } of band.region)
    for (const ring of [outer, ...holes]) traceRing(path, frame, ring);
  context.save();
  context.lineWidth = 1;
  context.strokeStyle = inks.soft;
  context.stroke(path);
  const { pitch, rises, dash } = hatchOf(band);
  if (pitch !== undefined) {
    const { left, right, bottom, top } = boxOfRegion(band.region);
    const [west, east] = [acrossOf(frame, left), acrossOf(frame, right)];
    const [foot, head] = [downOf(frame, bottom), downOf(frame, top)];
    const tall = foot - head;
    context.clip(path, 'evenodd');
    context.globalAlpha = 0.55;
    context.setLineDash([...dash]);
    context.beginPath();
    // From one grid for the whole drawing, so that bands alike read as one.
    for (let x = Math.floor((west - tall) / pitch) * pitch; x < east; x += pitch) {
      context.moveTo(x, rises ? foot : head);
      context.lineTo(x + tall, rises ? head : foot);
    }
    context.stroke();
  }
  context.restore();
}

/** In the middle of an area with room for it; in a frame about another band, in its foot. */
function paintFigure({ context, frame }: Pen, { outer, holes }: Polygon, words: string): void {
  const { left, right, bottom, top } = boxOf(outer);
  const low = holes.length > 0 ? Math.min(...holes.map((hole) => boxOf(hole).bottom)) : top;
  const [west, east] = [acrossOf(frame, left), acrossOf(frame, right)];
  const [foot, head] = [downOf(frame, bottom), downOf(frame, low)];
  context.font = `600 13px ${condensed}`;
  const width = context.measureText(words).width + 8;
  if (width > east - west - 4 || foot - head < 18) return;
  const [x, y] = [(west + east) / 2, (foot + head) / 2];
  context.fillStyle = inks.paper;
  context.fillRect(x - width / 2, y - 8, width, 16);
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = inks.ink;
  context.fillText(words, x, y + 0.5);
}
