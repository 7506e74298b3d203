import { endsOf, riseOf, rowsOfRoom, type WallRow } from '../job/corners';
import type { Corner, Job, Wall } from '../job/schema';
import { boxOfVertices, type MmBox } from '../job/shape';
import type { Mm } from '../units';

/** A wall in the strip; (dx, dy) is added to a point of its own frame. */
export interface StripWall {
  readonly wall: Wall;
  readonly dx: Mm;
  readonly dy: Mm;
}

/** Where two walls of the strip meet, or where one goes on to a wall at the strip's other end. */
export interface StripFold {
  readonly at: Mm;
  /** Of the taller of both walls. */
  readonly from: Mm;
  readonly to: Mm;
  readonly left: Wall;
  readonly right: Wall;
  readonly corner: Corner;
}

/** The walls of a room folded out flat, in mm; the frame is that of the first wall of the first row. */
export interface RoomStrip {
  readonly walls: readonly StripWall[];
  readonly folds: readonly StripFold[];
  readonly box: MmBox;
}

/** Between rows of walls of one room that no corner joins. */
const betweenRows: Mm = 600;

/**
 * The room of a wall as one strip: row after row, in each row the walls corner to corner as one turns clockwise, each on its
 * own datum's level. Where a row goes all round, its last corner stands at the strip's end.
 */
export function roomStrip(job: Job, wallId: string): RoomStrip {
  const walls: StripWall[] = [];
  const folds: StripFold[] = [];
  for (const row of rowsOfRoom(job, wallId)) {
    const last = walls.at(-1);
    const from = last ? last.dx + endsOf(last.wall).right + betweenRows : null;
    walls.push(...placedRow(row, from));
  }
  for (const one of walls) {
    const { corner } = one.wall;
    const other = corner && walls.find(({ wall }) => wall.id === corner.to);
    if (!corner || !other) continue;
    const heights = [one, other].map(({ wall, dy }) => {
      const { y, height } = boxOfVertices(wall.outline);
      return { from: y + dy, to: y + dy + height };
    });
    folds.push({
      at: one.dx + endsOf(one.wall).right,
      from: Math.min(...heights.map((span) => span.from)),
      to: Math.max(...heights.map((span) => span.to)),
      left: one.wall,
      right: other.wall,
      corner,
    });
  }
  return { walls, folds, box: boxAround(walls) };
}

/** The same with another of its walls in its own place, so that a point of that wall stays where it is. */
export function stripAbout(strip: RoomStrip, wallId: string): RoomStrip {
  const own = strip.walls.find(({ wall }) => wall.id === wallId);
  if (!own) return strip;
  const [x, y] = [-own.dx, -own.dy];
  return {
    walls: strip.walls.map(({ wall, dx, dy }) => ({ wall, dx: dx + x, dy: dy + y })),
    folds: strip.folds.map((fold) => ({ ...fold, at: fold.at + x, from: fold.from + y, to: fold.to + y })),
    box: { ...strip.box, x: strip.box.x + x, y: strip.box.y + y },
  };
}

/** @param from where the row's first wall begins; null: in its own place */
function placedRow({ walls }: WallRow, from: Mm | null): StripWall[] {
  const placed: StripWall[] = [];
  for (const wall of walls) {
    const last = placed.at(-1);
    if (!last) placed.push({ wall, dx: from === null ? 0 : from - endsOf(wall).left, dy: 0 });
    else {
      const dx = last.dx + endsOf(last.wall).right - endsOf(wall).left;
      placed.push({ wall, dx, dy: last.dy + riseOf(last.wall) });
    }
  }
  return placed;
}

function boxAround(walls: readonly StripWall[]): MmBox {
  if (walls.length === 0) return { x: 0, y: 0, width: 0, height: 0 };
  const boxes = walls.map(({ wall, dx, dy }) => {
    const box = boxOfVertices(wall.outline);
    return { ...box, x: box.x + dx, y: box.y + dy };
  });
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  return {
    x,
    y,
    width: Math.max(...boxes.map((box) => box.x + box.width)) - x,
    height: Math.max(...boxes.map((box) => box.y + box.height)) - y,
  };
}
