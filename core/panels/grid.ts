import type { Box, Point } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import { usableSize } from '../job/usable-size';
import { toHundredth, type Hundredth } from '../units';

/**
 * The endless pattern of panel cells that a zone is cut by; wall frame, hundredths. Cell (column, course) has
 * its lower left corner at
 *
 *     x = start.x + shiftOf(course) + column · pitchX        y = start.y + course · pitchY
 *
 * and is `width` × `height`; what is left of the pitch is joint.
 */
export interface Grid {
  readonly start: Point;
  readonly width: Hundredth;
  readonly height: Hundredth;
  readonly pitchX: Hundredth;
  readonly pitchY: Hundredth;
  /** Fraction of the cell's width by which each course is shifted right against the one below. */
  readonly stagger: number;
}

/** The size of a cell and its pitch: all of a grid but where it starts. */
export type Pattern = Omit<Grid, 'start'>;

export function patternOf(layout: Layout, stock: StockSheet): Pattern {
  const usable = usableSize(stock);
  const [width, height] = layout.turned ? [usable.height, usable.width] : [usable.width, usable.height];
  const gap = toHundredth(layout.jointGap);
  return {
    width,
    height,
    pitchX: width + gap,
    pitchY: height + gap,
    stagger: layout.stagger,
  };
}

/**
 * How far a course is shifted against course 0, from 0 up to the pitch. The shifts are added up before they
 * are rounded, so that a stagger of a third is back in line after three courses.
 */
export function shiftOf(pattern: Pattern, course: number): Hundredth {
  return modulo(Math.round(course * pattern.stagger * pattern.width), pattern.pitchX);
}

/** Courses of which some cell may reach into the box, lowest first. */
export function coursesIn(grid: Grid, box: Box): { readonly first: number; readonly last: number } {
  return cellsAlong(box.bottom, box.top, grid.start.y, grid.height, grid.pitchY);
}

/** Cells of a course of which some part may lie in the box, as left edges from left to right. */
export function leftEdgesIn(grid: Grid, course: number, box: Box): Hundredth[] {
  const origin = grid.start.x + shiftOf(grid, course);
  const { first, last } = cellsAlong(box.left, box.right, origin, grid.width, grid.pitchX);
  const edges: Hundredth[] = [];
  for (let column = first; column <= last; column++) edges.push(origin + column * grid.pitchX);
  return edges;
}

/** Remainder that is never negative. */
export function modulo(value: number, divisor: number): number {
  const rest = value % divisor;
  return rest < 0 ? rest + divisor : rest + 0;
}

/** Numbers of the cells [origin + n·pitch, … + size] that share more than a point with [from, to]. */
function cellsAlong(from: number, to: number, origin: number, size: number, pitch: number) {
  return {
    first: Math.floor((from - origin - size) / pitch) + 1,
    last: Math.ceil((to - origin) / pitch) - 1,
  };
}
