import { boxOf, type Point, type Ring } from '../geometry/polygon';
import { placedFitting, placedOpening, placedZone, polygonOf } from './placed-regions';
import type { Job, Wall } from './schema';

export type PictureKind = 'wall' | 'opening' | 'fitting' | 'zone' | 'steel';

/** A small elevation: paths as SVG writes them, y downward from the upper left. */
export interface JobPicture {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly { readonly kind: PictureKind; readonly path: string }[];
}

/** Units of the picture; a screen shows a tenth of it, so that whole numbers are fine enough. */
const room = { width: 960, height: 540 };
const gap = 40;
const mostWalls = 3;
/** A wall full of sockets is known by its first ones. */
const mostObjects = 40;
/** Points of an arc that lie closer than this are one. */
const fineness = 4;

/**
 * The first walls of a job beside each other on one floor line, at one scale.
 *
 * @returns without parts if the job has no wall
 */
export function pictureOf(job: Job): JobPicture {
  const walls = job.walls.slice(0, mostWalls).map((wall) => ({ wall, box: boxOf(outlineOf(wall)) }));
  if (walls.length === 0) return { ...room, parts: [] };
  const lowest = Math.min(...walls.map(({ box }) => box.bottom));
  const highest = Math.max(...walls.map(({ box }) => box.top));
  const breadth = walls.reduce((sum, { box }) => sum + box.right - box.left, 0);
  const across = room.width - gap * (walls.length - 1);
  const scale = Math.min(across / breadth, room.height / (highest - lowest));

  let left = 0;
  const parts = walls.flatMap(({ wall, box }) => {
    const from = left;
    left += (box.right - box.left) * scale + gap;
    const place = ({ x, y }: Point) => ({
      x: Math.round(from + (x - box.left) * scale),
      y: Math.round((highest - y) * scale),
    });
    return partsOf(wall).map(({ kind, ring }) => ({ kind, path: pathOf(ring.map(place)) }));
  });
  return { width: Math.round(left - gap), height: Math.round((highest - lowest) * scale), parts };
}

function partsOf(wall: Wall): { kind: PictureKind; ring: Ring }[] {
  const ringOf = ({ region }: { region: readonly { outer: Ring }[] }) => region[0]!.outer;
  return [
    { kind: 'wall', ring: outlineOf(wall) },
    ...wall.zones
      .slice(0, mostObjects)
      .map((zone) => ({ kind: zone.layout ? 'steel' : 'zone', ring: ringOf(placedZone(zone)) }) as const),
    ...wall.openings
      .slice(0, mostObjects)
      .map((opening) => ({ kind: 'opening', ring: ringOf(placedOpening(opening)) }) as const),
    ...wall.fittings
      .slice(0, mostObjects)
      .map((fitting) => ({ kind: 'fitting', ring: ringOf(placedFitting(fitting)) }) as const),
  ];
}

function outlineOf(wall: Wall): Ring {
  return polygonOf(wall.outline).outer;
}

function pathOf(points: readonly Point[]): string {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (!last || Math.abs(point.x - last.x) + Math.abs(point.y - last.y) >= fineness) kept.push(point);
  }
  return `M${kept.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
}
