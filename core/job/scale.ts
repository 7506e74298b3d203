import { mapped, tidy } from './changes';
import { changeObjects } from './several';
import type { Job } from './schema';
import { boxOfObject, type MmBox, type ObjectRef, type Placed, type WallObject } from './shape';

/**
 * Several objects scaled together, as a box that holds them becomes another. Round things stay round: their diameter
 * goes by the side that grows less, their middle by both.
 */
export function scaleObjects(
  job: Job,
  wallId: string,
  refs: readonly ObjectRef[],
  from: MmBox,
  to: MmBox,
): Job {
  return changeObjects(job, wallId, refs, (object) => scaledWith(object, from, to));
}

function scaledWith<T extends WallObject>(object: T, from: MmBox, to: MmBox): T {
  const [sx, sy] = [ratio(to.width, from.width), ratio(to.height, from.height)];
  const scaled = mapped(object, (x, y) => [tidy(to.x + (x - from.x) * sx), tidy(to.y + (y - from.y) * sy)]);
  const { circle } = scaled as Placed;
  if (circle) {
    return { ...scaled, circle: { ...circle, diameter: tidy(circle.diameter * Math.min(sx, sy)) } };
  }
  if (object.shape) return scaled;
  const { width, height } = boxOfObject(object);
  return { ...scaled, width: tidy(width * sx), height: tidy(height * sy) };
}

function ratio(to: number, from: number): number {
  return from === 0 ? 1 : to / from;
}
