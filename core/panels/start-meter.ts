import { polygonArea, type Box, type Point, type Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { areaBlocks, countIn, type AreaBlocks } from './area-blocks';
import { areaEdges } from './area-edges';
import {
  cellShapes,
  isNarrowPart,
  partArea,
  partCutLength,
  partHeight,
  partWidth,
  type Span,
} from './cell-shape';
import { cutLengthOf } from './cut-length';
import { cutSizeOf, type CutSize } from './cut-size';
import { coursesIn, modulo, shiftOf, type Pattern } from './grid';
import { createPace, type Pace } from './pace';
import { cutCourse, type CutCell } from './pieces';
import { isSliver } from './sliver';
import type { StartQuestion } from './start-figures';

/** What a start cuts an area into. */
export interface Counts {
  readonly slivers: number;
  readonly full: number;
  readonly cut: number;
  /** Area of the bounding rectangles of the cut panels, hundredths squared. */
  readonly covered: number;
  /** Of the rims of all cut panels what does not lie along the sides of their cells, hundredths. */
  readonly cutLength: Hundredth;
}

/**
 * Measures starts without building their panels. Starts are asked for by a coordinate each way, modulo the
 * pitch, so that what hangs on one coordinate alone is worked out once.
 */
export interface StartMeter {
  /** The start with these coordinates modulo the pitch whose course 0 is the lowest that the zone's box reaches. */
  startAt(x: Hundredth, y: Hundredth): Point;
  /** Exactly what laying out would count; null as soon as there are more slivers than allowed. */
  countPanels(x: Hundredth, y: Hundredth, allowedSlivers: number): Counts | null;
  cutSizes(x: Hundredth, y: Hundredth): CutSize[];
  /** Some edge of the area is neither level nor upright. */
  readonly hasSlopes: boolean;
  /** Sloping and curved edges took so much work that no more starts should be counted. */
  isWornOut(): boolean;
}

/** What a cell with a slope, and a corner of a panel in the clipper, cost in the measure of `Pace`. */
const workOfSlopedCell = 50;
const workOfClippedCorner = 200;

/** A few panels with sloping or round notches take the clipper, which is a thousand times as slow as the rest. */
const mostClippedCorners = 10_000;
/** Corners of panels with sloping or curved edges that one search looks at; a zone round one pipe has a tenth of it. */
const mostSlopedCorners = 600_000;

interface SlopedCell extends Counts {
  readonly sizes: readonly CutSize[];
}

export function startMeter(
  { area, pattern, leastWidth }: StartQuestion,
  pace: Pace = createPace(),
): StartMeter {
  const { box } = area;
  const blocks = areaBlocks(area.area);
  const shapeOf = cellShapes(blocks);
  const sloped = slopedCells({ area, pattern, leastWidth }, pace);
  // A whole stock sheet that is itself narrower than the least width.
  const isWholeNarrow = Math.min(pattern.width, pattern.height) < leastWidth;

  const originX = (x: Hundredth) => box.left - modulo(box.left - x, pattern.pitchX);
  const originY = (y: Hundredth) => box.bottom - modulo(box.bottom - y, pattern.pitchY);
  const columnsAt = remember((x: Hundredth) => spansAlong(blocks.xs, x, pattern.width, pattern.pitchX));
  const coursesAt = remember((y: Hundredth) =>
    spansAlong(blocks.ys, originY(y), pattern.height, pattern.pitchY).map((span) => ({
      span,
      shift: shiftOf(pattern, Math.round((span.from - originY(y)) / pattern.pitchY)),
    })),
  );
  /** The cell in which a start with this x was last given up: most likely the reason next time too. */
  const spoilers = new Map<Hundredth, { column: number; course: number }>();

  // Kept between calls: nothing is made anew for the many thousand cells of a search.
  const tally = { slivers: 0, full: 0, cut: 0 };
  const covered = new Float64Array(1);
  const cutLength = new Float64Array(1);

  /** Cells with slopes are slow: they are put off until the others have shown no sliver too many. */
  const putOff: { left: Hundredth; bottom: Hundredth }[] = [];

  function look(column: Span, row: Span): void {
    const all = (column.high - column.low) * (row.high - row.low);
    const filled = countIn(blocks.filledBefore, blocks.columns, column.low, column.high, row.low, row.high);
    if (!blocks.isRectilinear && filled < all && hasSlope(blocks, column, row)) {
      putOff.push({ left: column.from, bottom: row.from });
    } else if (filled === all && column.isInside && row.isInside) {
      tally.full++;
      if (isWholeNarrow) tally.slivers++;
    } else if (filled > 0) {
      const { parts } = shapeOf(column, row);
      for (let n = 0; n < parts.length; n++) {
        const part = parts[n]!;
        tally.cut++;
        covered[0]! += partWidth(blocks, part, column) * partHeight(blocks, part, row);
        cutLength[0]! += partCutLength(blocks, part, column, row);
        if (leastWidth > 0 && isNarrowPart(blocks, part, column, row, leastWidth)) tally.slivers++;
      }
    }
  }

  function countPanels(x: Hundredth, y: Hundredth, allowedSlivers: number): Counts | null {
    const courses = coursesAt(y);
    tally.slivers = 0;
    if (allowedSlivers === 0) {
      const spoiler = spoilers.get(x);
      const course = spoiler && courses[spoiler.course];
      const column = course && columnsAt(modulo(x + course.shift, pattern.pitchX))[spoiler.column];
      if (column) look(column, course.span);
      if (tally.slivers > 0) return null;
    }
    tally.full = tally.cut = covered[0] = cutLength[0] = putOff.length = 0;
    pace.spend(2);
    for (let c = 0; c < courses.length; c++) {
      const { span, shift } = courses[c]!;
      const columns = columnsAt(modulo(x + shift, pattern.pitchX));
      pace.spend(columns.length);
      for (let i = 0; i < columns.length; i++) {
        look(columns[i]!, span);
        if (tally.slivers > allowedSlivers) {
          spoilers.set(x, { column: i, course: c });
          return null;
        }
      }
    }
    for (const { left, bottom } of putOff) {
      const cell = sloped(left, bottom);
      tally.slivers += cell.slivers;
      tally.full += cell.full;
      tally.cut += cell.cut;
      covered[0]! += cell.covered;
      cutLength[0]! += cell.cutLength;
      if (tally.slivers > allowedSlivers) return null;
    }
    return { ...tally, covered: covered[0]!, cutLength: cutLength[0]! };
  }

  function cutSizes(x: Hundredth, y: Hundredth): CutSize[] {
    const sizes: CutSize[] = [];
    for (const { span: row, shift } of coursesAt(y)) {
      for (const column of columnsAt(modulo(x + shift, pattern.pitchX))) {
        const all = (column.high - column.low) * (row.high - row.low);
        const filled = countIn(
          blocks.filledBefore,
          blocks.columns,
          column.low,
          column.high,
          row.low,
          row.high,
        );
        if (!blocks.isRectilinear && filled < all && hasSlope(blocks, column, row)) {
          sizes.push(...sloped(column.from, row.from).sizes);
        } else if (filled > 0 && !(filled === all && column.isInside && row.isInside)) {
          for (const part of shapeOf(column, row).parts) {
            sizes.push({
              width: partWidth(blocks, part, column),
              height: partHeight(blocks, part, row),
              area: partArea(blocks, part, column, row),
            });
          }
        }
      }
    }
    return sizes;
  }

  return {
    startAt: (x, y) => ({ x: originX(x), y: originY(y) }),
    countPanels,
    cutSizes,
    hasSlopes: !blocks.isRectilinear,
    isWornOut: sloped.areWornOut,
  };
}

function hasSlope(blocks: AreaBlocks, column: Span, row: Span): boolean {
  return countIn(blocks.slopingBefore, blocks.columns, column.low, column.high, row.low, row.high) > 0;
}

/** The cells along an axis that share more than a point with the area's extent. */
function spansAlong(
  lines: readonly Hundredth[],
  origin: Hundredth,
  size: Hundredth,
  pitch: Hundredth,
): Span[] {
  const first = lines[0]!;
  const last = lines.at(-1)!;
  const spans: Span[] = [];
  let low = 0;
  for (let from = first - modulo(first - origin, pitch); from < last; from += pitch) {
    const to = from + size;
    if (to <= first) continue;
    while (low + 1 < lines.length - 1 && lines[low + 1]! <= from) low++;
    let high = low + 1;
    while (high < lines.length - 1 && lines[high]! < to) high++;
    spans.push({ from, to, low, high, isInside: from >= first && to <= last });
  }
  return spans;
}

/** Cells that a sloping edge may pass through, cut as laying out cuts them. */
function slopedCells({ area, pattern, leastWidth }: Omit<StartQuestion, 'countStockSheets'>, pace: Pace) {
  const edges = areaEdges(area.area);
  const courses = remember((bottom: Hundredth): CutCell =>
    cutCourse(area.area, edges, bottom, bottom + pattern.height),
  );
  let clipped = 0;
  let corners = 0;
  const noteClipping = (piece: Polygon) => {
    clipped += cornersOf(piece);
    pace.spend(cornersOf(piece) * workOfClippedCorner);
  };
  const cutAt = remember((bottom: Hundredth) =>
    remember((left: Hundredth): SlopedCell => {
      const cell: Box = { left, bottom, right: left + pattern.width, top: bottom + pattern.height };
      const pieces = courses(bottom)(cell);
      pace.spend(workOfSlopedCell);
      for (const piece of pieces) {
        corners += cornersOf(piece);
        pace.spend(cornersOf(piece));
      }
      const cut = pieces.filter((piece) => !isWhole(piece, pattern));
      const sizes = cut.map(cutSizeOf);
      return {
        slivers: pieces.filter((piece) => isSliver(piece, leastWidth, noteClipping)).length,
        full: pieces.length - cut.length,
        cut: cut.length,
        covered: sizes.reduce((sum, { width, height }) => sum + width * height, 0),
        cutLength: cut.reduce((sum, piece) => sum + cutLengthOf(piece, cell), 0),
        sizes,
      };
    }),
  );
  return Object.assign((left: Hundredth, bottom: Hundredth) => cutAt(bottom)(left), {
    areWornOut: () => clipped > mostClippedCorners || corners > mostSlopedCorners,
  });
}

function cornersOf({ outer, holes }: Polygon): number {
  return holes.reduce((sum, hole) => sum + hole.length, outer.length);
}

function isWhole(piece: Polygon, { width, height }: Pattern): boolean {
  return piece.outer.length === 4 && piece.holes.length === 0 && polygonArea(piece) === width * height;
}

function remember<Value>(work: (key: number) => Value): (key: number) => Value {
  const known = new Map<number, Value>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = work(key)));
    return value;
  };
}

/** Courses that some start can lay over a box, as `startAt` counts them. */
export function coursesOver(box: Box, pattern: Pattern): number {
  const lowest = { ...pattern, start: { x: box.left, y: box.bottom - pattern.pitchY + 1 } };
  return coursesIn(lowest, box).last + 1;
}
