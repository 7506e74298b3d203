import { addOpening, addWall, addZone, freshWallId } from './changes';
import { newOpening, newWall, newZone, type OpeningKind } from './defaults';
import type { Job, Wall } from './schema';
import { findWall } from './shape';

/** What one knows of a wall before anyone has measured it, mm. */
export interface QuickWall {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly openings: readonly QuickOpening[];
  /** With one zone of steel panels over all of it, to be drawn smaller later. */
  readonly zone: boolean;
  /** Whether these figures were taken on site. */
  readonly surveyed: boolean;
}

export interface QuickOpening {
  readonly kind: OpeningKind;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The job with one more wall of these figures; the wall is the last of the list. */
export function addQuickWall(job: Job, { name, width, height, openings, zone, surveyed }: QuickWall): Job {
  const id = freshWallId(job);
  const bare = newWall(id, name, width, height);
  let next = addWall(job, surveyed ? bare : { ...bare, surveyed: false });
  const wall = (): Wall => findWall(next, id)!;
  for (const { kind, x, y, width: across, height: up } of openings) {
    next = addOpening(next, id, { ...newOpening(wall(), kind), x, y, width: across, height: up });
  }
  if (zone) next = addZone(next, id, newZone(next, wall(), { x: 0, y: 0, width, height }));
  return next;
}
