import { arcThrough, partAtExtremes, pointAt } from '../geometry/circular-arc';
import { tidy } from './changes';
import type { Vertex, Wall } from './schema';
import {
  boxOfObject,
  findObject,
  pointOf,
  verticesOf,
  type MmBox,
  type MmPoint,
  type ObjectRef,
  type WallObject,
} from './shape';

/**
 * The least box about an object, mm, arcs with their true extremes: what is aligned, spaced and measured. (`boxOfObject`
 * takes the points that a hand drags.) To 0.01 mm.
 */
export function extentOf(object: WallObject): MmBox {
  const vertices = verticesOf(object);
  return vertices?.some((vertex) => !Array.isArray(vertex))
    ? extentOfVertices(vertices)
    : boxOfObject(object);
}

/** The same of a closed chain of vertices, such as a wall's outline. */
export function extentOfVertices(vertices: readonly Vertex[]): MmBox {
  return boxAbout(
    vertices.flatMap((vertex, i) => {
      const end = pointOf(vertex);
      if (Array.isArray(vertex)) return [end];
      return [end, ...extremesOfArc(pointOf(vertices.at(i - 1)!), vertex.via, end)];
    }),
  );
}

/** The least box about several objects of a wall; null if none of them is there. */
export function extentOfSeveral(wall: Wall, refs: readonly ObjectRef[]): MmBox | null {
  const boxes = refs.flatMap((ref) => {
    const object = findObject(wall, ref);
    return object ? [extentOf(object)] : [];
  });
  return boxes.length > 0 ? boxAboutBoxes(boxes) : null;
}

export function boxAboutBoxes(boxes: readonly MmBox[]): MmBox {
  return boxAbout(
    boxes.flatMap(({ x, y, width, height }) => [
      { x, y },
      { x: x + width, y: y + height },
    ]),
  );
}

function boxAbout(points: readonly MmPoint[]): MmBox {
  const [x, y] = [least(points.map((point) => point.x)), least(points.map((point) => point.y))];
  const right = -least(points.map((point) => -point.x));
  const top = -least(points.map((point) => -point.y));
  return { x, y, width: tidy(right - x), height: tidy(top - y) };
}

/** A list of points may be longer than what can be handed to `Math.min` as arguments. */
function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity) + 0;
}

function extremesOfArc(from: MmPoint, [viaX, viaY]: readonly [number, number], to: MmPoint): MmPoint[] {
  const arc = arcThrough(from, { x: viaX, y: viaY }, to);
  if (!arc) return [];
  return partAtExtremes(arc, 0).map((part) => {
    const { x, y } = pointAt(part, part.from);
    return { x: tidy(x), y: tidy(y) };
  });
}
