import type { Outline } from '../geometry/outline';
import type { Ring } from '../geometry/polygon';
import type { RimSide } from './surveyed-wall';

/**
 * The side of the wall each outline edge belongs to, by its outward normal: upright edges are left or right,
 * the others floor if they face down, else ceiling. The edges of an arc are never upright: where rounding made
 * one so, it belongs with its neighbour.
 *
 * @param outline ring anticlockwise
 * @returns one side for every edge, edge i going from point i to point i + 1
 */
export function sidesOfEdges({ ring, arcs }: Outline): RimSide[] {
  const sides = ring.map((_, edge) => sideOfEdge(ring, edge));
  for (const { firstEdge, edges } of arcs) {
    const own = Array.from({ length: edges }, (_, i) => (firstEdge + i) % ring.length);
    const facing = own.map((edge) => sides[edge]!).find((side) => side === 'floor' || side === 'ceiling');
    let last = facing ?? 'ceiling';
    for (const edge of own) {
      if (sides[edge] === 'left' || sides[edge] === 'right') sides[edge] = last;
      else last = sides[edge] as 'floor' | 'ceiling';
    }
  }
  return sides;
}

function sideOfEdge(ring: Ring, edge: number): RimSide {
  const from = ring[edge]!;
  const to = ring[(edge + 1) % ring.length]!;
  // The inside is to the left of an anticlockwise ring, so the outward normal is (dy, −dx).
  if (from.x === to.x) return to.y > from.y ? 'right' : 'left';
  return to.x > from.x ? 'floor' : 'ceiling';
}
