import type { WorkedWall } from '../../core/worked-out';

/** A wall, or the place of the same wall in the reply before: only what changed crosses the border. */
export type SentWall = WorkedWall | number;

/** @param before the walls of the last reply that was sent */
export function packWalls(walls: readonly WorkedWall[], before: readonly WorkedWall[]): SentWall[] {
  const places = new Map(before.map((wall, i) => [wall, i]));
  return walls.map((wall) => places.get(wall) ?? wall);
}

/** @param before the walls of the last reply that was received, stale or not */
export function unpackWalls(sent: readonly SentWall[], before: readonly WorkedWall[]): WorkedWall[] {
  return sent.map((wall) => {
    if (typeof wall !== 'number') return wall;
    const known = before[wall];
    if (!known) throw new Error(`Wall ${wall} was never received.`);
    return known;
  });
}
