import { regionArea, type Point, type Polygon, type Region, type Ring } from '../../core/geometry/polygon';

/** A ring from figures as published lists write them: `'0,0 3,0 3,3'`, commas and spaces as they come. */
export function ring(figures: string, scale = 1): Ring {
  const numbers = figures
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const points: Point[] = [];
  for (let i = 0; i < numbers.length; i += 2) {
    points.push({ x: Math.round(numbers[i]! * scale), y: Math.round(numbers[i + 1]! * scale) });
  }
  return points;
}

export function ringsOf(region: Region): Ring[] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes]);
}

/** Area in the unit of the source, if its figures were multiplied by `scale`. */
export function areaAt(region: Region, scale = 1): number {
  return regionArea(region) / scale ** 2;
}

type Move = (point: Point) => Point;

/** A region with every point moved; `mirrors` says that the move turns anticlockwise rings into clockwise ones. */
export function moved(region: Region, move: Move, mirrors = false): Region {
  const moveRing = (points: Ring): Ring => {
    const there = points.map(move);
    return mirrors ? there.reverse() : there;
  };
  return region.map(({ outer, holes }): Polygon => ({ outer: moveRing(outer), holes: holes.map(moveRing) }));
}

export const mirrored: Move = ({ x, y }) => ({ x: -x + 0, y });
export const quarterTurned: Move = ({ x, y }) => ({ x: -y + 0, y: x });

/** Rings as sets of points, so that regions can be compared whatever their first corner. */
export function sameRegion(a: Region, b: Region): boolean {
  const key = (region: Region) =>
    ringsOf(region)
      .map((points) => {
        const names = points.map(({ x, y }) => `${x},${y}`);
        const turned = names.map((_, i) => [...names.slice(i), ...names.slice(0, i)].join(' '));
        return turned.sort()[0];
      })
      .sort()
      .join('\n');
  return key(a) === key(b);
}
