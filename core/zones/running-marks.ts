import { boxOfOutline } from '../geometry/arc';
import { boxOf, type Box, type Point } from '../geometry/polygon';
import type { Fitting, Opening, SurveyLine, Vertex } from '../job/schema';
import { pointOf } from '../job/shape';
import type { KeepOut, SurveyedWall } from '../survey/surveyed-wall';
import { toHundredth, type Hundredth } from '../units';
import type { ZoneArea } from './zone-area';

/** What stands at a running dimension; `corner` is a corner of a free outline that is none of its extremes. */
export interface Marked {
  /** `line`: a joint of the ground. */
  readonly kind: 'wall' | 'opening' | 'fitting' | 'zone' | 'line';
  readonly id: string;
  readonly edge: 'left' | 'right' | 'bottom' | 'top' | 'centre' | 'corner';
  /** For outlines and shapes: which vertices of the job file stand here. */
  readonly vertices?: readonly number[];
}

/** A figure on a tape or a setting-out sheet: everything that stands at this distance from the datum. */
export interface RunningMark {
  readonly at: Hundredth;
  readonly of: readonly Marked[];
}

export interface RunningMarks {
  /** Along the foot: x from the datum, ascending. */
  readonly along: readonly RunningMark[];
  /** Up the side: y from the datum, ascending. */
  readonly up: readonly RunningMark[];
}

/** What running dimensions are taken from: the wall as it is drawn, its keep-outs without their clearance. */
export interface DrawnWall extends Pick<SurveyedWall, 'wall' | 'outline'> {
  readonly keepOuts: readonly Pick<KeepOut, 'kind' | 'id' | 'bare'>[];
}

/**
 * The running dimensions of a wall: every place along and up it that a fitter measures to.
 *
 * Rectangular openings and zones give their edges, rectangular fittings their edges and their centre, circles
 * their centre, free shapes their extremes and corners. Arcs reach as far as their circle does. Equal
 * positions (to the hundredth) are one mark; what stands there is in the order wall, openings, fittings,
 * joints of the ground, zones.
 *
 * @returns positions in hundredths from the wall's datum, which is the origin of the wall's frame
 */
export function runningMarks(
  { wall, outline, keepOuts }: DrawnWall,
  zones: readonly Pick<ZoneArea, 'zone' | 'box'>[],
): RunningMarks {
  const along = new Map<Hundredth, Marked[]>();
  const up = new Map<Hundredth, Marked[]>();
  const marks = { along, up };

  markShape(marks, 'wall', wall.id, boxOfOutline(outline), wall.outline);
  const placed: readonly (Opening | Fitting)[] = [...wall.openings, ...wall.fittings];
  keepOuts.forEach(({ kind, id, bare }, i) => {
    const { circle, shape } = placed[i]!;
    if (circle) return markCentre(marks, kind, id, { x: toHundredth(circle.x), y: toHundredth(circle.y) });
    if (shape) return markShape(marks, kind, id, boxOfOutline(bare), shape);
    const box = boxOf(bare.ring);
    markEdges(marks, kind, id, box);
    if (kind === 'fitting') markCentre(marks, kind, id, middleOf(box));
  });
  for (const line of wall.lines ?? []) markLine(marks, line);
  for (const { zone, box } of zones) markShape(marks, 'zone', zone.id, box, zone.shape);
  return { along: sorted(along), up: sorted(up) };
}

/** An upright line at its place along the foot, a level one at its height; a slanted one is found in its table. */
function markLine({ along, up }: Marks, { id, from, to }: SurveyLine): void {
  if (from[0] === to[0]) add(along, toHundredth(from[0]), { kind: 'line', id, edge: 'centre' });
  if (from[1] === to[1]) add(up, toHundredth(from[1]), { kind: 'line', id, edge: 'centre' });
}

interface Marks {
  readonly along: Map<Hundredth, Marked[]>;
  readonly up: Map<Hundredth, Marked[]>;
}

function add(marks: Map<Hundredth, Marked[]>, at: Hundredth, marked: Marked): void {
  const there = marks.get(at);
  if (there) there.push(marked);
  else marks.set(at, [marked]);
}

function markEdges({ along, up }: Marks, kind: Marked['kind'], id: string, box: Box): void {
  add(along, box.left, { kind, id, edge: 'left' });
  add(along, box.right, { kind, id, edge: 'right' });
  add(up, box.bottom, { kind, id, edge: 'bottom' });
  add(up, box.top, { kind, id, edge: 'top' });
}

function markCentre({ along, up }: Marks, kind: Marked['kind'], id: string, centre: Point): void {
  add(along, centre.x, { kind, id, edge: 'centre' });
  add(up, centre.y, { kind, id, edge: 'centre' });
}

/** Extremes of the true shape, then the corners between them. */
function markShape(
  { along, up }: Marks,
  kind: Marked['kind'],
  id: string,
  box: Box,
  vertices: readonly Vertex[],
): void {
  const points = vertices.map(pointOf).map(({ x, y }) => ({ x: toHundredth(x), y: toHundredth(y) }));
  const xs = [...new Set([box.left, box.right, ...points.map(({ x }) => x)])];
  const ys = [...new Set([box.bottom, box.top, ...points.map(({ y }) => y)])];
  for (const at of xs) {
    const edge = at === box.left ? 'left' : at === box.right ? 'right' : 'corner';
    add(along, at, { kind, id, edge, vertices: indexesWhere(points, ({ x }) => x === at) });
  }
  for (const at of ys) {
    const edge = at === box.bottom ? 'bottom' : at === box.top ? 'top' : 'corner';
    add(up, at, { kind, id, edge, vertices: indexesWhere(points, ({ y }) => y === at) });
  }
}

function indexesWhere(points: readonly Point[], holds: (point: Point) => boolean): number[] {
  return points.flatMap((point, i) => (holds(point) ? [i] : []));
}

/** The middle of an odd number of hundredths is rounded up, as a tape would be read. */
function middleOf({ left, bottom, right, top }: Box): Point {
  return { x: Math.round((left + right) / 2) + 0, y: Math.round((bottom + top) / 2) + 0 };
}

function sorted(marks: ReadonlyMap<Hundredth, Marked[]>): RunningMark[] {
  return [...marks].map(([at, of]) => ({ at, of })).sort((a, b) => a.at - b.at);
}
