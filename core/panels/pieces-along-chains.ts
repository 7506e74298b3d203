import { doubleSignedArea, locate, rectangleOfBox } from '../geometry/polygon';
import type { Box, Point, Polygon, Ring } from '../geometry/polygon';
import { isInside, passesThrough, type AreaEdges, type RingEdge } from './area-edges';

/** A run of the area's edges across a cell, from where it enters to where it leaves. */
interface Chain {
  readonly points: readonly Point[];
  /** Where it enters and leaves, by the way round the rim. */
  readonly enters: number;
  readonly leaves: number;
}

/**
 * The pieces of a cell that chains of edges cut out: from where a chain leaves the cell, the outline of a piece goes
 * on along the cell's rim to where the next chain enters. Rings that never leave the cell are holes, or pieces.
 *
 *         ┌────────────┐
 *         │   leaves ╱ │     the area lies left of the chain
 *         │ piece   ╱  │
 *         └────────╱───┘
 *               enters
 *
 * Where a chain crosses the rim of two cells, both round to the same point, so that pieces fit together.
 *
 * @param edges edges of the area that may pass through the cell, those of a ring in their order
 * @returns undefined where chains meet on the rim, or rounding makes them: then it takes a clipper
 */
export function piecesAlongChains(edges: AreaEdges, cell: Box): Polygon[] | undefined {
  const runs = runsThrough(edgesThrough(edges.all, cell), cell);
  if (!runs) return undefined;
  const chains = runs.open.map((run) => chainOf(run, cell));
  const outers = chains.length > 0 ? linkAlongRim(chains, cell) : rimAlone(edges, cell);
  if (!outers) return undefined;
  const rings = runs.closed.map((run) => run.map(({ a }) => a));
  const holes = rings.filter((ring) => doubleSignedArea(ring) < 0);
  outers.push(...rings.filter((ring) => doubleSignedArea(ring) > 0));
  return giveHoles(outers, holes);
}

function edgesThrough(edges: readonly RingEdge[], cell: Box): RingEdge[] {
  const passing: RingEdge[] = [];
  for (const edge of edges) if (passesThrough(edge, cell)) passing.push(edge);
  return passing;
}

/** The edges in the order of their rings: runs that cross the cell, and rings that lie within it. */
function runsThrough(passing: readonly RingEdge[], { left, bottom, right, top }: Box) {
  const isWithin = ({ x, y }: Point) => x > left && x < right && y > bottom && y < top;
  const used = new Uint8Array(passing.length);
  const following = (i: number): number => {
    const { ring, next } = passing[i]!;
    const isNext = (edge: RingEdge | undefined) => edge?.ring === ring && edge.index === next;
    return isNext(passing[i + 1]) ? i + 1 : passing.findIndex(isNext);
  };
  const runFrom = (first: number): RingEdge[] | undefined => {
    const run: RingEdge[] = [];
    for (let i = first; ; i = following(i)) {
      if (i < 0 || (used[i] && i !== first)) return undefined;
      if (used[i]) return run;
      used[i] = 1;
      run.push(passing[i]!);
      if (!isWithin(passing[i]!.b)) return run;
    }
  };
  const open: RingEdge[][] = [];
  const closed: RingEdge[][] = [];
  for (let i = 0; i < passing.length; i++) {
    if (isWithin(passing[i]!.a)) continue;
    const run = runFrom(i);
    if (!run) return undefined;
    open.push(run);
  }
  for (let i = 0; i < passing.length; i++) {
    if (used[i]) continue;
    const run = runFrom(i);
    if (!run || !isWithin(run.at(-1)!.b)) return undefined;
    closed.push(run);
  }
  return { open, closed };
}

function chainOf(run: readonly RingEdge[], cell: Box): Chain {
  const first = run[0]!;
  const last = run.at(-1)!;
  const enters = crossing(first.b, first.a, cell);
  const leaves = crossing(last.a, last.b, cell);
  const points = [enters];
  for (let i = 1; i < run.length; i++) points.push(run[i]!.a);
  points.push(leaves);
  return {
    points,
    enters: alongRim(enters, cell),
    leaves: alongRim(leaves, cell),
  };
}

/** Outlines from chain to chain, anticlockwise; undefined unless leaving and entering take turns round the rim. */
function linkAlongRim(chains: readonly Chain[], cell: Box): Ring[] | undefined {
  const turns = chains
    .flatMap(({ enters, leaves }, chain) => [
      { at: enters, chain, isEntry: true },
      { at: leaves, chain, isEntry: false },
    ])
    .sort((a, b) => a.at - b.at);
  const after = new Array<number>(chains.length);
  for (let i = 0; i < turns.length; i++) {
    const here = turns[i]!;
    const next = turns[(i + 1) % turns.length]!;
    if (here.at === next.at || here.isEntry === next.isEntry) return undefined;
    if (!here.isEntry) after[here.chain] = next.chain;
  }
  const rings: Ring[] = [];
  const used = new Uint8Array(chains.length);
  for (let first = 0; first < chains.length; first++) {
    if (used[first]) continue;
    const points: Point[] = [];
    for (let i = first; !used[i]; i = after[i]!) {
      used[i] = 1;
      const { points: along, leaves } = chains[i]!;
      for (const point of along) points.push(point);
      for (const corner of cornersBetween(leaves, chains[after[i]!]!.enters, cell)) points.push(corner);
    }
    const ring = withoutStraights(points);
    if (ring.length < 3 || doubleSignedArea(ring) <= 0) return undefined;
    rings.push(ring);
  }
  return rings;
}

/** The whole cell, where nothing crosses its rim and that lies in the area. */
function rimAlone(edges: AreaEdges, cell: Box): Ring[] {
  // Half a hundredth from the corner there is no edge: those that do not cross the rim keep a whole one.
  return isInside(edges, cell.left + 0.5, cell.bottom + 0.5) ? [rectangleOfBox(cell).outer] : [];
}

function giveHoles(outers: readonly Ring[], holes: readonly Ring[]): Polygon[] | undefined {
  const ofOuter: Ring[][] = outers.map(() => []);
  for (const hole of holes) {
    const i =
      outers.length === 1
        ? 0
        : outers.findIndex((outer) => locate(hole[0]!, { outer, holes: [] }) === 'inside');
    if (!ofOuter[i]) return undefined;
    ofOuter[i].push(hole);
  }
  return outers.map((outer, i) => ({ outer, holes: ofOuter[i]! }));
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

/** How far a point of a cell's rim is on the way round it, anticlockwise from the lower left corner. */
function alongRim({ x, y }: Point, { left, bottom, right, top }: Box): number {
  const [width, height] = [right - left, top - bottom];
  if (y === bottom) return x - left;
  if (x === right) return width + y - bottom;
  return y === top ? width + height + right - x : 2 * width + height + top - y;
}

/** Corners of a cell on the way round its rim, anticlockwise, strictly between two places on it. */
function cornersBetween(from: number, to: number, { left, bottom, right, top }: Box): Point[] {
  const [width, height] = [right - left, top - bottom];
  const round = 2 * (width + height);
  const end = to > from ? to : to + round;
  const corners = [
    { at: width, x: right, y: bottom },
    { at: width + height, x: right, y: top },
    { at: 2 * width + height, x: left, y: top },
    { at: round, x: left, y: bottom },
  ];
  const found: Point[] = [];
  for (const turn of [0, round]) {
    for (const { at, x, y } of corners) if (at + turn > from && at + turn < end) found.push({ x, y });
  }
  return found;
}

function withoutStraights(ring: readonly Point[]): Ring {
  const kept: Point[] = [];
  let a = ring.at(-1)!;
  for (let i = 0; i < ring.length; i++) {
    const b = ring[i]!;
    const c = ring[i + 1 === ring.length ? 0 : i + 1]!;
    if ((b.x - a.x) * (c.y - b.y) !== (b.y - a.y) * (c.x - b.x)) kept.push(b);
    a = b;
  }
  return kept;
}
