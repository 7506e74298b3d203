import type { EdgeEnd } from './product-schema';

/**
 * Chosen ends of a zone's edges after its corner number `index` (from 0) has come in or gone: each stays with its edge. Both
 * halves of an edge that a new corner parts end as the whole did; of two edges that a corner's going makes one, the
 * one that led to the corner says how it ends.
 *
 * @param count of the zone's corners now
 * @returns undefined where none is left
 */
export function renumberedEdges(
  edges: readonly EdgeEnd[],
  count: number,
  index: number,
  what: 'put in' | 'taken out',
): EdgeEnd[] | undefined {
  const left = what === 'put in' ? parted(edges, count, index) : joined(edges, count, index);
  return left.length > 0 ? left.sort((a, b) => a.edge - b.edge) : undefined;
}

function parted(edges: readonly EdgeEnd[], count: number, index: number): EdgeEnd[] {
  const before = index === 0 ? count - 1 : index;
  return edges.flatMap((end) => {
    const moved = { ...end, edge: end.edge > index ? end.edge + 1 : end.edge };
    return end.edge === before ? [moved, { ...end, edge: index + 1 }] : [moved];
  });
}

function joined(edges: readonly EdgeEnd[], count: number, index: number): EdgeEnd[] {
  const gone = index + 1;
  return edges
    .filter(({ edge }) => edge !== gone && edge <= count + 1)
    .map((end) => (end.edge > gone ? { ...end, edge: end.edge - 1 } : end));
}
