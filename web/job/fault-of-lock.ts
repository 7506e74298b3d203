import { lockedInTheWay } from '../../core/job/locked';
import type { Job } from '../../core/job/schema';
import { findWall } from '../../core/job/shape';
import { nameOfObject } from './changes/names';

/** Why a change may not be made while something it would move or delete is locked; null if nothing is. */
export function faultOfLock(before: Job, after: Job): string | null {
  const locked = lockedInTheWay(before, after);
  if (!locked) return null;
  const name = nameOfObject(findWall(before, locked.wallId), locked.ref);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} is locked and stays as it is; unlock it first.`;
}
