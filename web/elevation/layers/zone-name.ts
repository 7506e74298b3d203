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

const nameFont = `600 13px ${sans}`;

/** A name and where it lies. */
export interface PlacedName {
  readonly text: string;
  readonly area: PxArea;
}

/** A rectangle on the screen, px. */
export interface PxArea {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Outside the zone, so that it hides neither panels nor fittings: above its highest corner, else below it, else
 * further along that edge, else only its mark, at last within, so that no edge of the wall runs through it and nothing in `taken` covers
 * it. A rim of paper keeps it legible over other lines.
 *
 * @param outline of the wall
 */
export function placeZoneName(
  pen: Pen,
  polygon: Polygon,
  zone: Zone,
  { outline, handles, taken }: { outline: Ring; handles: string | null; taken: readonly PxArea[] },
): PlacedName {
  const { context } = pen;
  const words = `${titleOfZone(zone)}, ${buildUpKind(zone.buildUp).label.toLowerCase()}`;
  context.font = nameFont;
  const box = boxOf(polygon.outer);
  const away = handles === zone.id ? gapWithHandles : gap;
  const places = [words, zone.id].flatMap((text) => {
    const width = context.measureText(text).width;
    const beside = (['above', 'below'] as const).map((where) =>
      placed(pen, polygon, box, where, { width, away }),
    );
    const along = beside.flatMap((area) => movedAlong(area, acrossOf(pen.frame, box.right) - inset));
    return [...beside, ...along].map((area) => ({ text, area }));
  });
  const isFree = (area: PxArea) =>
    !edgeRunsThrough(pen, outline, area) && !taken.some((other) => overlap(area, other));
  const found = places.find((place) => isFree(place.area));
  if (found) return found;
  // Where nothing is free about it, under its upper edge: there it covers no panel's number.
  const width = context.measureText(zone.id).width;
  const [left, top] = [acrossOf(pen.frame, box.left) + inset, downOf(pen.frame, box.top) + gap];
  return { text: zone.id, area: { left, right: left + width, top, bottom: top + height } };
}

export function paintZoneName({ context }: Pen, { text, area }: PlacedName, faint: boolean): void {
  context.font = nameFont;
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

/** The same place further right, step by step, as far as a zone's right end. */
function movedAlong(area: PxArea, end: number): PxArea[] {
  const moved: PxArea[] = [];
  for (let by = 24; area.right + by <= end && moved.length < 60; by += 24)
    moved.push({ ...area, left: area.left + by, right: area.right + by });
  return moved;
}

function overlap(a: PxArea, b: PxArea): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** From the zone's side if its outermost corner is there, else about that corner. */
function placed(
  { frame }: Pen,
  polygon: Polygon,
  { left, right, bottom, top }: Box,
  where: 'above' | 'below',
  { width, away }: { width: number; away: number },
): PxArea {
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

function edgeRunsThrough({ frame }: Pen, ring: Ring, area: PxArea): boolean {
  return ring.some((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    const [x1, y1] = [acrossOf(frame, from.x), downOf(frame, from.y)];
    const [x2, y2] = [acrossOf(frame, to.x), downOf(frame, to.y)];
    return meets(x1, y1, x2 - x1, y2 - y1, area);
  });
}

/** Whether a stroke enters a rectangle. Liang & Barsky, ACM Trans. Graphics 3 (1984): what is left of it after four cuts. */
function meets(x: number, y: number, dx: number, dy: number, area: PxArea): boolean {
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
