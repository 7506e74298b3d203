import type { Mm } from '../units';
import type { HungItem } from './hung-schema';
import type { Fitting, Job, Opening, Vertex, Wall, Zone } from './schema';

/** An object on a wall, named by what it is and its id. */
export interface ObjectRef {
  readonly kind: 'opening' | 'fitting' | 'zone' | 'hung';
  readonly id: string;
}

/** The shape of an object, or one of a zone's holes, counted from 0. */
export interface ShapeRef extends ObjectRef {
  readonly hole?: number;
}

export interface MmPoint {
  readonly x: Mm;
  readonly y: Mm;
}

export interface MmBox {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

export type Placed = Opening | Fitting;

/** Whatever an `ObjectRef` names. */
export type WallObject = Opening | Fitting | Zone | HungItem;

export function findWall(job: Job, wallId: string): Wall | undefined {
  return job.walls.find((wall) => wall.id === wallId);
}

export function findObject(wall: Wall, ref: ObjectRef): WallObject | undefined {
  return objectsOf(wall, ref.kind).find((object) => object.id === ref.id);
}

export function objectsOf(wall: Wall, kind: ObjectRef['kind']): readonly WallObject[] {
  if (kind === 'hung') return wall.hung ?? [];
  return kind === 'opening' ? wall.openings : kind === 'fitting' ? wall.fittings : wall.zones;
}

/** The point a vertex stands on; an arc's end for an arc. */
export function pointOf(vertex: Vertex): MmPoint {
  const [x, y] = Array.isArray(vertex) ? vertex : vertex.arcTo;
  return { x, y };
}

/** The vertices of a zone's or opening's shape; undefined for rectangles and circles. */
export function verticesOf(object: WallObject): readonly Vertex[] | undefined {
  return object.shape as readonly Vertex[] | undefined;
}

/** The vertices of a shape on a wall, a hole or (`ref` null) the wall's outline. */
export function verticesAt(wall: Wall, ref: ShapeRef | null): readonly Vertex[] | undefined {
  if (!ref) return wall.outline;
  const object = findObject(wall, ref);
  return object && (ref.hole === undefined ? verticesOf(object) : (object as Zone).holes[ref.hole]);
}

/**
 * The box of an object in mm. For arcs the vertices and the points they pass are taken, which is what a hand
 * drags; the exact extent of an arc comes from `geometry/`.
 */
export function boxOfObject(object: WallObject): MmBox {
  const placed = object as Placed;
  if (placed.circle) {
    const { x, y, diameter } = placed.circle;
    return { x: x - diameter / 2, y: y - diameter / 2, width: diameter, height: diameter };
  }
  if (object.shape) return boxOfVertices(object.shape as readonly Vertex[]);
  return { x: placed.x ?? 0, y: placed.y ?? 0, width: placed.width ?? 0, height: placed.height ?? 0 };
}

export function boxOfVertices(vertices: readonly Vertex[]): MmBox {
  const points = vertices.flatMap((vertex) =>
    Array.isArray(vertex) ? [vertex] : [vertex.arcTo, vertex.via],
  );
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Vertices of a rectangle, anticlockwise from the lower left. */
export function rectangleVertices({ x, y, width, height }: MmBox): Vertex[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** Whether vertices are an axis-parallel rectangle without arcs. */
export function isRectangle(vertices: readonly Vertex[]): boolean {
  if (vertices.length !== 4 || !vertices.every(Array.isArray)) return false;
  const { x, y, width, height } = boxOfVertices(vertices);
  const corners = new Set(vertices.map((vertex) => JSON.stringify(vertex)));
  return rectangleVertices({ x, y, width, height }).every((corner) => corners.has(JSON.stringify(corner)));
}
