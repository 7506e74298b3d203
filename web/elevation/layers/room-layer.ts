import { boxOf } from '../../../core/geometry/polygon';
import { usualAngle } from '../../../core/job/corners';
import type { Panel } from '../../../core/panels/panel';
import type { StripFold, StripWall } from '../../../core/survey/room-strip';
import { titleOfWall } from '../../job/changes/names';
import type { StationName } from '../../job/open-job.svelte';
import { polygonOfVertices } from '../rings';
import { paintFittings } from './fittings-layer';
import { paintHungItem } from './hung-layer';
import { paintOpenings } from './openings-layer';
import { paintPanels } from './panels-layer';
import { acrossOf, downOf, fillPolygon, inks, sans, strokeLine, strokePolygon, type Pen } from './pen';
import type { PxArea } from './zone-name';
import { paintZones } from './zones-layer';

export interface RoomDrawing {
  readonly walls: readonly { readonly place: StripWall; readonly panels: readonly Panel[] }[];
  readonly folds: readonly StripFold[];
  readonly station: StationName;
  /** Where names of the wall's own zones, and handles, lie; px. */
  readonly taken: (pen: Pen) => readonly PxArea[];
}

/** The other walls of the room, drawn as the wall itself is, and the folds between them. */
export function paintRoom(pen: Pen, { walls, folds, station, taken: takenBy }: RoomDrawing): void {
  const taken = takenBy(pen);
  for (const { place, panels } of walls) {
    const { wall, dx, dy } = place;
    const { scale, originX, originY } = pen.frame;
    const frame = { ...pen.frame, originX: originX + dx * scale, originY: originY - dy * scale };
    const own: Pen = { context: pen.context, frame };
    const polygon = polygonOfVertices(wall.outline);
    fillPolygon(own, polygon, '#fbfaf2');
    strokePolygon(own, polygon, inks.soft, 1.5);
    paintZones(own, wall.zones, {
      outline: polygon.outer,
      faint: station === 'survey',
      under: station === 'panels',
      handles: null,
      openings: wall.openings,
      taken,
    });
    paintPanels(own, { panels, leftOut: [], faint: station !== 'panels', chosen: null });
    paintOpenings(own, wall.openings);
    paintFittings(own, wall.fittings);
    if (station === 'hanging') for (const item of wall.hung ?? []) paintHungItem(own, item);
    paintName(own, titleOfWall(wall), boxOf(polygon.outer));
  }
  for (const fold of folds) paintFold(pen, fold);
}

/** Under the floor line of its wall, where no other wall's name can be. */
function paintName(
  { context, frame }: Pen,
  words: string,
  { left, right, bottom }: { left: number; right: number; bottom: number },
): void {
  const [from, to] = [acrossOf(frame, left), acrossOf(frame, right)];
  context.font = `13px ${sans}`;
  if (context.measureText(words).width > to - from - 8) return;
  context.textBaseline = 'top';
  context.textAlign = 'center';
  context.fillStyle = inks.soft;
  context.fillText(words, (from + to) / 2, downOf(frame, bottom) + 3);
}

/** A chain line past floor and ceiling; its kind by sign and word: an arrow into the paper or out of it. */
function paintFold(pen: Pen, { at, from, to, corner }: StripFold): void {
  const { context, frame } = pen;
  const x = acrossOf(frame, at * 100);
  const [top, foot] = [downOf(frame, to * 100), downOf(frame, from * 100)];
  strokeLine(pen, [x, top - 8, x, foot + 8], inks.ink, 1.5, [14, 3, 2, 3]);
  const angle = corner.angle ?? usualAngle;
  const words = `${corner.kind} corner${angle === usualAngle ? '' : ` ${angle}°`}`;
  paintSign(pen, x, top - 16, corner.kind === 'internal');
  context.font = `12px ${sans}`;
  context.textBaseline = 'middle';
  context.textAlign = 'left';
  context.strokeStyle = inks.paper;
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeText(words, x + 11, top - 17);
  context.lineJoin = 'miter';
  context.fillStyle = inks.ink;
  context.fillText(words, x + 11, top - 17);
}

/** The two walls in plan, seen from above by whoever faces them: they come towards an internal corner's viewer. */
function paintSign(pen: Pen, x: number, y: number, internal: boolean): void {
  const [near, far] = internal ? [y + 4, y - 4] : [y - 4, y + 4];
  strokeLine(pen, [x - 7, near, x, far], inks.ink, 2);
  strokeLine(pen, [x, far, x + 7, near], inks.ink, 2);
}
