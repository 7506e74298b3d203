import { changeWall, freshId } from './changes';
import type { FixingPoint, Ground } from './ground-schema';
import type { Job, Wall } from './schema';
import { boxOfVertices, type MmPoint } from './shape';

/** Fields of the ground replaced; a field set to undefined is not recorded any more, and an empty ground leaves no trace. */
export function changeGround(job: Job, wallId: string, patch: Partial<Ground>): Job {
  return changeWall(job, wallId, (wall) => {
    const { ground: before = {}, ...rest } = wall;
    const ground = Object.fromEntries(
      Object.entries({ ...before, ...patch }).filter(([, value]) => value !== undefined),
    ) as Ground;
    if (JSON.stringify(ground) === JSON.stringify(before)) return wall;
    return (Object.keys(ground).length > 0 ? { ...wall, ground } : rest) as Wall;
  });
}

/** Width of a stud of boarded partitions, size of a pattress and diameter of a hole, mm; common practice, no source. */
const usual = { stud: 50, pattress: { width: 600, height: 200 }, hole: 8 } as const;

/** A stud over the whole height at `at.x`, a pattress about `at`, a hole at it; by default in the middle of the wall. */
export function newFixingPoint(wall: Wall, kind: FixingPoint['kind'], at?: MmPoint): FixingPoint {
  const box = boxOfVertices(wall.outline);
  const { x, y } = at ?? { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };
  const id = freshId(wall, prefixes[kind]);
  if (kind === 'stud')
    return { id, kind, x: x - usual.stud / 2, y: box.y, width: usual.stud, height: box.height };
  if (kind === 'hole') return { id, kind, x, y, width: usual.hole };
  const { width, height } = usual.pattress;
  return { id, kind, x: x - width / 2, y: y - height / 2, width, height };
}

const prefixes: Readonly<Record<FixingPoint['kind'], string>> = { stud: 'U', pattress: 'G', hole: 'X' };

export function addFixingPoint(job: Job, wallId: string, point: FixingPoint): Job {
  return changeWall(job, wallId, (wall) => ({
    ...wall,
    fixingPoints: [...(wall.fixingPoints ?? []), point],
  }));
}

export function changeFixingPoint(job: Job, wallId: string, id: string, patch: Partial<FixingPoint>): Job {
  return changeWall(job, wallId, (wall) => {
    if (!wall.fixingPoints?.some((point) => point.id === id)) return wall;
    const change = (point: FixingPoint) => (point.id === id ? { ...point, ...patch } : point);
    return { ...wall, fixingPoints: wall.fixingPoints.map(change) };
  });
}

export function removeFixingPoint(job: Job, wallId: string, id: string): Job {
  return changeWall(job, wallId, (wall) => {
    const points = wall.fixingPoints?.filter((point) => point.id !== id) ?? [];
    if (points.length === (wall.fixingPoints?.length ?? 0)) return wall;
    const { fixingPoints: _, ...rest } = wall;
    return (points.length > 0 ? { ...rest, fixingPoints: points } : rest) as Wall;
  });
}
