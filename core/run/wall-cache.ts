import type { WorkedWall } from '../worked-out';

/**
 * Walls worked out before, by everything that their result depends on. Only what the newest job used stays,
 * so that the cache never grows beyond one job.
 */
export interface WallCache {
  /** The earlier result for this key, or a fresh one from `work`. */
  recall(key: string, work: () => WorkedWall): WorkedWall;
  /** Forgets every wall that was not asked for since the last sweep. */
  sweep(): void;
}

export function createCache(): WallCache {
  let kept = new Map<string, WorkedWall>();
  let used = new Map<string, WorkedWall>();
  return {
    recall(key, work) {
      const wall = used.get(key) ?? kept.get(key) ?? work();
      used.set(key, wall);
      return wall;
    },
    sweep() {
      kept = used;
      used = new Map();
    },
  };
}
