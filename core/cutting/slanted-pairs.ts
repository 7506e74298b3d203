import { boxOf, polygonArea, translate, type Point, type Polygon } from '../geometry/polygon';
import type { PanelKind, Pose } from './kinds';
import type { NestTask } from './nest';
import type { StockFormat } from './plan';
import { allTurns, shapeKey, turned } from './poses';

/*
 * Edge to edge, two panels with a sloping edge come out of one rectangle: it is cut out right across, then one slanted
 * cut parts it. Together they are as one rectangular panel to whoever fills stock sheets; `draw-sheet.ts` takes them
 * apart again. Paired are right-angled trapezoids and triangles, as a sloping ceiling or a stair makes them: the
 * slanted cut leaves both finished.
 */

/** A panel of a pair: its kind and pose as in the task's single kinds, and where its box lies in the pair's. */
export interface PairPart {
  readonly kind: number;
  readonly pose: number;
  readonly x: number;
  readonly y: number;
}

/** Slopes of one ceiling differ by rounding; hundredths over the whole edge. */
const SAME_SLOPE = 2;
/** Among more kinds than this pairs are not looked for: it would take too long. */
const MOST_KINDS = 150;

/**
 * The same panels with as many in pairs as save room, those that save most first; null where none does. Its kinds are
 * the pairs and what is left single; `single` has the kinds of all panels.
 */
export function pairedTask(nestTask: NestTask): NestTask | null {
  const { task, kinds } = nestTask;
  if (task.method !== 'edge-to-edge') return null;
  const sloping = kinds.flatMap((kind, number) => (isSloping(kind) ? [number] : []));
  if (sloping.length === 0 || sloping.length > MOST_KINDS) return null;
  const offers = sloping.flatMap((a) =>
    sloping.filter((b) => b >= a).flatMap((b) => bestPair(nestTask, a, b) ?? []),
  );
  offers.sort((a, b) => b.saves - a.saves || a.first - b.first || a.second - b.second);
  const left = kinds.map(({ members }) => [...members]);
  const pairs: PanelKind[] = [];
  for (const { first, second, kind } of offers) {
    const count =
      first === second
        ? Math.floor(left[first]!.length / 2)
        : Math.min(left[first]!.length, left[second]!.length);
    if (count === 0) continue;
    pairs.push({ ...kind, members: left[first]!.splice(0, count) });
    left[second]!.splice(0, count);
  }
  if (pairs.length === 0) return null;
  const rest = kinds.flatMap((kind, number): PanelKind[] =>
    left[number]!.length > 0 ? [{ ...kind, members: left[number]!, single: number }] : [],
  );
  return { task, kinds: [...rest, ...pairs], single: kinds };
}

function isSloping({ isRectangle, poses }: PanelKind): boolean {
  return !isRectangle && poses.some((pose) => cornerCut(pose) !== null);
}

/** Of a pose whose upper right corner a straight edge cuts off, from one whole side of its box to the other side. */
interface CornerCut {
  /** The edge runs from (right, low) to (left, height) of the box. */
  readonly low: number;
  readonly left: number;
}

/** null where the panel is anything but its box less that corner, or where neither side is cut whole. */
function cornerCut({ shape, width, height }: Pose): CornerCut | null {
  if (shape.holes.length > 0 || shape.outer.length > 4) return null;
  const has = (x: number, y: number) => shape.outer.some((point) => point.x === x && point.y === y);
  if (!has(0, 0)) return null;
  const low = Math.max(...shape.outer.filter(({ x }) => x === width).map(({ y }) => y));
  const left = Math.max(...shape.outer.filter(({ y }) => y === height).map(({ x }) => x));
  if (low === height || left === width || (low > 0 && left > 0)) return null;
  return polygonArea(shape) === width * height - ((width - left) * (height - low)) / 2 ? { low, left } : null;
}

interface Offer {
  readonly first: number;
  readonly second: number;
  readonly saves: number;
  readonly kind: PanelKind;
}

/** The smallest rectangle that the two kinds make together, if it is smaller than their own two. */
function bestPair({ task, kinds }: NestTask, first: number, second: number): Offer | null {
  const { kerf } = task;
  const [a, b] = [kinds[first]!, kinds[second]!];
  const stock = a.stock.filter((number) => b.stock.includes(number));
  const taken = ({ longSide, shortSide }: Pick<PanelKind, 'longSide' | 'shortSide'>) =>
    (longSide + kerf) * (shortSide + kerf);
  let best: Offer | null = null;
  for (const pose of a.poses) {
    for (const facing of b.poses) {
      for (const pair of facePoses(pose, facing, kerf)) {
        const { width, height } = pair;
        const [longSide, shortSide] = [Math.max(width, height), Math.min(width, height)];
        const saves = taken(a) + taken(b) - taken({ longSide, shortSide });
        if (saves <= (best?.saves ?? 0)) continue;
        const room = stock.filter((number) => hasRoom(task.stock[number]!, longSide, shortSide));
        if (room.length === 0) continue;
        const poses = posesOfPair(a, b, first, second, pair);
        const kind: PanelKind = {
          members: [],
          stock: room,
          allowed: room,
          poses,
          isRectangle: true,
          area: a.area + b.area,
          longSide,
          shortSide,
        };
        best = { first, second, saves, kind };
      }
    }
  }
  return best;
}

function hasRoom({ width, height }: StockFormat, longSide: number, shortSide: number): boolean {
  return longSide <= Math.max(width, height) && shortSide <= Math.min(width, height);
}

/** Two panels along one slope: the lower left one at the origin. */
interface Pair {
  readonly width: number;
  readonly height: number;
  readonly near: Polygon;
  readonly far: Polygon;
}

/**
 *     ┌────┬─────┐   The near panel gives up its upper right corner, the far one, turned half round in the
 *     │near╲ far │   drawing of its own corner, its lower left. Both are as high as the pair, or both as wide.
 *     └─────┴────┘
 */
function facePoses(pose: Pose, facing: Pose, kerf: number): Pair[] {
  const near = cornerCut(pose);
  const far = cornerCut({ ...facing, shape: turned(facing.shape, allTurns[2]!) });
  if (!near || !far) return [];
  const [runNear, riseNear] = [pose.width - near.left, pose.height - near.low];
  const [runFar, riseFar] = [facing.width - far.left, facing.height - far.low];
  if (Math.abs(runNear - runFar) > SAME_SLOPE || Math.abs(riseNear - riseFar) > SAME_SLOPE) return [];
  const pairs: Pair[] = [];
  // A kerf across the slope is longer along the side.
  if (near.low === 0 && far.low === 0 && pose.height === facing.height) {
    const gap = (kerf * Math.hypot(Math.max(runNear, runFar), pose.height)) / pose.height;
    const x = roundUp(Math.max(pose.width - runFar, near.left) + gap);
    const [width, height] = [x + facing.width, pose.height];
    pairs.push({ width, height, near: pose.shape, far: translate(facing.shape, x, 0) });
  }
  if (near.left === 0 && far.left === 0 && pose.width === facing.width) {
    const gap = (kerf * Math.hypot(Math.max(riseNear, riseFar), pose.width)) / pose.width;
    const y = roundUp(Math.max(pose.height - riseFar, near.low) + gap);
    const [width, height] = [pose.width, y + facing.height];
    pairs.push({ width, height, near: pose.shape, far: translate(facing.shape, 0, y) });
  }
  return pairs;
}

/** Never because of the last digits of a sum. */
function roundUp(length: number): number {
  return Math.ceil(length - 1e-7);
}

/** As it was found, and a quarter turn on. */
function posesOfPair(a: PanelKind, b: PanelKind, first: number, second: number, pair: Pair): Pose[] {
  return allTurns.slice(0, 2).map((turn): Pose => {
    const { near, far } = quarterTurned(pair, turn.quarterTurns === 1);
    const parts = [partOf(a, first, near), partOf(b, second, far)];
    const [width, height] = turn.quarterTurns === 1 ? [pair.height, pair.width] : [pair.width, pair.height];
    const box: Polygon = {
      outer: [
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: width, y: height },
        { x: 0, y: height },
      ],
      holes: [],
    };
    const slant = slantOf([near, far].sort((p, q) => middleOf(p) - middleOf(q))[0]!);
    return { turn, shape: box, width, height, cover: [[0, 0, width, height]], waste: [], parts, slant };
  });
}

function quarterTurned({ near, far, height }: Pair, isTurned: boolean): { near: Polygon; far: Polygon } {
  if (!isTurned) return { near, far };
  const turn = (shape: Polygon): Polygon => ({
    outer: shape.outer.map(({ x, y }) => ({ x: height - y, y: x })),
    holes: [],
  });
  return { near: turn(near), far: turn(far) };
}

function partOf({ poses }: PanelKind, kind: number, shape: Polygon): PairPart {
  const { left, bottom } = boxOf(shape.outer);
  const key = shapeKey(translate(shape, -left, -bottom));
  const pose = poses.findIndex((candidate) => shapeKey(candidate.shape) === key);
  if (pose < 0) throw new Error('A panel of a slanted pair lies as its kind may not.');
  return { kind, pose, x: left, y: bottom };
}

function middleOf({ outer }: Polygon): number {
  return outer.reduce((sum, { x }) => sum + x, 0) / outer.length;
}

/** The one edge that is neither upright nor level: of the panel on the left, so that the kerf lies right of it. */
function slantOf({ outer }: Polygon): readonly [Point, Point] {
  const at = outer.findIndex((point, i) => {
    const next = outer[(i + 1) % outer.length]!;
    return point.x !== next.x && point.y !== next.y;
  });
  return [outer[at]!, outer[(at + 1) % outer.length]!];
}
