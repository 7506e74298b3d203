import { boxOf, boxOfRegion, type Box, type Polygon, type Region } from '../geometry/polygon';
import { areaEdges } from './area-edges';
import { coursesIn, leftEdgesIn, type Grid } from './grid';
import { cutCourse } from './pieces';

/** A connected part of one panel cell. */
export interface Piece {
  readonly polygon: Polygon;
  readonly cell: Box;
  readonly course: number;
}

/** A panel cell and what it holds of an area; nothing where the area does not reach. */
export interface FilledCell {
  readonly cell: Box;
  readonly course: number;
  readonly pieces: readonly Polygon[];
}

/**
 * Everything a grid cuts an area into, in the order in which a fitter reads a wall: course by course from
 * below, in each from left to right (then from below).
 */
export function piecesOfGrid(area: Region, grid: Grid): Piece[] {
  return cellsOfGrid(area, grid).flatMap(({ pieces, cell, course }) =>
    pieces.map((polygon) => ({ polygon, cell, course })),
  );
}

/** Every cell of a grid that the box round an area reaches, in the same order, empty ones with them. */
export function cellsOfGrid(area: Region, grid: Grid): FilledCell[] {
  if (area.length === 0) return [];
  const box = boxOfRegion(area);
  const edges = areaEdges(area);
  const cells: FilledCell[] = [];
  const { first, last } = coursesIn(grid, box);
  for (let course = first; course <= last; course++) {
    const bottom = grid.start.y + course * grid.pitchY;
    const top = bottom + grid.height;
    const cutCell = cutCourse(area, edges, bottom, top);
    for (const left of leftEdgesIn(grid, course, box)) {
      const cell: Box = { left, bottom, right: left + grid.width, top };
      cells.push({ cell, course, pieces: fromTheLeft(cutCell(cell)) });
    }
  }
  return cells;
}

/** Pieces of a cell from left to right, then from below. */
export function fromTheLeft(pieces: readonly Polygon[]): readonly Polygon[] {
  if (pieces.length < 2) return pieces;
  return pieces
    .map((polygon) => ({ polygon, box: boxOf(polygon.outer) }))
    .sort((a, b) => a.box.left - b.box.left || a.box.bottom - b.box.bottom)
    .map(({ polygon }) => polygon);
}

/** Whether a piece is its whole cell. */
export function isWholeCell({ polygon, cell }: Piece): boolean {
  return (
    polygon.holes.length === 0 &&
    polygon.outer.length === 4 &&
    polygon.outer.every(
      ({ x, y }) => (x === cell.left || x === cell.right) && (y === cell.bottom || y === cell.top),
    )
  );
}
