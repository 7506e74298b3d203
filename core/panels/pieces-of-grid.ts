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

/**
 * Everything a grid cuts an area into, in the order in which a fitter reads a wall: course by course from
 * below, in each from left to right (then from below).
 */
export function piecesOfGrid(area: Region, grid: Grid): Piece[] {
  if (area.length === 0) return [];
  const box = boxOfRegion(area);
  const edges = areaEdges(area);
  const pieces: Piece[] = [];
  const { first, last } = coursesIn(grid, box);
  for (let course = first; course <= last; course++) {
    const bottom = grid.start.y + course * grid.pitchY;
    const top = bottom + grid.height;
    const cutCell = cutCourse(area, edges, bottom, top);
    for (const left of leftEdgesIn(grid, course, box)) {
      const cell: Box = { left, bottom, right: left + grid.width, top };
      const parts = cutCell(cell).map((polygon) => ({ polygon, cell, course, box: boxOf(polygon.outer) }));
      parts.sort((a, b) => a.box.left - b.box.left || a.box.bottom - b.box.bottom);
      for (const { polygon } of parts) pieces.push({ polygon, cell, course });
    }
  }
  return pieces;
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
