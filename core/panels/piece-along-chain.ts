import { doubleSignedArea, type Box, type Point, type Ring } from '../geometry/polygon';
import { passesThrough, type RingEdge } from './area-edges';

/**
 * The piece of a cell that a single chain of edges cuts off: where the area's boundary enters the cell once and
 * leaves it once, the piece is the chain and the cell's rim back from where it leaves to where it enters.
 *
 *         ┌────────────┐
 *         │   leaves ╱ │     the area lies left of the chain
 *         │ piece   ╱  │
 *         └────────╱───┘
 *               enters
 *
 * Where the chain crosses the rim of two cells, both round to the same point, so that pieces fit together.
 *
 * @param edges edges of the area that may pass through the cell
 * @returns undefined where the boundary does anything else in this cell: then it takes a clipper
 */
export function pieceAlongChain(edges: readonly RingEdge[], cell: Box): Ring | undefined {
  const chain = singleChain(
    edges.filter((edge) => passesThrough(edge, cell)),
    cell,
  );
  if (!chain) return undefined;
  const first = chain[0]!;
  const enters = crossing(first.b, first.a, cell);
  const leaves = crossing(chain.at(-1)!.a, chain.at(-1)!.b, cell);
  if (enters.x === leaves.x && enters.y === leaves.y) return undefined;
  const joints = chain.slice(1).map(({ a }) => a);
  const corners = withoutStraights([enters, ...joints, leaves, ...rimBetween(leaves, enters, cell)]);
  return corners.length >= 3 && doubleSignedArea(corners) > 0 ? corners : undefined;
}

/** The edges in the order of their ring, if they hang together inside the cell and do nothing but cross it. */
function singleChain(passing: readonly RingEdge[], cell: Box): readonly RingEdge[] | undefined {
  const isWithin = ({ x, y }: Point) => x > cell.left && x < cell.right && y > cell.bottom && y < cell.top;
  const starts = passing.filter(({ a }) => !isWithin(a));
  if (starts.length !== 1) return undefined;
  const chain = [starts[0]!];
  while (isWithin(chain.at(-1)!.b)) {
    const { ring, next } = chain.at(-1)!;
    const following = passing.find((edge) => edge.ring === ring && edge.index === next);
    if (!following) return undefined;
    chain.push(following);
  }
  return chain.length === passing.length ? chain : undefined;
}

/** Where a segment that comes from inside or from beyond a cell leaves it towards `out`, on whole hundredths. */
function crossing(from: Point, out: Point, { left, bottom, right, top }: Box): Point {
  const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  const x = out.x < left ? left : out.x > right ? right : undefined;
  const y = out.y < bottom ? bottom : out.y > top ? top : undefined;
  // Ends are put in order, so that from either cell the same numbers are worked with.
  const [a, b] = from.x < out.x || (from.x === out.x && from.y < out.y) ? [from, out] : [out, from];
  if (x !== undefined) {
    const at = a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
    if (at >= bottom && at <= top) return { x, y: within(Math.round(at), bottom, top) };
  }
  if (y !== undefined) {
    const at = a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
    return { x: within(Math.round(at), left, right), y };
  }
  return out;
}

/** Corners of a cell on the way round its rim, anticlockwise, from one point of the rim to another. */
function rimBetween(from: Point, to: Point, { left, bottom, right, top }: Box): Point[] {
  const [width, height] = [right - left, top - bottom];
  const round = 2 * (width + height);
  const along = ({ x, y }: Point) =>
    y === bottom
      ? x - left
      : x === right
        ? width + y - bottom
        : y === top
          ? width + height + right - x
          : 2 * width + height + top - y;
  const distance = (a: number, b: number) => (b - a + round) % round;
  const start = along(from);
  const end = distance(start, along(to));
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ]
    .map((corner) => ({ corner, after: distance(start, along(corner)) }))
    .filter(({ after }) => after > 0 && after < end)
    .sort((a, b) => a.after - b.after)
    .map(({ corner }) => corner);
}

function withoutStraights(ring: Ring): Ring {
  return ring.filter((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length]!;
    const c = ring[(i + 1) % ring.length]!;
    return (b.x - a.x) * (c.y - b.y) !== (b.y - a.y) * (c.x - b.x);
  });
}
