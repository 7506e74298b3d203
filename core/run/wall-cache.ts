import type { ZoneLayout } from '../panels/panel';
import type { WorkedWall } from '../worked-out';

/** Layouts of a wall's zones, by everything that they depend on. */
export type KeptLayouts = ReadonlyMap<string, ZoneLayout>;

/**
 * Walls worked out before, by everything that their result depends on, and the layouts of their zones, which
 * depend on less: most changes of a wall leave the panels of most of its zones as they are. Only what the newest
 * job used stays, so that the cache never grows beyond one job.
 */
export interface WallCache {
  recall(key: string): WorkedWall | undefined;
  keep(key: string, wall: WorkedWall, layouts: KeptLayouts): void;
  /** The layout of a zone of any wall that is kept, or one kept by itself. */
  recallLayout(key: string): ZoneLayout | undefined;
  /** A layout that another wall's depends on, until the next sweep. */
  keepLayout(key: string, layout: ZoneLayout): void;
  /** Forgets every wall that was neither recalled nor kept since the last sweep. */
  sweep(): void;
}

interface Entry {
  readonly wall: WorkedWall;
  readonly layouts: KeptLayouts;
}

export function createCache(): WallCache {
  let earlier = new Map<string, Entry>();
  let used = new Map<string, Entry>();
  const alone = new Map<string, ZoneLayout>();
  return {
    recall(key) {
      const entry = used.get(key) ?? earlier.get(key);
      if (entry) used.set(key, entry);
      return entry?.wall;
    },
    keep(key, wall, layouts) {
      used.set(key, { wall, layouts });
    },
    keepLayout(key, layout) {
      alone.set(key, layout);
    },
    recallLayout(key) {
      const kept = alone.get(key);
      if (kept) return kept;
      for (const entries of [used, earlier]) {
        for (const { layouts } of entries.values()) {
          const layout = layouts.get(key);
          if (layout) return layout;
        }
      }
      return undefined;
    },
    sweep() {
      earlier = used;
      used = new Map();
      alone.clear();
    },
  };
}
