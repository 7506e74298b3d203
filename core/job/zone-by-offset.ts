import { flattenCircle, flattenVertices } from '../geometry/arc';
import { difference, intersection } from '../geometry/clip';
import { offsetOutline, type Circle } from '../geometry/offset-outline';
import type { Outline } from '../geometry/outline';
import { polygonArea, rectangle, type Region } from '../geometry/polygon';
import { verticesOfRing } from '../geometry/ring-arcs';
import { toHundredth, type Mm } from '../units';
import { moved } from './changes';
import { circleOf, circleVertices } from './holes';
import type { HungItem } from './hung-schema';
import { nameOfHung, nameOfPlaced, nameOfWall, nameOfZone } from './names';
import type { Fitting, Opening, Vertex, Wall, Zone } from './schema';
import { boxOfVertices, findObject, isRectangle, rectangleVertices, type ObjectRef } from './shape';

export const offsetSides = ['left', 'right', 'top', 'foot'] as const;
export type OffsetSide = (typeof offsetSides)[number];
export type SideDistances = Readonly<Record<OffsetSide, Mm>>;

/** `inside`: within an edge loop; `outside`: the loop grown, with what is in it; `round`: grown, without it; `beside`: a copy. */
export type OffsetWay = 'inside' | 'outside' | 'round' | `beside-${OffsetSide}`;

export interface ZoneOffset {
  /** Whose edge is taken; null for the wall's outline. */
  readonly of: ObjectRef | null;
  readonly way: OffsetWay;
  /** From 0; one all round or, where the edge is a rectangle, one a side. */
  readonly distance: Mm | SideDistances;
}

export type ZoneShape = Pick<Zone, 'shape' | 'holes'>;

/** A region of less, mm², is what rounding leaves. */
const negligible = 1;

export function offsetWays(of: ObjectRef | null): readonly OffsetWay[] {
  if (!of) return ['inside'];
  if (of.kind !== 'zone') return ['round'];
  return ['outside', 'inside', 'round', 'beside-left', 'beside-right', 'beside-top', 'beside-foot'];
}

/** Whether it may have a distance for each side. */
export function hasSides(wall: Wall, { of, way }: Pick<ZoneOffset, 'of' | 'way'>): boolean {
  return !way.startsWith('beside') && isRectangle(verticesOfLoop(wall, of) ?? []);
}

/**
 * Shapes of zones at a distance from an edge loop, measured square to the edge (see `offsetOutline`), within the wall: one
 * shape for each part that is left. Holes of a zone stay where they are. Arcs stay arcs, within 0.05 mm.
 *
 * @returns what is wrong, in a sentence, if nothing is left or the edge is no longer there
 */
export function zoneShapesByOffset(
  wall: Wall,
  offset: ZoneOffset,
): { readonly shapes: readonly ZoneShape[] } | { readonly fault: string } {
  const { of, way, distance } = offset;
  const loop = verticesOfLoop(wall, of);
  if (!loop) return { fault: 'What the distance was taken from is no longer on this wall.' };
  const whole = flattenVertices(wall.outline, 'inscribed');
  const onWall: Region = [{ outer: whole.ring, holes: [] }];
  if (way.startsWith('beside')) return copyBeside(wall, onWall, offset);
  const outline = outlineOfLoop(loop);
  const own: Region = [{ outer: outline.ring, holes: [] }];
  const far = largest(distance);
  if (way === 'round' && far === 0) return { fault: 'A band has to be wider than 0: type its width.' };
  const { region, circles } = moveEdge(loop, outline, distance, way === 'inside' ? -1 : 1);
  const holes = of?.kind === 'zone' ? ((findObject(wall, of) as Zone | undefined)?.holes ?? []) : [];
  const cuts = holes.map(outlineOfLoop);
  const left = difference(
    intersection(region, onWall),
    way === 'round' ? own : cuts.map(({ ring }) => ({ outer: ring, holes: [] })),
  );
  const known = [...circles, ...[whole, ...cuts].flatMap(({ arcs }) => arcs)];
  const shapes = left
    .filter((polygon) => polygonArea(polygon) > negligible * 1e4)
    .map((polygon): ZoneShape => ({
      shape: fromLowerLeft(verticesOfRing(polygon.outer, known) as Vertex[]),
      holes: polygon.holes.map((hole) =>
        fromLowerLeft(verticesOfRing([...hole].reverse(), known) as Vertex[]),
      ),
    }));
  return shapes.length > 0 ? { shapes } : { fault: nothingLeft(wall, offset, far) };
}

/** The edge of the wall (null), of an opening or fitting, or of a zone without its holes. */
export function verticesOfLoop(wall: Wall, of: ObjectRef | null): readonly Vertex[] | undefined {
  if (!of) return wall.outline;
  const object = findObject(wall, of);
  if (!object) return undefined;
  if (object.shape) return object.shape as readonly Vertex[];
  const { circle, x = 0, y = 0, width = 0, height = 0 } = object as Opening | Fitting;
  return circle ? circleVertices(circle) : rectangleVertices({ x, y, width, height });
}

/** A circle that was drawn by four arcs is one all the same, its middle not moved by the rounding of the points they pass. */
function outlineOfLoop(loop: readonly Vertex[]): Outline {
  const circle = circleOf(loop);
  return circle ? flattenCircle(circle, circle.diameter, 'inscribed') : flattenVertices(loop, 'inscribed');
}

function moveEdge(
  loop: readonly Vertex[],
  outline: Outline,
  distance: ZoneOffset['distance'],
  way: 1 | -1,
): { region: Region; circles: readonly Circle[] } {
  if (typeof distance === 'number') return offsetOutline(outline, way * toHundredth(distance));
  const { x, y, width, height } = boxOfVertices(loop);
  const [left, foot] = [
    toHundredth(x) - way * toHundredth(distance.left),
    toHundredth(y) - way * toHundredth(distance.foot),
  ];
  const right = toHundredth(x + width) + way * toHundredth(distance.right);
  const top = toHundredth(y + height) + way * toHundredth(distance.top);
  const isThere = right > left && top > foot;
  return { region: isThere ? [rectangle(left, foot, right - left, top - foot)] : [], circles: [] };
}

/** The zone's own shape and holes, so far from its edge that the two boxes stand apart by the distance. */
function copyBeside(
  wall: Wall,
  onWall: Region,
  { of, way, distance }: ZoneOffset,
): ReturnType<typeof zoneShapesByOffset> {
  const zone = of?.kind === 'zone' ? (findObject(wall, of) as Zone | undefined) : undefined;
  if (!zone) return { fault: 'Only a zone has a copy beside it.' };
  const { width, height } = boxOfVertices(zone.shape);
  const by = largest(distance);
  const [dx, dy] = {
    'beside-left': [-width - by, 0],
    'beside-right': [width + by, 0],
    'beside-top': [0, height + by],
    'beside-foot': [0, -height - by],
  }[way as `beside-${OffsetSide}`] as [number, number];
  const { shape, holes } = moved(zone, dx, dy);
  const own = flattenVertices(shape, 'inscribed').ring;
  if (intersection([{ outer: own, holes: [] }], onWall).length === 0)
    return { fault: `A copy of ${nameOfZone(zone)} there lies beyond the wall; give less, or another side.` };
  return { shapes: [{ shape, holes }] };
}

function nothingLeft(wall: Wall, { of, way }: ZoneOffset, far: Mm): string {
  const object = of && findObject(wall, of);
  const name =
    !of || !object
      ? `the outline of ${nameOfWall(wall)}`
      : of.kind === 'zone'
        ? nameOfZone(object as Zone)
        : of.kind === 'hung'
          ? nameOfHung(object as HungItem)
          : nameOfPlaced(object as Opening | Fitting, of.kind);
  return way === 'inside'
    ? `Nothing is left ${far} mm inside ${name}; give less.`
    : `Nothing of the wall is left about ${name}; look at where it lies.`;
}

function largest(distance: ZoneOffset['distance']): Mm {
  return typeof distance === 'number' ? distance : Math.max(...offsetSides.map((side) => distance[side]));
}

/** As a job file written by hand would list them. */
function fromLowerLeft(vertices: Vertex[]): Vertex[] {
  if (!vertices.some(Array.isArray)) return vertices;
  const points = vertices.map((vertex) => (Array.isArray(vertex) ? vertex : vertex.arcTo));
  const first = points.reduce(
    (best, [x, y], i) => (x + y < points[best]![0] + points[best]![1] - 1e-9 ? i : best),
    0,
  );
  return [...vertices.slice(first), ...vertices.slice(0, first)];
}
