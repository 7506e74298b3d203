import type { Mm } from '../units';
import type { PlacedMagnet } from './item';
import { across } from './magnet';

/*
 * What edges and neighbours take from a pull: note on holding force, section 3 (judgement there). Within 1.5 D of a panel's
 * edge, joint, hole or screw head half is counted, measured from the magnet's rim, the stricter reading. Magnets within 3 D of
 * each other share the same saturated steel: half is counted, and only a test tells.
 */

export const edgeDistance = 1.5;
export const neighbourDistance = 3;

export interface Derating {
  /** Of the pull that is counted. */
  readonly share: number;
  readonly isNearEdge: boolean;
  readonly isNearNeighbour: boolean;
}

/** @param i which of the item's magnets */
export function derating(magnets: readonly PlacedMagnet[], i: number): Derating {
  const { magnet, clearance = Infinity, ground } = magnets[i]!;
  const isSteel = ground.kind === 'steel' || ground.kind === 'coating';
  const isNearEdge = isSteel && !(clearance >= edgeDistance * across(magnet) - 1e-9);
  const isNearNeighbour = nearestMagnet(magnets, i) < 1 - 1e-9;
  // Half over an edge is not half held: what is not wholly over steel is not counted at all.
  const edge = clearance < 0 ? 0 : isNearEdge ? 0.5 : 1;
  return { share: edge * (isNearNeighbour ? 0.5 : 1), isNearEdge, isNearNeighbour };
}

/** Distance to the nearest other magnet over the distance that is asked for; the larger of two sets it. */
function nearestMagnet(magnets: readonly PlacedMagnet[], i: number): number {
  const own = magnets[i]!;
  let nearest = (own.otherItem ?? Infinity) / (neighbourDistance * across(own.magnet));
  for (const [j, other] of magnets.entries()) {
    if (j === i) continue;
    const apart: Mm = Math.hypot(other.x - own.x, other.y - own.y);
    const asked = neighbourDistance * Math.max(across(own.magnet), across(other.magnet));
    nearest = Math.min(nearest, apart / asked);
  }
  return nearest;
}
