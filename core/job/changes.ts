import { mapOtherLists } from './alternatives';
import type { Fitting, Job, Opening, StockSheet, Vertex, Wall, Zone } from './schema';
import {
  boxOfObject,
  boxOfVertices,
  findObject,
  findWall,
  verticesAt,
  type MmBox,
  type MmPoint,
  type ObjectRef,
  type ShapeRef,
  type WallObject,
} from './shape';
import { bentEdge } from './arc-edges';
import { isHung, placesIn, untested, withPlaces } from './hung-places';
import { renumberedEdges } from './renumber-edges';
import { renumbered } from './renumber-measures';
import { insertVertexIn, moveVertexOf, removeVertexFrom } from './vertices';

/*
 * Pure changes of a job: each takes a job and returns a new one that shares whatever did not change, so that
 * a wall nobody touched stays the same object. An id that names nothing leaves the job as it was.
 */

export function changeJob(job: Job, patch: Partial<Job>): Job {
  return withoutUndefined({ ...job, ...patch });
}

export function addWall(job: Job, wall: Wall): Job {
  return { ...job, walls: [...job.walls, wall] };
}

export function changeWall(job: Job, wallId: string, change: (wall: Wall) => Wall): Job {
  const walls = job.walls.map((wall) => (wall.id === wallId ? change(wall) : wall));
  return walls.some((wall, i) => wall !== job.walls[i]) ? { ...job, walls } : job;
}

/** With what other alternatives have on it. */
export function removeWall(job: Job, wallId: string): Job {
  const walls = job.walls.filter((wall) => wall.id !== wallId);
  if (walls.length === job.walls.length) return job;
  return mapOtherLists({ ...job, walls }, (lists) => {
    if (!Object.hasOwn(lists, wallId)) return lists;
    const { [wallId]: _, ...left } = lists;
    return left;
  });
}

/** A copy of a wall with everything on it in every alternative, listed right after the original. */
export function copyWall(job: Job, wallId: string, copy: Pick<Wall, 'id' | 'name'>): Job {
  const wall = findWall(job, wallId);
  if (!wall) return job;
  const walls = job.walls.flatMap((entry) => (entry === wall ? [entry, { ...wall, ...copy }] : [entry]));
  return mapOtherLists({ ...job, walls }, (lists) =>
    Object.hasOwn(lists, wallId) ? { ...lists, [copy.id]: lists[wallId]! } : lists,
  );
}

export function addOpening(job: Job, wallId: string, opening: Opening): Job {
  return changeWall(job, wallId, (wall) => ({ ...wall, openings: [...wall.openings, opening] }));
}

export function addFitting(job: Job, wallId: string, fitting: Fitting): Job {
  return changeWall(job, wallId, (wall) => ({ ...wall, fittings: [...wall.fittings, fitting] }));
}

export function addZone(job: Job, wallId: string, zone: Zone): Job {
  return changeWall(job, wallId, (wall) => ({ ...wall, zones: [...wall.zones, zone] }));
}

/** Fields of one object replaced; a field set to undefined is taken out. */
export function changeObject<T extends WallObject>(
  job: Job,
  wallId: string,
  ref: ObjectRef,
  patch: Partial<T>,
): Job {
  return mapObject(job, wallId, ref, (object) => withoutUndefined({ ...object, ...patch }));
}

export function removeObject(job: Job, wallId: string, ref: ObjectRef): Job {
  const keep = (object: { id: string }) => object.id !== ref.id;
  return changeWall(job, wallId, (wall) => {
    if (!findObject(wall, ref)) return wall;
    if (ref.kind === 'opening') return { ...wall, openings: wall.openings.filter(keep) };
    if (ref.kind === 'fitting') return { ...wall, fittings: wall.fittings.filter(keep) };
    if (ref.kind === 'hung') return { ...wall, hung: wall.hung!.filter(keep) };
    return { ...wall, zones: wall.zones.filter(keep) };
  });
}

/** A copy under a fresh id, moved by (dx, dy) and listed right after the original. */
export function copyObject(job: Job, wallId: string, ref: ObjectRef, dx: number, dy: number): Job {
  return changeWall(job, wallId, (wall) => {
    const object = findObject(wall, ref);
    if (!object) return wall;
    // Only one zone goes on as the part round the corner.
    const { runsOn: _, ...alone } = moved(object as Zone, dx, dy);
    const copy = { ...alone, id: freshId(wall, object.id.replace(/\d+$/, '') || ref.kind) };
    const insert = <T extends { id: string }>(list: readonly T[]): T[] =>
      list.flatMap((entry) => (entry.id === ref.id ? [entry, copy as unknown as T] : [entry]));
    if (ref.kind === 'opening') return { ...wall, openings: insert(wall.openings) };
    if (ref.kind === 'fitting') return { ...wall, fittings: insert(wall.fittings) };
    if (ref.kind === 'hung') return { ...wall, hung: insert(wall.hung!) };
    return { ...wall, zones: insert(wall.zones) };
  });
}

export function moveObject(job: Job, wallId: string, ref: ObjectRef, dx: number, dy: number): Job {
  if (dx === 0 && dy === 0) return job;
  return mapObject(job, wallId, ref, (object) => moved(object, dx, dy));
}

/** The object scaled into a box; a circle takes the smaller side as its diameter, about the box's middle. */
export function fitObject(job: Job, wallId: string, ref: ObjectRef, box: MmBox): Job {
  return mapObject(job, wallId, ref, (object) => fitted(object, box));
}

/** Moves a zone up (−1) or down (+1) in the list; the one listed first has the area where two overlap. */
export function reorderZone(job: Job, wallId: string, zoneId: string, by: -1 | 1): Job {
  return changeWall(job, wallId, (wall) => {
    const from = wall.zones.findIndex((zone) => zone.id === zoneId);
    const to = from + by;
    if (from < 0 || to < 0 || to >= wall.zones.length) return wall;
    const zones = [...wall.zones];
    zones.splice(to, 0, ...zones.splice(from, 1));
    return { ...wall, zones };
  });
}

/** One vertex of a wall's outline (`ref` null) or of an object's shape moved to a point; arcs that end there keep their bulge. */
export function moveVertex(job: Job, wallId: string, ref: ShapeRef | null, index: number, to: MmPoint): Job {
  return changeVertices(job, wallId, ref, (vertices) => moveVertexOf(vertices, index, to));
}

/** A vertex put in before `index`. */
export function insertVertex(
  job: Job,
  wallId: string,
  ref: ShapeRef | null,
  index: number,
  at: MmPoint,
): Job {
  const inserted = changeVertices(job, wallId, ref, (vertices) => insertVertexIn(vertices, index, at));
  return renumber(inserted, wallId, ref, index, 'put in');
}

/** The edge that ends at `index` as an arc of a rise, straight with none (see `arc-edges.ts`). */
export function bendEdge(job: Job, wallId: string, ref: ShapeRef | null, index: number, rise: number): Job {
  return changeVertices(job, wallId, ref, (vertices) => bentEdge(vertices, index, rise));
}

/** A vertex taken out; a shape keeps at least three. */
export function removeVertex(job: Job, wallId: string, ref: ShapeRef | null, index: number): Job {
  const removed = changeVertices(job, wallId, ref, (vertices) => removeVertexFrom(vertices, index));
  const countIn = (one: Job) => verticesAt(findWall(one, wallId)!, ref)?.length;
  const hasGone = findWall(job, wallId) && countIn(removed) !== countIn(job);
  return hasGone ? renumber(removed, wallId, ref, index, 'taken out') : removed;
}

/** The wall's outline scaled to a new overall width and height; what hangs on it stays where it is. */
export function resizeOutline(job: Job, wallId: string, width: number, height: number): Job {
  return changeWall(job, wallId, (wall) => {
    const from = boxOfVertices(wall.outline);
    return { ...wall, outline: scaled(wall.outline, from, { ...from, width, height }) };
  });
}

export function addStock(job: Job, stock: StockSheet): Job {
  return { ...job, stock: [...job.stock, stock] };
}

export function changeStock(job: Job, id: string, patch: Partial<StockSheet>): Job {
  if (!job.stock.some((stock) => stock.id === id)) return job;
  return {
    ...job,
    stock: job.stock.map((stock) => (stock.id === id ? withoutUndefined({ ...stock, ...patch }) : stock)),
  };
}

/** Rack pieces and layouts that name it must have been changed before: a job refers to nothing it lacks. */
export function removeStock(job: Job, id: string): Job {
  const stock = job.stock.filter((sheet) => sheet.id !== id);
  return stock.length < job.stock.length ? { ...job, stock } : job;
}

/** `prefix` followed by the lowest number that nothing on the wall has. */
export function freshId(wall: Wall, prefix: string): string {
  const objects = [
    ...wall.openings,
    ...wall.fittings,
    ...wall.zones,
    ...(wall.lines ?? []),
    ...(wall.fixingPoints ?? []),
    ...(wall.hung ?? []),
  ];
  const taken = new Set(objects.map((object) => object.id));
  for (let n = 1; ; n++) if (!taken.has(prefix + n)) return prefix + n;
}

/** A, B, … Z, then W27, W28, … */
export function freshWallId(job: Job): string {
  const taken = new Set(job.walls.map((wall) => wall.id));
  for (let n = 0; ; n++) {
    const id = n < 26 ? String.fromCharCode(65 + n) : `W${n + 1}`;
    if (!taken.has(id)) return id;
  }
}

/** What counts by corners keeps to them: check measures of a wall, ends of a zone's edges. */
function renumber(
  job: Job,
  wallId: string,
  ref: ShapeRef | null,
  index: number,
  what: 'put in' | 'taken out',
): Job {
  if (!ref) return renumberMeasures(job, wallId, index, what);
  const wall = findWall(job, wallId);
  const { shape, edges } = ((wall && findObject(wall, ref)) ?? {}) as Partial<Zone>;
  if (!shape || !edges || ref.hole !== undefined) return job;
  const left = renumberedEdges(edges, shape.length, index, what);
  return changeObject<Zone>(job, wallId, ref, { edges: left });
}

function renumberMeasures(job: Job, wallId: string, index: number, what: 'put in' | 'taken out'): Job {
  const measures = findWall(job, wallId)?.checkMeasures;
  if (!measures) return job;
  const left = renumbered(measures, index, what);
  return changeWall(
    job,
    wallId,
    ({ checkMeasures: _, ...wall }) => (left.length > 0 ? { ...wall, checkMeasures: left } : wall) as Wall,
  );
}

function changeVertices(
  job: Job,
  wallId: string,
  ref: ShapeRef | null,
  change: (vertices: Vertex[]) => Vertex[],
): Job {
  if (!ref) return changeWall(job, wallId, (wall) => ({ ...wall, outline: change(wall.outline) }));
  const wall = findWall(job, wallId);
  const object = wall && findObject(wall, ref);
  if (!object?.shape) return job;
  const { hole } = ref;
  if (hole !== undefined) {
    const { holes } = object as Zone;
    return changeObject<Zone>(job, wallId, ref, {
      holes: holes.map((one, i) => (i === hole ? change(one) : one)),
    });
  }
  return mapObject(job, wallId, ref, (found) => ({ ...found, shape: change(found.shape as Vertex[]) }));
}

function mapObject(
  job: Job,
  wallId: string,
  ref: ObjectRef,
  change: (object: WallObject) => WallObject,
): Job {
  const apply = <T extends WallObject>(list: readonly T[]): T[] =>
    list.map((object) => (object.id === ref.id ? (change(object) as T) : object));
  return changeWall(job, wallId, (wall) => {
    if (!findObject(wall, ref)) return wall;
    if (ref.kind === 'opening') return { ...wall, openings: apply(wall.openings) };
    if (ref.kind === 'fitting') return { ...wall, fittings: apply(wall.fittings) };
    if (ref.kind === 'hung') return { ...wall, hung: apply(wall.hung!) };
    return { ...wall, zones: apply(wall.zones) };
  });
}

export function moved<T extends WallObject>(object: T, dx: number, dy: number): T {
  return mapped(untested(object), (x, y) => [tidy(x + dx), tidy(y + dy)]);
}

function fitted<T extends WallObject>(object: T, to: MmBox): T {
  const placed = object as Opening;
  if (placed.circle) {
    const diameter = Math.min(to.width, to.height);
    const circle = { ...placed.circle, x: to.x + to.width / 2, y: to.y + to.height / 2, diameter };
    return { ...object, circle };
  }
  if (isHung(object)) return { ...withPlaces(untested(object), placesIn(object, to)), ...to };
  if (!object.shape) return { ...object, ...to };
  const from = boxOfObject(object);
  // What a hole of a zone stands for is on the wall: it goes where the zone goes, but does not grow with it.
  const { holes } = object as Zone;
  if (holes && (from.width !== to.width || from.height !== to.height))
    return { ...fitted({ ...object, holes: undefined }, to), holes };
  return mapped(object, (x, y) => scalePoint(x, y, from, to));
}

function scaled(vertices: readonly Vertex[], from: MmBox, to: MmBox): Vertex[] {
  return mapVertices(vertices, (x, y) => scalePoint(x, y, from, to));
}

function scalePoint(x: number, y: number, from: MmBox, to: MmBox): [number, number] {
  return [
    tidy(to.x + ((x - from.x) * to.width) / (from.width || 1)),
    tidy(to.y + ((y - from.y) * to.height) / (from.height || 1)),
  ];
}

export type PointMap = (x: number, y: number) => [number, number];

/** Every point of a shape or circle, or the lower left corner of a rectangle, to another place. */
export function mapped<T extends WallObject>(object: T, map: PointMap): T {
  const placed = object as Opening;
  if (placed.circle) {
    const [x, y] = map(placed.circle.x, placed.circle.y);
    return { ...object, circle: { ...placed.circle, x, y } };
  }
  if (object.shape) {
    const shape = mapVertices(object.shape as Vertex[], map);
    const holes = (object as Zone).holes;
    return holes
      ? { ...object, shape, holes: holes.map((hole) => mapVertices(hole, map)) }
      : { ...object, shape };
  }
  const [x, y] = map(placed.x ?? 0, placed.y ?? 0);
  return { ...object, x, y };
}

export function mapVertices(vertices: readonly Vertex[], map: PointMap): Vertex[] {
  return vertices.map((vertex) =>
    Array.isArray(vertex)
      ? map(vertex[0], vertex[1])
      : { ...vertex, arcTo: map(...vertex.arcTo), via: map(...vertex.via) },
  );
}

/** To 0.01 mm, the step of the clipping kernel, so that sums of drags leave no binary dust in the file. */
export function tidy(length: number): number {
  return Math.round(length * 100) / 100 + 0;
}

/** A field that is undefined is taken out. */
export function withoutUndefined<T extends object>(object: T): T {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
}
