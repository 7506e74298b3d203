import { buildUpKind, type BuildUpKind } from '../../../core/job/build-up-kinds';
import { boxOf, type Polygon, type Ring } from '../../../core/geometry/polygon';
import type { Opening, Zone } from '../../../core/job/schema';
import type { ZoneEdges } from '../../../core/build-up/edge-ends';
import { polygonOf } from '../rings';
import { paintEdgeEnds } from './edge-ends-drawing';
import {
  acrossOf,
  downOf,
  fillPolygon,
  inks,
  screenBox,
  strokeLine,
  strokePolygon,
  tracePolygon,
  type Pen,
} from './pen';
import { paintZoneName, placeZoneName, type PxArea } from './zone-name';

/** Every zone by what it does: steel and coating in red lead, water to write on, slate to chalk on. */
export function paintZones(pen: Pen, zones: readonly Zone[], manner: ZoneManner): void {
  for (const zone of zones) paintSurfaceAndEdge(pen, polygonOf(zone), zone, manner);
  for (const { id } of zones) paintEdgeEnds(pen, manner.edges?.get(id));
  // Names over all zones.
  for (const name of placedNames(pen, zones, manner).names) paintZoneName(pen, name, manner.faint);
}

/** Where names and handles of a wall's zones lie, so that those of the walls beside it keep off. */
export function namesAndHandles(pen: Pen, zones: readonly Zone[], manner: ZoneManner): PxArea[] {
  return placedNames(pen, zones, manner).taken;
}

/** Names clear of openings, of handles and of each other. */
function placedNames(pen: Pen, zones: readonly Zone[], manner: ZoneManner) {
  const taken = [...(manner.taken ?? []), ...openingsOn(pen, manner), ...handlesOn(pen, zones, manner)];
  const names = zones.map((zone) => {
    const name = placeZoneName(pen, polygonOf(zone), zone, { ...manner, taken });
    taken.push(name.area);
    return name;
  });
  return { names, taken };
}

export interface ZoneManner {
  /** The wall's outline, which runs through no name. */
  readonly outline: Ring;
  /** Another station's work is in the foreground. */
  readonly faint: boolean;
  /** Panels lie over the zones of steel: their numbers must be legible on a dark coat. */
  readonly under?: boolean;
  /** How the zones' edges end, by the zones' ids; absent: not shown. */
  readonly edges?: ReadonlyMap<string, ZoneEdges> | undefined;
  /** The zone whose handles are shown. */
  readonly handles: string | null;
  /** They are drawn over the zones, and no name may lie under them. */
  readonly openings?: readonly Opening[];
  /** Where else no name may lie, px. */
  readonly taken?: readonly PxArea[];
}

export function paintZone(pen: Pen, zone: Zone, manner: ZoneManner): void {
  const polygon = polygonOf(zone);
  paintSurfaceAndEdge(pen, polygon, zone, manner);
  const name = placeZoneName(pen, polygon, zone, { ...manner, taken: openingsOn(pen, manner) });
  paintZoneName(pen, name, manner.faint);
}

function paintSurfaceAndEdge(
  pen: Pen,
  polygon: Polygon,
  { buildUp, markings = [] }: Zone,
  { faint, under }: ZoneManner,
): void {
  const kind = buildUpKind(buildUp);
  pen.context.save();
  if (faint) pen.context.globalAlpha = 0.4;
  if (under && kind.magnetic === 'steel' && kind.surface === 'chalk') pen.context.globalAlpha = 0.2;
  paintSurface(pen, polygon, kind, markings.length === 0);
  pen.context.globalAlpha = faint ? 0.4 : 1;
  paintEdge(pen, polygon, kind);
  pen.context.restore();
}

function openingsOn({ frame }: Pen, { openings = [] }: ZoneManner): PxArea[] {
  return openings.map((opening) => areaOf(screenBox(frame, boxOf(polygonOf(opening).outer))));
}

/** The handles of the chosen zone, px: one at every corner and in every middle of its box. */
function handlesOn({ frame }: Pen, zones: readonly Zone[], { handles }: ZoneManner): PxArea[] {
  const zone = zones.find(({ id }) => id === handles);
  if (!zone) return [];
  const { left, right, top, bottom } = areaOf(screenBox(frame, boxOf(polygonOf(zone).outer)));
  return [left, (left + right) / 2, right].flatMap((x) =>
    [top, (top + bottom) / 2, bottom].map((y) => ({
      left: x - handleReach,
      right: x + handleReach,
      top: y - handleReach,
      bottom: y + handleReach,
    })),
  );
}

const handleReach = 7;

function areaOf({ x, y, width, height }: ReturnType<typeof screenBox>): PxArea {
  return { left: x, top: y, right: x + width, bottom: y + height };
}

/** @param ruled a coat to write on has faint rules, unless lines are marked on it, which they would be taken for */
function paintSurface(pen: Pen, polygon: Polygon, { magnetic, surface }: BuildUpKind, ruled: boolean): void {
  if (surface === 'chalk') fillPolygon(pen, polygon, inks.slate);
  else if (surface === 'writable') {
    fillPolygon(pen, polygon, inks.water);
    if (ruled) paintRules(pen, polygon);
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
