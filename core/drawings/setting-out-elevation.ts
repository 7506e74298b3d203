import type { Ring } from '../geometry/polygon';
import type { WorkedWall } from '../worked-out';
import { battenLines, labelBattens } from './batten-lines';
import { edgeEndMarks } from './edge-end-marks';
import { labelFitting, labelOpening, labelWallArcs, labelZone } from './elevation-labels';
import { fixingMarks, labelFixingPoints } from './fixing-marks';
import { fittingSymbol } from './fitting-symbols';
import { hatch } from './hatch';
import { keepOffLine, type LabelRoom } from './label-room';
import { openingSymbol } from './opening-symbols';
import type { Circle, Fill, Item, PaperPoint, Stroke } from './page';
import type { PaperBox } from './paper';
import { labelZoneArcs, zoneArcMarks } from './zone-arcs';
import { labelLeftOut, leftOutLines } from './left-out';
import { markPanels } from './panel-marks';
import { coverRing } from './ring-places';
import { labelSurveyLines, surveyLines } from './survey-lines';
import { breakStrokes, clipStrokes, paperBox, paperRing, shows, type View } from './setting-out-view';

export interface ElevationOptions {
  /** Drawn beneath everything. */
  readonly extensionLines: readonly Stroke[];
  /** Ids of openings and zones only, as a key plan has them: no panel numbers, no names of fittings. */
  readonly brief: boolean;
  /** Whether the part shown cuts the wall, so that nothing may stick out of it. */
  readonly clipped: boolean;
}

export interface DrawnElevation {
  readonly items: readonly Item[];
  /** Marks of panels that found no place. */
  readonly unmarked: readonly string[];
}

export type DrawElevation = typeof drawElevation;

/**
 * The wall square-on: outline, openings, fittings, zones, panel lines in red lead with cut panels hatched,
 * and all names. What already stands in `room` stays clear, and every line is broken round every text.
 */
export function drawElevation(
  wall: WorkedWall,
  view: View,
  room: LabelRoom,
  { extensionLines, brief, clipped }: ElevationOptions,
): DrawnElevation {
  const { survey, zones } = wall;
  const shown = survey.keepOuts.filter(({ bare }) => shows(view, bare.ring));
  const openings = survey.wall.openings.flatMap((opening) =>
    shown
      .filter(({ kind, id }) => kind === 'opening' && id === opening.id)
      .map((keepOut) => ({ opening, keepOut })),
  );
  const fittings = survey.wall.fittings.flatMap((fitting) =>
    shown
      .filter(({ kind, id }) => kind === 'fitting' && id === fitting.id)
      .map((keepOut) => ({ fitting, keepOut })),
  );
  const visibleZones = zones.filter(({ area }) => shows(view, area.shape.ring));
  const panels = visibleZones
    .flatMap(({ layout }) => layout?.panels ?? [])
    .filter(({ outline }) => shows(view, outline.outer));

  const wallLine = closed(paperRing(view, survey.outline.ring), 0.7);
  const zoneLines = visibleZones.flatMap((zone) => zoneOutline(zone, view));
  const panelLines = panels.flatMap(({ outline }) =>
    [outline.outer, ...outline.holes].map((ring) => redLead(paperRing(view, ring), 0.25)),
  );
  const leftOut = visibleZones.flatMap((zone) => leftOutLines(zone, view));
  const battens = brief ? [] : visibleZones.flatMap((zone) => battenLines(zone, view));
  const cut = panels.filter(({ full }) => !full);
  const hatching = cut.flatMap(({ outline }) =>
    hatch(
      [outline.outer, ...outline.holes].map((ring) => paperRing(view, ring)),
      { spacing: 2.6, angle: 45, width: 0.18, colour: 'red-lead' },
    ),
  );

  keepClear(room, [wallLine, ...zoneLines, ...panelLines, ...leftOut], fittings, view);
  const lines = brief ? [] : [...surveyLines(survey, view), ...fixingMarks(survey, view)];
  for (const { points, closed: isClosed } of lines) keepOffLine(room, points, isClosed ?? false);
  for (const { points } of battens) keepOffLine(room, points, false);
  const symbols = openings.flatMap(({ opening, keepOut }) => openingSymbol(opening, keepOut, view));
  for (const item of symbols)
    if (item.kind === 'stroke') keepOffLine(room, item.points, item.closed ?? false);
  const names = [
    ...openings.flatMap(({ opening, keepOut }) => labelOpening(opening, keepOut, view, room)),
    ...(brief ? [] : fittings.flatMap(({ fitting, keepOut }) => labelFitting(fitting, keepOut, view, room))),
    ...visibleZones.flatMap((zone) => labelZone(zone, survey.outline, view, room, brief)),
    ...(brief ? [] : labelSurveyLines(survey, view, room)),
    ...(brief ? [] : labelFixingPoints(survey, view, room)),
    ...(brief ? [] : visibleZones.flatMap((zone) => labelBattens(zone, view, room))),
    ...(brief ? [] : labelWallArcs(survey.outline, view, room)),
    ...(brief ? [] : labelZoneArcs(wall, visibleZones, view, room)),
  ];
  const without = brief ? [] : visibleZones.flatMap((zone) => labelLeftOut(zone, view, room));
  const marked = brief ? { items: [], unmarked: [] } : markPanels(panels, view, room);

  const drawing: Item[] = [
    ...hatching,
    ...(brief ? [] : visibleZones.flatMap((zone) => edgeEndMarks(zone, view))),
    ...lines,
    ...panelLines,
    ...leftOut,
    ...zoneLines,
    ...(brief ? [] : zoneArcMarks(wall, visibleZones, view)),
    ...battens,
    ...symbols,
    ...fittings.flatMap(({ fitting, keepOut }) => fittingSymbol(fitting, keepOut, view)),
    wallLine,
  ];
  const inPart = clipped ? clipItems(drawing, paperBox(view, view.shown)) : drawing;
  const broken = [...extensionLines, ...inPart].flatMap((item): Item[] =>
    item.kind === 'stroke' ? breakStrokes([item], room.textBoxes) : [item],
  );
  return { items: [...broken, ...names, ...without, ...marked.items], unmarked: marked.unmarked };
}

export function zoneOutline({ area, layout }: WorkedWall['zones'][number], view: View): Stroke[] {
  const rings: Ring[] = [area.shapePolygon.outer, ...area.shapePolygon.holes];
  return rings.map((ring) => {
    const points = paperRing(view, ring);
    return layout ? redLead(points, 0.5) : { ...closed(points, 0.35), line: 'dashed' as const };
  });
}

function keepClear(
  room: LabelRoom,
  lines: readonly Stroke[],
  fittings: readonly { keepOut: { bare: { ring: Ring } } }[],
  view: View,
): void {
  for (const { points } of lines) keepOffLine(room, points, true);
  for (const { keepOut } of fittings) {
    for (const box of coverRing(paperRing(view, keepOut.bare.ring))) room.taken.add(box);
  }
}

export function clipItems(items: readonly Item[], box: PaperBox): Item[] {
  return items.flatMap((item): Item[] => {
    if (item.kind === 'stroke') return clipStrokes([item], box);
    if (item.kind === 'fill') return [clipFill(item, box)];
    if (item.kind === 'circle') return isInside(item, box) ? [item] : [];
    return [item];
  });
}

function isInside({ centre, radius }: Circle, box: PaperBox): boolean {
  return (
    centre.x - radius >= box.left &&
    centre.x + radius <= box.right &&
    centre.y - radius >= box.bottom &&
    centre.y + radius <= box.top
  );
}

/** Rings cut off at the sides of a box, one side after the other (Sutherland and Hodgman 1974). */
function clipFill(fill: Fill, { left, bottom, right, top }: PaperBox): Fill {
  const cutAt = (
    ring: readonly PaperPoint[],
    axis: 'x' | 'y',
    limit: number,
    keep: (value: number) => boolean,
  ) =>
    ring.flatMap((a, i): PaperPoint[] => {
      const b = ring[(i + 1) % ring.length]!;
      const start = keep(a[axis]) ? [a] : [];
      if (keep(a[axis]) === keep(b[axis])) return start;
      const t = (limit - a[axis]) / (b[axis] - a[axis]);
      return [...start, { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }];
    });
  const rings = fill.rings.map((ring) => {
    const fromLeft = cutAt(ring, 'x', left, (x) => x >= left);
    const toRight = cutAt(fromLeft, 'x', right, (x) => x <= right);
    const fromBottom = cutAt(toRight, 'y', bottom, (y) => y >= bottom);
    return cutAt(fromBottom, 'y', top, (y) => y <= top);
  });
  return { ...fill, rings };
}

function closed(points: readonly PaperPoint[], width: Stroke['width']): Stroke {
  return { kind: 'stroke', points, closed: true, width };
}

function redLead(points: readonly PaperPoint[], width: Stroke['width']): Stroke {
  return { ...closed(points, width), colour: 'red-lead' };
}
