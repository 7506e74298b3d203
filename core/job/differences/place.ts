import type { Mm } from '../../units';
import type { Opening, Vertex, Zone } from '../schema';
import { boxOfObject, boxOfVertices, isRectangle, type MmBox, type MmPoint, type WallObject } from '../shape';
import { figure, isSame, isSameLength, joined, sameLength, wayInWords, type Says } from './difference';

/**
 * How an object lies and how large it is, against what it was before.
 *
 * @returns `moved 120 mm right`, `is 200 mm wider on the right`, `has another shape`; [] if nothing differs
 */
export function placeDifferences(before: WallObject, after: WallObject): Says[] {
  const [was, is] = [formOf(before), formOf(after)];
  if (was === 'circle' && is === 'circle') return circleDifferences(before as Opening, after as Opening);
  const box = boxDifferences(boxOfObject(before), boxOfObject(after));
  if (was === 'box' && is === 'box') return [...box, ...holesDifferences(before, after)];
  const shape = (object: WallObject) => (object.shape ?? []) as readonly Vertex[];
  if (was === 'free' && is === 'free')
    return [...shapeDifferences(shape(before), shape(after)), ...holesDifferences(before, after)];
  return [
    { kind: 'changed', says: is === 'circle' ? 'is round now' : 'has another shape' },
    ...box.filter(({ kind }) => kind === 'changed'),
  ];
}

/** By how much an object has moved as a whole; null if it has changed its size or shape too. */
export function shiftOf(before: WallObject, after: WallObject): MmPoint | null {
  if (placeDifferences(before, after).some(({ kind }) => kind === 'changed')) return null;
  const [a, b] = [boxOfObject(before), boxOfObject(after)];
  return { x: b.x - a.x, y: b.y - a.y };
}

/** Points of an outline, against those before. */
export function shapeDifferences(before: readonly Vertex[], after: readonly Vertex[]): Says[] {
  if (isRectangle(before) && isRectangle(after))
    return boxDifferences(boxOfVertices(before), boxOfVertices(after));
  const [was, is] = [inOneOrder(before), inOneOrder(after)];
  const [from, to] = [pointsOf(was), pointsOf(is)];
  const first = from[0] && to[0] ? { x: to[0].x - from[0].x, y: to[0].y - from[0].y } : { x: 0, y: 0 };
  const isAlike =
    from.length === to.length && was.every((vertex, i) => Array.isArray(vertex) === Array.isArray(is[i]));
  const shifts = isAlike ? from.map((point, i) => ({ x: to[i]!.x - point.x, y: to[i]!.y - point.y })) : [];
  if (isAlike && shifts.every(({ x, y }) => isSameLength(x, first.x) && isSameLength(y, first.y))) {
    const way = wayInWords(first.x, first.y);
    return way ? [{ kind: 'moved', says: `moved ${way}` }] : [];
  }
  const box = boxDifferences(boxOfVertices(before), boxOfVertices(after)).filter(
    ({ kind }) => kind === 'changed',
  );
  const moved = shifts.filter(({ x, y }) => wayInWords(x, y) !== '');
  const corners =
    before.length !== after.length
      ? ` (${after.length} corners instead of ${before.length})`
      : moved.length === 1
        ? `: a corner moved ${wayInWords(moved[0]!.x, moved[0]!.y)}`
        : '';
  return [{ kind: 'changed', says: `has another shape${corners}` }, ...box];
}

/** `moved 50 mm up`, and `is 200 mm wider on the right and 10 mm shorter at the top`. */
export function boxDifferences(before: MmBox, after: MmBox): Says[] {
  const across = sideChange(
    before.x,
    before.width,
    after.x,
    after.width,
    ['left', 'right'],
    ['wider', 'narrower'],
    'on the',
  );
  const up = sideChange(
    before.y,
    before.height,
    after.y,
    after.height,
    ['foot', 'top'],
    ['taller', 'shorter'],
    'at the',
  );
  const way = wayInWords(across.size ? 0 : across.shift, up.size ? 0 : up.shift);
  const size = joined([across.size, up.size]);
  return [
    ...(way ? [{ kind: 'moved', says: `moved ${way}` } as const] : []),
    ...(size ? [{ kind: 'changed', says: `is ${size}` } as const] : []),
  ];
}

function sideChange(
  from: Mm,
  before: Mm,
  to: Mm,
  after: Mm,
  [low, high]: readonly [string, string],
  [more, less]: readonly [string, string],
  preposition: string,
): { shift: Mm; size: string } {
  const shift = to - from;
  const grown = after - before;
  if (isSameLength(grown, 0)) return { shift, size: '' };
  const atHigh = shift + grown;
  const words = `${figure(Math.abs(grown))} mm ${grown > 0 ? more : less}`;
  if (isSameLength(shift, 0)) return { shift, size: `${words} ${preposition} ${high}` };
  if (isSameLength(atHigh, 0)) return { shift, size: `${words} ${preposition} ${low}` };
  const edge = (name: string, by: Mm) => `${name} ${low === 'left' ? wayInWords(by, 0) : wayInWords(0, by)}`;
  return { shift, size: `${words} (${edge(low, shift)}, ${edge(high, atHigh)})` };
}

function circleDifferences(before: Opening, after: Opening): Says[] {
  const [was, is] = [before.circle!, after.circle!];
  const way = wayInWords(is.x - was.x, is.y - was.y);
  return [
    ...(way ? [{ kind: 'moved', says: `moved ${way}` } as const] : []),
    ...(isSameLength(was.diameter, is.diameter)
      ? []
      : [
          {
            kind: 'changed',
            says: `has a diameter of ${figure(is.diameter)} mm instead of ${figure(was.diameter)} mm`,
          } as const,
        ]),
  ];
}

/** Holes that go along with their zone have not changed. */
function holesDifferences(before: WallObject, after: WallObject): Says[] {
  const [was, is] = [(before as Zone).holes ?? [], (after as Zone).holes ?? []];
  if (was.length === 0 && is.length === 0) return [];
  if (was.length !== is.length) {
    return [
      {
        kind: 'changed',
        says: `has ${is.length} ${is.length === 1 ? 'hole' : 'holes'} instead of ${was.length}`,
      },
    ];
  }
  const [a, b] = [boxOfObject(before), boxOfObject(after)];
  const alongside = (dx: Mm, dy: Mm) =>
    was.every((hole, i) => isSame(moved(hole, dx, dy), is[i], sameLength));
  if (alongside(0, 0) || alongside(b.x - a.x, b.y - a.y)) return [];
  return [{ kind: 'changed', says: 'has its holes elsewhere or of another shape' }];
}

function formOf(object: WallObject): 'circle' | 'box' | 'free' {
  if ((object as Opening).circle) return 'circle';
  const shape = object.shape as readonly Vertex[] | undefined;
  return !shape || isRectangle(shape) ? 'box' : 'free';
}

function pointsOf(vertices: readonly Vertex[]): MmPoint[] {
  return vertices
    .flatMap((vertex) => (Array.isArray(vertex) ? [vertex] : [vertex.via, vertex.arcTo]))
    .map(([x, y]) => ({ x, y }));
}

/** Straight outlines anticlockwise from their lowest, leftmost corner: where a list begins is no difference. */
function inOneOrder(vertices: readonly Vertex[]): readonly Vertex[] {
  if (!vertices.every((vertex) => Array.isArray(vertex))) return vertices;
  const points = vertices as readonly (readonly [number, number])[];
  const doubleArea = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  const turned = doubleArea < 0 ? points.toReversed() : points;
  const first = turned.reduce((best, [x, y], i) => {
    const [bestX, bestY] = turned[best]!;
    const isLower = y < bestY - sameLength || (Math.abs(y - bestY) <= sameLength && x < bestX);
    return isLower ? i : best;
  }, 0);
  return [...turned.slice(first), ...turned.slice(0, first)] as unknown as Vertex[];
}

function moved(vertices: readonly Vertex[], dx: Mm, dy: Mm): Vertex[] {
  const by = ([x, y]: readonly [number, number]): [number, number] => [x + dx, y + dy];
  return vertices.map((vertex) =>
    Array.isArray(vertex) ? by(vertex) : { ...vertex, arcTo: by(vertex.arcTo), via: by(vertex.via) },
  );
}
