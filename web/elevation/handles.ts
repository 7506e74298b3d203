import { middleOfEdge } from '../../core/job/arc-edges';
import {
  isRectangle,
  boxOfObject,
  pointOf,
  verticesOf,
  type MmPoint,
  type Placed,
  type WallObject,
} from '../../core/job/shape';
import type { Vertex } from '../../core/job/schema';
import { toScreen, type Frame, type ScreenPoint } from './frame';
import type { Handle } from './gestures/resized-box';

/** A handle that pulls edges of a box, and where it stands on the screen. */
export interface BoxHandle extends Handle, ScreenPoint {}

/** Handles stand this far outside the box, so that a small object can still be gripped itself. */
const outside = 8;
/** A side shorter than this on the screen has no room for handles: zoom in, or type. */
const leastSide = 36;

/** Corner and edge handles of a rectangle or circle; none for other shapes, which are pulled by their corners. */
export function boxHandles(object: WallObject, frame: Frame): BoxHandle[] {
  const vertices = verticesOf(object);
  if (vertices && !isRectangle(vertices)) return [];
  const { x, y, width, height } = boxOfObject(object);
  const low = toScreen(frame, { x, y });
  const high = toScreen(frame, { x: x + width, y: y + height });
  if (high.px - low.px < leastSide && low.py - high.py < leastSide) return [];
  const round = (object as Placed).circle !== undefined;
  const at = (hx: -1 | 0 | 1, hy: -1 | 0 | 1): BoxHandle => ({
    x: hx,
    y: hy,
    px: hx < 0 ? low.px - outside : hx > 0 ? high.px + outside : (low.px + high.px) / 2,
    py: hy < 0 ? low.py + outside : hy > 0 ? high.py - outside : (low.py + high.py) / 2,
  });
  const corners = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)];
  if (round) return corners;
  // Between two corners that stand close together there is no room for another handle.
  return [
    ...corners,
    ...(high.px - low.px >= leastSide ? [at(0, -1), at(0, 1)] : []),
    ...(low.py - high.py >= leastSide ? [at(1, 0), at(-1, 0)] : []),
  ];
}

/** The corners by which a polygon is pulled, and the middles of its edges where another can be put in. */
export function shapeHandles(object: WallObject): CornerHandles {
  const vertices = verticesOf(object);
  return !vertices || isRectangle(vertices)
    ? { corners: [], middles: [], apexes: [] }
    : cornerHandles(vertices);
}

export interface CornerHandles {
  readonly corners: readonly MmPoint[];
  /** Of straight edges: a corner put into an arc would make two straight edges of it. */
  readonly middles: readonly EdgeMiddle[];
  /** Of arcs: pulled, the arc rises or sinks. `index` is the vertex that it ends at. */
  readonly apexes: readonly EdgeMiddle[];
}

export interface EdgeMiddle extends MmPoint {
  /** Where a corner put in here stands in the list of vertices. */
  readonly index: number;
}

export function cornerHandles(vertices: readonly Vertex[]): CornerHandles {
  const corners = vertices.map(pointOf);
  const middles = corners.flatMap(({ x, y }, i) => {
    const after = (i + 1) % corners.length;
    const next = corners[after]!;
    return Array.isArray(vertices[after]) ? [{ x: (x + next.x) / 2, y: (y + next.y) / 2, index: i + 1 }] : [];
  });
  const apexes = vertices.flatMap((vertex, index) =>
    Array.isArray(vertex) ? [] : [{ ...middleOfEdge(vertices, index), index }],
  );
  return { corners, middles, apexes };
}

/**
 * The handle under a finger or cursor: 40 px wide to a finger, 20 px to a mouse. Within the object it reaches no
 * further than a quarter of a side, so that a narrow object can still be gripped itself.
 */
export function handleAt(
  object: WallObject,
  frame: Frame,
  point: ScreenPoint,
  touch: boolean,
): BoxHandle | null {
  const box = boxOfObject(object);
  const [width, height] = [box.width * frame.scale, box.height * frame.scale];
  let best: BoxHandle | null = null;
  let least = touch ? 20 : 10;
  for (const handle of boxHandles(object, frame)) {
    const [dx, dy] = [point.px - handle.px, point.py - handle.py];
    // From the handle's own edges into the object; the side at y = 1 is the upper one, where py grows inward.
    const inX = handle.x === 0 ? 0 : -handle.x * dx - outside;
    const inY = handle.y === 0 ? 0 : handle.y * dy - outside;
    if (Math.min(handle.x === 0 ? Infinity : inX, handle.y === 0 ? Infinity : inY) > 0) {
      if (inX > width / 4 || inY > height / 4) continue;
    }
    const distance = Math.max(Math.abs(dx), Math.abs(dy));
    if (distance <= least) {
      best = handle;
      least = distance;
    }
  }
  return best;
}
