import { buildUpKind } from '../../../core/job/build-up-kinds';
import { boxOf, type Box, type Polygon, type Ring } from '../../../core/geometry/polygon';
import type { Zone } from '../../../core/job/schema';
import { titleOfZone } from '../../job/changes/names';
import { acrossOf, downOf, inks, sans, type Pen } from './pen';

/** px from a zone's edge to its name, and where handles stand between the two; from its side; the name's height. */
const gap = 5;
const gapWithHandles = 16;
const inset = 4;
const height = 16;

/** A rectangle on the screen, px. */
interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Outside the zone, so that it hides neither panels nor fittings: above its highest corner, else below it, else
 * only its mark, so that no edge of the wall runs through it. A rim of paper keeps it legible over other lines.
 *
 * @param outline of the wall
 */
export function paintZoneName(
  pen: Pen,
  polygon: Polygon,
  zone: Zone,
  { outline, faint, handles }: { outline: Ring; faint: boolean; handles: string | null },
): void {
  const { context } = pen;
  const words = `${titleOfZone(zone)}, ${buildUpKind(zone.buildUp).label.toLowerCase()}`;
  context.font = `600 13px ${sans}`;
  const box = boxOf(polygon.outer);
  const away = handles === zone.id ? gapWithHandles : gap;
  const places = [words, zone.id].flatMap((text) => {
    const width = context.measureText(text).width;
    return (['above', 'below'] as const).map((where) => ({
      text,
      area: placed(pen, polygon, box, where, { width, away }),
    }));
  });
  const { text, area } = places.find((place) => !edgeRunsThrough(pen, outline, place.area)) ?? places[2]!;
  context.textBaseline = 'alphabetic';
  context.textAlign = 'left';
  context.strokeStyle = inks.paper;
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeText(text, area.left, area.bottom - 3);
  context.lineJoin = 'miter';
  context.fillStyle = faint ? inks.soft : inks.ink;
  context.fillText(text, area.left, area.bottom - 3);
}

/** From the zone's side if its outermost corner is there, else about that corner. */
function placed(
  { frame }: Pen,
  polygon: Polygon,
  { left, right, bottom, top }: Box,
  where: 'above' | 'below',
  { width, away }: { width: number; away: number },
): Area {
  const edge = where === 'above' ? top : bottom;
  const xs = polygon.outer.filter(({ y }) => y === edge).map(({ x }) => x);
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const from =
    first === left
      ? acrossOf(frame, left) + inset
      : last === right
        ? acrossOf(frame, right) - inset - width
        : acrossOf(frame, (first + last) / 2) - width / 2;
  const foot = where === 'above' ? downOf(frame, edge) - away : downOf(frame, edge) + away + height;
  return { left: from, top: foot - height, right: from + width, bottom: foot };
}

function edgeRunsThrough({ frame }: Pen, ring: Ring, area: Area): boolean {
  return ring.some((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    const [x1, y1] = [acrossOf(frame, from.x), downOf(frame, from.y)];
    const [x2, y2] = [acrossOf(frame, to.x), downOf(frame, to.y)];
    return meets(x1, y1, x2 - x1, y2 - y1, area);
  });
}

/** Whether a stroke enters a rectangle. Liang & Barsky, ACM Trans. Graphics 3 (1984): what is left of it after four cuts. */
function meets(x: number, y: number, dx: number, dy: number, area: Area): boolean {
  let [from, to] = [0, 1];
  const cuts = [
    [-dx, x - area.left],
    [dx, area.right - x],
    [-dy, y - area.top],
    [dy, area.bottom - y],
  ] as const;
  for (const [p, q] of cuts) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  return from <= to;
}
