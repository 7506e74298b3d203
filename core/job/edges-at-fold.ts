import type { Mm } from '../units';
import { endsOf } from './corners';
import { heightsAt, nearEnough } from './fold';
import type { EdgeEnd } from './product-schema';
import type { Wall, Zone } from './schema';
import { pointOf } from './shape';

/* The two edges of a zone that go on round a corner of the room, over and under where it meets the end of its wall. */

type Place = 'over' | 'under';
const places: readonly Place[] = ['over', 'under'];

/** Numbers of the edges that lead to the end of the wall, from 1; none where the zone does not reach it. */
function edgesAtFold(wall: Wall, zone: Zone, side: 'left' | 'right'): { readonly [place in Place]?: number } {
  const heights = heightsAt(wall, zone, side);
  if (!heights) return {};
  const at = endsOf(wall)[side];
  const near = (a: Mm, b: Mm) => Math.abs(a - b) < nearEnough;
  const leadingTo = (height: Mm) => {
    const edge = zone.shape.findIndex((vertex, i) => {
      const ends = [pointOf(vertex), pointOf(zone.shape[(i + 1) % zone.shape.length]!)];
      const atFold = ends.filter(({ x }) => near(x, at));
      return atFold.length === 1 && near(atFold[0]!.y, height);
    });
    return edge < 0 ? undefined : edge + 1;
  };
  const [over, under] = [leadingTo(heights.to), leadingTo(heights.from)];
  return { ...(over && { over }), ...(under && { under }) };
}

/** A part of a zone as it is on its wall, at the corner that it shares with another. */
export interface PartAtFold {
  readonly wall: Wall;
  readonly zone: Zone;
  readonly side: 'left' | 'right';
}

/**
 * The other part with the ends of those edges that go on round the corner.
 *
 * @param was the leading part before; an edge whose end did not change there leaves the other alone. Absent: all are taken
 */
export function withEdgesCarried(other: PartAtFold, is: PartAtFold, was?: PartAtFold): Zone {
  const own = edgesAtFold(other.wall, other.zone, other.side);
  const before = was && endsAtFold(was);
  const now = endsAtFold(is);
  return places.reduce((zone, place) => {
    const edge = own[place];
    const isSame = before && JSON.stringify(before[place]) === JSON.stringify(now[place]);
    return edge === undefined || isSame ? zone : withEnd(zone, edge, now[place]);
  }, other.zone);
}

type Ends = { readonly [place in Place]?: Omit<EdgeEnd, 'edge'> };

function endsAtFold({ wall, zone, side }: PartAtFold): Ends {
  const numbers = edgesAtFold(wall, zone, side);
  const ends = places.flatMap((place) => {
    const found = zone.edges?.find(({ edge }) => edge === numbers[place]);
    if (!found) return [];
    const { edge: _, ...end } = found;
    return [[place, end] as const];
  });
  return Object.fromEntries(ends);
}

function withEnd(zone: Zone, edge: number, end: Omit<EdgeEnd, 'edge'> | undefined): Zone {
  const others = (zone.edges ?? []).filter((entry) => entry.edge !== edge);
  const edges = end ? [...others, { ...end, edge } as EdgeEnd].sort((a, b) => a.edge - b.edge) : others;
  if (JSON.stringify(edges) === JSON.stringify(zone.edges ?? [])) return zone;
  const { edges: _, ...rest } = zone;
  return edges.length > 0 ? { ...rest, edges } : (rest as Zone);
}
