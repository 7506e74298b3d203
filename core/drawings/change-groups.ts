import type { Difference } from '../job/differences/difference';
import type { MmBox } from '../job/shape';

/** All that is said of one thing, under the number that its cloud on the drawing carries. */
export interface ChangeGroup {
  /** From 1; counted over the whole job. */
  readonly number: number;
  /** null: of the job as a whole. */
  readonly wall: string | null;
  readonly texts: readonly string[];
  /** Wall frame, mm; what is said only in words has none. */
  readonly places: readonly MmBox[];
}

/** Differences of one thing on a wall together, wall by wall, those of the job as a whole last. */
export function groupChanges(differences: readonly Difference[]): ChangeGroup[] {
  const groups = new Map<string, Difference[]>();
  for (const difference of differences) {
    const { wall = null, object = null, subject } = difference;
    // Panels belong to their zone, which is an object of its wall.
    const key = wall === null ? JSON.stringify([null, subject, object]) : JSON.stringify([wall, object]);
    groups.set(key, [...(groups.get(key) ?? []), difference]);
  }
  const walls = [...new Set(differences.flatMap(({ wall }) => wall ?? [])), null];
  return walls
    .flatMap((wall) => [...groups.values()].filter(([first]) => (first!.wall ?? null) === wall))
    .map((group, i) => ({
      number: i + 1,
      wall: group[0]!.wall ?? null,
      texts: group.map(({ text }) => text),
      places: withoutRepeats(group.flatMap(({ places }) => places)),
    }));
}

function withoutRepeats(boxes: readonly MmBox[]): MmBox[] {
  return [...new Map(boxes.map((box) => [JSON.stringify(box), box])).values()];
}
