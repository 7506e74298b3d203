import { type Box, type Point } from '../../geometry/polygon';
import type { Hundredth } from '../../units';
import type { ZoneArea } from '../../zones/zone-area';
import { areaEdges, isInside, passesThrough } from '../area-edges';
import { modulo, shiftOf, type Pattern } from '../grid';
import { countJointsAt } from '../near-joints';
import { shiftsOver } from '../shifts-over';
import { bandPlace } from './bands';
import type { HandWish, WishOf } from './hand-wishes';

/** What choices by hand ask of the start of a zone's panels. */
export interface StartRules {
  /**
   * How much a start leaves unmet; 0 if nothing. Joints on lines weigh most, then panels that are to be whole, then
   * every joint where none may lie.
   */
  unmet(start: Point): number;
  /** Coordinates of starts, each way, at which that may change. */
  readonly events: { readonly x: readonly Hundredth[]; readonly y: readonly Hundredth[] };
  /** The only coordinates that bring a joint on a line, where one is asked for; null where any may do. */
  readonly only: { readonly x: readonly Hundredth[] | null; readonly y: readonly Hundredth[] | null };
}

/** More joints than this in bands weigh no more, so that they never outweigh a whole panel. */
const mostJoints = 999;

/** The rules for areas that are laid with one pattern, each worked out once; undefined where nothing is asked. */
export function startRules(
  pattern: Pattern,
  wishes: readonly HandWish[],
): ((area: ZoneArea) => StartRules) | undefined {
  const asks = wishes.some(
    ({ kind }) => kind === 'joint-on-line' || kind === 'whole-panel' || kind === 'no-joints',
  );
  if (!asks) return undefined;
  const known = new WeakMap<ZoneArea, StartRules>();
  return (area) => {
    let rules = known.get(area);
    if (!rules) known.set(area, (rules = rulesOf(area, pattern, wishes)));
    return rules;
  };
}

function rulesOf(area: ZoneArea, pattern: Pattern, wishes: readonly HandWish[]): StartRules {
  const { pitchX, pitchY, width, height } = pattern;
  const isHere = (at: Point) =>
    at.x >= area.box.left && at.x <= area.box.right && at.y >= area.box.bottom && at.y <= area.box.top;
  const lines = wishes.filter((wish): wish is WishOf<'joint-on-line'> => wish.kind === 'joint-on-line');
  const uprights = lines.filter(
    ({ axis, at }) => axis === 'x' && at.x > area.box.left && at.x < area.box.right,
  );
  const levels = lines.filter(
    ({ axis, at }) => axis === 'y' && at.y > area.box.bottom && at.y < area.box.top,
  );
  const wholes = wishes.filter(
    (wish): wish is WishOf<'whole-panel'> => wish.kind === 'whole-panel' && isHere(wish.at),
  );
  const bands = wishes.filter((wish): wish is WishOf<'no-joints'> => wish.kind === 'no-joints');
  const shifts = shiftsOver(area, pattern);

  const inBands = countJointsAt(area, pattern, (axis, gap) =>
    bands.map(({ band }) => bandPlace(axis, gap, band, area.box)).filter((place) => place !== null),
  );
  const isWhole = wholeCells(area);
  const meetsLine = (line: WishOf<'joint-on-line'>, start: Point) =>
    modulo(
      line.axis === 'x'
        ? start.x - startForUpright(line.at, start.y, pattern)
        : start.y - startForLevel(line.at, pattern),
      line.axis === 'x' ? pitchX : pitchY,
    ) === 0;
  const meetsWhole = ({ at }: WishOf<'whole-panel'>, start: Point) => {
    const cell = cellAt(start, at, pattern);
    return cell !== null && isWhole(cell);
  };

  const xs = new Set(
    uprights.flatMap(({ at }) =>
      shifts.map((shift) => modulo(lineStart(at.x, 'x', pattern) - shift, pitchX)),
    ),
  );
  const ys = new Set(levels.map(({ at }) => modulo(startForLevel(at, pattern), pitchY)));
  return {
    unmet(start) {
      let lost = 0;
      for (const line of uprights) if (!meetsLine(line, start)) lost += 1e6;
      for (const line of levels) if (!meetsLine(line, start)) lost += 1e6;
      for (const whole of wholes) if (!meetsWhole(whole, start)) lost += 1e3;
      return bands.length === 0 ? lost : lost + Math.min(inBands.count(start), mostJoints);
    },
    events: {
      x: [
        ...inBands.events.x,
        ...wholes.flatMap(({ at }) => shifts.flatMap((shift) => [at.x - shift, at.x - width - shift])),
      ],
      y: [
        ...inBands.events.y,
        ...wholes.flatMap(({ at }) => [at.y, at.y - height]),
        // Which course a height falls into changes where a course begins.
        ...(pattern.stagger === 0 ? [] : uprights.map(({ at }) => at.y)),
        ...(pattern.stagger === 0 ? [] : bands.flatMap(({ band }) => courseEvents(band, height))),
      ],
    },
    only: { x: xs.size > 0 ? [...xs] : null, y: ys.size > 0 ? [...ys] : null },
  };
}

function courseEvents(
  { bottom, top }: { bottom: Hundredth | null; top: Hundredth | null },
  height: Hundredth,
) {
  return [...(top === null ? [] : [top]), ...(bottom === null ? [] : [bottom - height])];
}

/** Where the joint's strip begins whose middle lies on a line; half a hundredth left of it or below, if need be. */
export function stripOnLine(line: Hundredth, gap: Hundredth): Hundredth {
  return line - Math.floor(gap / 2);
}

/** The start, along one axis, whose joint beside course 0 lies on a line. */
function lineStart(line: Hundredth, axis: 'x' | 'y', { width, height, pitchX, pitchY }: Pattern): Hundredth {
  const gap = axis === 'x' ? pitchX - width : pitchY - height;
  return stripOnLine(line, gap) + gap;
}

function startForLevel({ y }: Point, pattern: Pattern): Hundredth {
  return lineStart(y, 'y', pattern);
}

/** Of the course at the point's height, given where the courses begin. */
function startForUpright({ x, y }: Point, startY: Hundredth, pattern: Pattern): Hundredth {
  const course = pattern.stagger === 0 ? 0 : Math.floor((y - startY) / pattern.pitchY);
  return lineStart(x, 'x', pattern) - shiftOf(pattern, course);
}

/** Whether no start whatever meets both lines. */
export function contradict(
  a: WishOf<'joint-on-line'>,
  b: WishOf<'joint-on-line'>,
  pattern: Pattern,
): boolean {
  if (a.axis !== b.axis) return false;
  const { pitchX, pitchY } = pattern;
  if (a.axis === 'y') return modulo(a.at.y - b.at.y, pitchY) !== 0;
  const events = [...new Set([modulo(a.at.y, pitchY), modulo(b.at.y, pitchY)])].sort(
    (one, other) => one - other,
  );
  const spans = events.map((at, i) => Math.floor((at + (events[i + 1] ?? events[0]! + pitchY)) / 2));
  return ![...events, ...spans].some(
    (y) => modulo(startForUpright(a.at, y, pattern) - startForUpright(b.at, y, pattern), pitchX) === 0,
  );
}

/** The cell with a point strictly inside; null where a joint passes through it. */
export function cellAt(start: Point, at: Point, pattern: Pattern): Box | null {
  const { width, height, pitchX, pitchY } = pattern;
  const course = Math.floor((at.y - start.y) / pitchY);
  const bottom = start.y + course * pitchY;
  const left = at.x - modulo(at.x - start.x - shiftOf(pattern, course), pitchX);
  const isInCell = at.x > left && at.x < left + width && at.y > bottom && at.y < bottom + height;
  return isInCell ? { left, bottom, right: left + width, top: bottom + height } : null;
}

/** Whether an area fills a cell. */
function wholeCells({ area }: ZoneArea): (cell: Box) => boolean {
  const edges = areaEdges(area);
  return (cell) =>
    !edges.all.some((edge) => passesThrough(edge, cell)) &&
    isInside(edges, (cell.left + cell.right) / 2, (cell.bottom + cell.top) / 2);
}
