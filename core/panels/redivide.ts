import { boxOf, type Box, type Polygon, type Region } from '../geometry/polygon';
import type { StockSheet } from '../job/schema';
import { usableSize } from '../job/usable-size';
import type { Hundredth } from '../units';
import { areaEdges, type AreaEdges } from './area-edges';
import {
  sidesAcross,
  stretchesBeside,
  type JointAxis,
  type JointCell,
  type JointStretch,
} from './joint-cells';
import { fitsStock } from './laid-piece';
import type { Pace, Steps } from './pace';
import { cutCourse } from './pieces';
import { fromTheLeft } from './pieces-of-grid';
import { isSliver } from './sliver';

/** What was done about a sliver: for the findings. */
export interface JointChange {
  readonly axis: JointAxis;
  /** Two panels became one, or the joint between them was moved. */
  readonly kind: 'joined' | 'moved';
  /** Lowest and highest course in which it was done. */
  readonly courses: readonly [number, number];
  /** Across the joint, at the sliver: the panel before it and the one after it. */
  readonly was: readonly [Hundredth, Hundredth];
  readonly is: readonly Hundredth[];
}

export interface Redivided {
  readonly cells: readonly JointCell[];
  readonly changes: readonly JointChange[];
}

/** Whether a joint may run here; `from` to `to` along it. */
export type JointRule = (axis: JointAxis, at: Hundredth, from: Hundredth, to: Hundredth) => boolean;

/** What holds for the joints that would be moved or taken out. */
export interface JointRules {
  /** Where a joint may not run, none is moved to. */
  readonly allowsJoint?: JointRule | undefined;
  /** Joints that stay as they are. */
  readonly isHeld?: ((stretch: JointStretch) => boolean) | undefined;
}

export interface RedivideQuestion extends JointRules {
  readonly area: Region;
  /** All cells that the area reaches into: they tile it, but for the joints. */
  readonly cells: readonly JointCell[];
  /** Empty cells are among them, so that a level joint may move right across staggered courses. */
  readonly withEmpty: boolean;
  readonly gap: Hundredth;
  readonly leastWidth: Hundredth;
}

/**
 * Cells changed so that fewer of their pieces are slivers: a sliver and its neighbour become one panel where
 * that comes out of one stock sheet, else the joint between them is moved, in one straight line as far as it goes
 * on between panels, or where that cannot be, beside the slivers alone.
 *
 *     ┌──────────┬─┐      ┌─────┬──────┐
 *     │   500    │ │  →   │ 260 │ 260  │      Every change leaves fewer slivers than there were;
 *     └──────────┴─┘      └─────┴──────┘      pieces cover what they covered, but for where joints lie.
 *              20
 */
export function* redivideInSteps(question: RedivideQuestion, pace: Pace): Steps<Redivided> {
  const cut = cutterOf(question, pace);
  let cells = question.cells;
  const changes: JointChange[] = [];
  for (let again = true; again;) {
    again = false;
    for (const cell of cells.filter(({ slivers }) => slivers > 0)) {
      // It may have gone with a change made for another.
      if (!cells.includes(cell)) continue;
      const best = yield* bestChange(question, cut, cell, cells, pace);
      if (!best) continue;
      cells = withChange(cells, best);
      changes.push(best.said);
      again = true;
    }
  }
  return { cells, changes };
}

/** Cuts a box out of the area: the cell that it becomes, or null where a piece of it comes out of no stock sheet. */
type CutBox = (cell: JointCell, box: Box) => JointCell | null;

function cutterOf({ area, leastWidth }: RedivideQuestion, pace: Pace): CutBox {
  const edges = areaEdges(area);
  return (cell, box) => {
    pace.spend(workOfCell);
    const pieces = fromTheLeft(cutCourse(area, edges, box.bottom, box.top)(box));
    if (!pieces.every((piece) => fitsStock(piece, cell.stock))) return null;
    return { ...cell, box, pieces, slivers: pieces.filter((piece) => isSliver(piece, leastWidth)).length };
  };
}

/** In the measure of `Pace`. */
const workOfCell = 60;

interface Change {
  readonly gone: readonly JointCell[];
  readonly come: readonly JointCell[];
  /** In order of preference; the smaller is the better. */
  readonly rank: readonly number[];
  readonly said: JointChange;
}

function* bestChange(
  question: RedivideQuestion,
  cut: CutBox,
  cell: JointCell,
  cells: readonly JointCell[],
  pace: Pace,
): Steps<Change | null> {
  let best: Change | null = null;
  const consider = (change: Change | null) => {
    if (change && (!best || isBetter(change.rank, best.rank))) best = change;
  };
  const edges = areaEdges(question.area);
  for (const [i, stretch] of stretchesBeside(cell, cells, question.gap).entries()) {
    if ((!stretch.paired && !question.withEmpty) || question.isHeld?.(stretch)) continue;
    const facing = facingPanels(stretch, cell, question);
    if (!facing) continue;
    consider(joined(stretch, facing, cut));
    for (const [n, at] of placesFor(stretch, facing, edges, question).entries()) {
      if (pace.isDue()) yield;
      if (breaksRule(question, stretch, at)) continue;
      consider(moved(stretch, at, facing, question, cut, [i, n]));
    }
  }
  return best;
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, n) => value !== b[n]);
  return i >= 0 && a[i]! < b[i]!;
}

/** The sliver and what faces it across the joint, one on either side. */
interface Facing {
  readonly before: Polygon;
  readonly after: Polygon;
}

/** Null where the sliver does not lie along the joint, or nothing faces it. */
function facingPanels(
  { axis, at, before, after }: JointStretch,
  cell: JointCell,
  { gap, leastWidth }: RedivideQuestion,
): Facing | null {
  const { low, high, from, to } = sidesAcross[axis];
  const isBefore = before.includes(cell);
  const liesAlong = (piece: Polygon, isOnLowSide: boolean) => {
    const box = boxOf(piece.outer);
    return isOnLowSide ? box[high] === at : box[low] === at + gap;
  };
  for (const sliver of cell.pieces) {
    if (!liesAlong(sliver, isBefore) || !isSliver(sliver, leastWidth)) continue;
    const own = boxOf(sliver.outer);
    const others = (isBefore ? after : before)
      .flatMap(({ pieces }) => pieces)
      .filter((piece) => liesAlong(piece, !isBefore))
      .map((piece) => ({ piece, box: boxOf(piece.outer) }))
      .map(({ piece, box }) => ({
        piece,
        shared: Math.min(box[to], own[to]) - Math.max(box[from], own[from]),
      }))
      .filter(({ shared }) => shared > 0)
      .sort((a, b) => b.shared - a.shared);
    if (others[0]) {
      const other = others[0].piece;
      return isBefore ? { before: sliver, after: other } : { before: other, after: sliver };
    }
  }
  return null;
}

/** The joint taken out: the cells on either side become one. */
function joined(stretch: JointStretch, facing: Facing, cut: CutBox): Change | null {
  const { axis, before, after, paired } = stretch;
  if (!paired) return null;
  const { low, high } = sidesAcross[axis];
  const come: JointCell[] = [];
  for (const [i, one] of before.entries()) {
    const other = after[i]!;
    // A joint is kept where nothing is gained by its going.
    if (one.slivers + other.slivers === 0) return null;
    const larger = usableArea(one.stock) >= usableArea(other.stock) ? one : other;
    const box = { ...one.box, [high]: other.box[high], [low]: one.box[low] };
    const cell = cut({ ...larger, course: one.course }, box);
    if (!cell) return null;
    come.push(cell);
  }
  return changeOf(stretch, come, facing, 'joined', [0, 0, 0]);
}

function usableArea(stock: StockSheet): number {
  const { width, height } = usableSize(stock);
  return width * height;
}

function moved(
  stretch: JointStretch,
  at: Hundredth,
  facing: Facing,
  { gap }: RedivideQuestion,
  cut: CutBox,
  [length, place]: readonly [number, number],
): Change | null {
  const { axis, before, after } = stretch;
  const { low, high } = sidesAcross[axis];
  const come: JointCell[] = [];
  for (const cell of before) {
    const changed = cut(cell, { ...cell.box, [high]: at });
    if (!changed) return null;
    come.push(changed);
  }
  for (const cell of after) {
    const changed = cut(cell, { ...cell.box, [low]: at + gap });
    if (!changed) return null;
    come.push(changed);
  }
  return changeOf(stretch, come, facing, 'moved', [1, length, place]);
}

/** Null unless it leaves fewer slivers, and no cell with more of them than it had. */
function changeOf(
  { axis, before, after }: JointStretch,
  come: readonly JointCell[],
  facing: Facing,
  kind: JointChange['kind'],
  preference: readonly number[],
): Change | null {
  const gone = [...before, ...after];
  const gained = sliversOf(come) - sliversOf(gone);
  if (gained >= 0) return null;
  const had = (i: number) => (kind === 'moved' ? gone[i]!.slivers : before[i]!.slivers + after[i]!.slivers);
  if (come.some(({ slivers }, i) => slivers > had(i))) return null;
  const courses = gone.map(({ course }) => course);
  const across = (piece: Polygon) => {
    const box = boxOf(piece.outer);
    return box[sidesAcross[axis].high] - box[sidesAcross[axis].low];
  };
  return {
    gone,
    come,
    rank: [gained, ...preference],
    said: {
      axis,
      kind,
      courses: [Math.min(...courses), Math.max(...courses)],
      was: [across(facing.before), across(facing.after)],
      is: panelsAt(axis, come, facing).map(across),
    },
  };
}

function sliversOf(cells: readonly JointCell[]): number {
  return cells.reduce((sum, { slivers }) => sum + slivers, 0);
}

/** The panels that now lie where the sliver and its neighbour lay. */
function panelsAt(axis: JointAxis, cells: readonly JointCell[], { before, after }: Facing): Polygon[] {
  const { low, high, from, to } = sidesAcross[axis];
  const [a, b] = [boxOf(before.outer), boxOf(after.outer)];
  const middle = (Math.max(a[from], b[from]) + Math.min(a[to], b[to])) / 2;
  return cells
    .flatMap(({ pieces }) => pieces)
    .filter((piece) => {
      const box = boxOf(piece.outer);
      return box[from] < middle && box[to] > middle && box[high] > a[low] && box[low] < b[high];
    })
    .sort((one, other) => boxOf(one.outer)[low] - boxOf(other.outer)[low]);
}

/**
 * Places to which the joint could go, the most even division first, then the nearest: where it meets an edge of
 * the area, or leaves just the least width on either side of one.
 */
function placesFor(
  { axis, at, before, after }: JointStretch,
  facing: Facing,
  edges: AreaEdges,
  { gap, leastWidth }: RedivideQuestion,
): Hundredth[] {
  const { low, high } = sidesAcross[axis];
  const [one, other] = [boxOf(facing.before.outer), boxOf(facing.after.outer)];
  const even = one[low] + Math.floor((other[high] - gap - one[low]) / 2);
  const least = Math.max(...before.map(({ box }) => box[low])) + 1;
  const most = Math.min(...after.map(({ box }) => box[high])) - gap - 1;
  const [from, to] = [least - leastWidth - gap, most + leastWidth + gap];
  const places = new Set<Hundredth>();
  for (const { a } of edges.all) {
    const edge = a[axis];
    if (edge < from || edge > to) continue;
    for (const place of [edge, edge - gap, edge + leastWidth, edge - gap - leastWidth]) places.add(place);
  }
  return [
    even,
    ...[...places].sort((a, b) => Math.abs(a - at) - Math.abs(b - at) || a - b).slice(0, mostPlaces),
  ].filter((place, i, all) => place >= least && place <= most && place !== at && all.indexOf(place) === i);
}

const mostPlaces = 24;

function breaksRule(
  { allowsJoint }: RedivideQuestion,
  { axis, before }: JointStretch,
  at: Hundredth,
): boolean {
  if (!allowsJoint) return false;
  const { from, to } = sidesAcross[axis];
  return before.some(({ box }) => !allowsJoint(axis, at, box[from], box[to]));
}

function withChange(cells: readonly JointCell[], { gone, come }: Change): JointCell[] {
  return [...cells.filter((cell) => !gone.includes(cell)), ...come];
}
