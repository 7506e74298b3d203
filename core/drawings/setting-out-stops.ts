import { boxOfOutline, cornersOf } from '../geometry/arc';
import type { Outline } from '../geometry/outline';
import { boxOf, type Box, type Point, type Ring } from '../geometry/polygon';
import type { FixingPoint } from '../job/ground-schema';
import type { SurveyLine } from '../job/schema';
import { boxOfFixingPoint, middleOfFixingPoint } from '../survey/fixing-points';
import type { Panel } from '../panels/panel';
import type { KeepOut } from '../survey/surveyed-wall';
import { toHundredth, type Hundredth } from '../units';
import type { WorkedWall } from '../worked-out';

/** What a running dimension may leave to a table, the first to go named last. */
export type StopClass = 'wall' | 'zone' | 'opening' | 'panel' | 'fitting' | 'fixing';

/** A place to be dimensioned along one axis, hundredths, wall frame. */
export interface WallStop {
  readonly at: Hundredth;
  /** Across the axis: the farthest place from the dimension line that its extension line must reach. */
  readonly from: Hundredth;
  /** Ids of what begins or ends here; none for wall corners and panel lines. */
  readonly ids: readonly string[];
  readonly classes: readonly StopClass[];
}

export type Axis = 'x' | 'y';

/** A stop of one object, with the box of the object: on a page that does not show it, it is not dimensioned. */
interface ObjectStop extends WallStop {
  readonly extent: Box;
}

export type ObjectStops = Readonly<Record<Axis, readonly ObjectStop[]>>;

/** Stops of every object of a wall, along both axes. */
export function objectStops({ survey, zones }: WorkedWall): ObjectStops {
  const along = (axis: Axis): ObjectStop[] => [
    ...withExtent(boxOf(survey.outline.ring), outlineStops(survey.outline, axis, 'wall')),
    ...survey.keepOuts.flatMap((keepOut) =>
      withExtent(boxOf(keepOut.bare.ring), keepOutStops(keepOut, axis)),
    ),
    ...(survey.wall.lines ?? []).flatMap((line) => lineStops(line, axis)),
    ...(survey.wall.fixingPoints ?? []).flatMap((point) => fixingStops(point, axis)),
    ...zones.flatMap(({ area }) =>
      withExtent(area.box, outlineStops(area.shape, axis, 'zone', area.zone.id)),
    ),
    ...zones.flatMap(({ area, layout }) =>
      panelStops(layout?.panels ?? [], axis, Math.round((area.zone.layout?.jointGap ?? 0) * 100)),
    ),
  ];
  return { x: along('x'), y: along('y') };
}

/**
 * Every place of a part of a wall that the fitter measures along one axis, each once, in ascending order:
 * corners of the wall, edges of openings, fittings and zones, panel lines. Round things are measured to their
 * centre; arcs to their ends and their outermost points.
 */
export function wallStops(stops: ObjectStops, axis: Axis, shown: Box): WallStop[] {
  const [from, to] = axis === 'x' ? [shown.left, shown.right] : [shown.bottom, shown.top];
  return mergeStops(stops[axis].filter(({ at, extent }) => from <= at && at <= to && touches(extent, shown)));
}

function touches(a: Box, b: Box): boolean {
  return a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top;
}

function withExtent(extent: Box, stops: readonly WallStop[]): ObjectStop[] {
  return stops.map((stop) => ({ ...stop, extent }));
}

/** An upright line stands at its place along the foot, a level one at its height; a slanted one at its ends. */
function lineStops({ id, from, to }: SurveyLine, axis: Axis): ObjectStop[] {
  const ends = [from, to].map(([x, y]) => ({ x: toHundredth(x), y: toHundredth(y) }));
  const across = axis === 'x' ? 'y' : 'x';
  const isAlong = ends[0]![across] === ends[1]![across];
  if (isAlong) return [];
  return withExtent(
    boxOf(ends),
    ends.map((end) => stopAt(end, axis, 'opening', id)),
  );
}

/** A drilling is set out by its middle both ways, a stud by its middle along the foot; a pattress is in the table. */
function fixingStops(point: FixingPoint, axis: Axis): ObjectStop[] {
  if (point.kind === 'pattress' || (point.kind === 'stud' && axis === 'y')) return [];
  const box = boxOfFixingPoint(point);
  const middle = middleOfFixingPoint(point);
  const from = point.kind === 'stud' ? { ...middle, y: box.bottom } : middle;
  return withExtent(box, [stopAt(from, axis, 'fixing', point.id)]);
}

/** Ends of a round thing are of no use to a fitter: its centre is. */
function keepOutStops({ kind, id, bare }: KeepOut, axis: Axis): WallStop[] {
  const circle = circleOf(bare);
  if (!circle) return outlineStops(bare, axis, kind, id);
  const across = axis === 'x' ? circle.centre.y : circle.centre.x;
  const at = axis === 'x' ? circle.centre.x : circle.centre.y;
  return [{ at: Math.round(at), from: Math.round(across), ids: [id], classes: [kind] }];
}

/** The arc of an outline that is one full circle. */
export function circleOf({ ring, arcs }: Outline): Outline['arcs'][number] | undefined {
  const [arc] = arcs;
  return arc && arcs.length === 1 && arc.edges === ring.length ? arc : undefined;
}

function outlineStops(outline: Outline, axis: Axis, kind: StopClass, id?: string): WallStop[] {
  const corners: Point[] = [...cornersOf(outline.ring, outline.arcs)];
  if (outline.arcs.length > 0) corners.push(...extremesOf(outline, axis));
  return corners.map((corner) => stopAt(corner, axis, kind, id));
}

/** Where the outline's box touches it: the crown of an arch is dimensioned though it is no corner. */
function extremesOf(outline: Outline, axis: Axis): Point[] {
  const { left, bottom, right, top } = boxOfOutline(outline);
  return (axis === 'x' ? [left, right] : [bottom, top]).map((value) => {
    const nearest = outline.ring.reduce((best, point) =>
      Math.abs(point[axis] - value) < Math.abs(best[axis] - value) ? point : best,
    );
    return { ...nearest, [axis]: value };
  });
}

/**
 * Panel lines: the side of each panel's rectangle, where an edge lies on it. With a joint gap only the nearer
 * edge is measured to, the one that the panel is set against; the far edge where no next panel follows.
 */
function panelStops(panels: readonly Panel[], axis: Axis, jointGap: Hundredth): ObjectStop[] {
  const [low, high, across] =
    axis === 'x' ? (['left', 'right', 'bottom'] as const) : (['bottom', 'top', 'left'] as const);
  const boxes = panels.map(({ outline }) => ({ box: boxOf(outline.outer), ring: outline.outer }));
  const nearer = boxes.filter(({ box, ring }) => hasEdgeAt(ring, axis, box[low]));
  const starts = new Set(nearer.map(({ box }) => box[low]));
  const farther = boxes.filter(
    ({ box, ring }) =>
      hasEdgeAt(ring, axis, box[high]) && !starts.has(box[high]) && !starts.has(box[high] + jointGap),
  );
  const stop = (box: Box, at: Hundredth): ObjectStop => ({
    at,
    from: box[across],
    ids: [],
    classes: ['panel'],
    extent: box,
  });
  return [...nearer.map(({ box }) => stop(box, box[low])), ...farther.map(({ box }) => stop(box, box[high]))];
}

function hasEdgeAt(ring: Ring, axis: Axis, value: Hundredth): boolean {
  return ring.some((point, i) => point[axis] === value && ring[(i + 1) % ring.length]![axis] === value);
}

function stopAt(corner: Point, axis: Axis, kind: StopClass, id?: string): WallStop {
  const at = axis === 'x' ? corner.x : corner.y;
  const from = axis === 'x' ? corner.y : corner.x;
  return { at, from, ids: id === undefined ? [] : [id], classes: [kind] };
}

function mergeStops(stops: readonly WallStop[]): WallStop[] {
  const merged = new Map<Hundredth, WallStop>();
  // An object's own extension line starts at its nearest corner; of several objects the farthest counts.
  const nearestOfEach = new Map<string, WallStop>();
  for (const stop of stops) {
    const key = `${stop.classes[0]} ${stop.ids[0] ?? ''} ${stop.at}`;
    const known = nearestOfEach.get(key);
    if (!known || stop.from < known.from) nearestOfEach.set(key, stop);
  }
  for (const stop of nearestOfEach.values()) {
    const known = merged.get(stop.at);
    merged.set(
      stop.at,
      known
        ? {
            at: known.at,
            from: Math.max(known.from, stop.from),
            ids: [...new Set([...known.ids, ...stop.ids])],
            classes: [...new Set([...known.classes, ...stop.classes])],
          }
        : { at: stop.at, from: stop.from, ids: stop.ids, classes: stop.classes },
    );
  }
  return [...merged.values()].sort((a, b) => a.at - b.at);
}
