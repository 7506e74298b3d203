import { mapped, tidy } from './changes';
import { isHung, mirroredPlaces, turnedPlaces, withPlaces } from './hung-places';
import { mirroredMarkings, turnedMarkings } from './mirror-markings';
import { boxOfObject, type MmPoint, type WallObject } from './shape';
import type { Job, Layout, Opening, StockSheet, Zone } from './schema';

/*
 * Objects mirrored and turned. Arcs keep their bulge, as every point they pass is taken along. The panels of a zone keep
 * their pattern: a start at a corner goes to the other corner, a start at a point to that point's image.
 */

/** An upright line at this x, or a level one at this y, mm. */
export interface MirrorLine {
  readonly axis: 'x' | 'y';
  readonly at: number;
}

/** The mirror image of an object. Hinges change sides about an upright line; a door's handle keeps its height. */
export function mirrored<T extends WallObject>(job: Job, object: T, line: MirrorLine): T {
  const { axis, at } = line;
  const image = (place: number, size = 0) => tidy(2 * at - place - size);
  const { width, height } = boxOfObject(object);
  // A rectangle is known by its lower left corner, which is the image of another corner.
  const [across, up] = isRectangle(object) ? [width, height] : [0, 0];
  const placed = mapped(object, (x, y) => (axis === 'x' ? [image(x, across), y] : [x, image(y, up)]));
  const layout = (object as Zone).layout;
  return {
    ...placed,
    ...(axis === 'x' && hingeOf(object)),
    ...(layout && { layout: mirroredLayout(job, layout, line) }),
    ...mirroredMarkings(object as Zone, axis),
    ...(isHung(object) && { magnets: withPlaces(object, mirroredPlaces(object, axis)).magnets }),
  };
}

/**
 * An object turned about a point by quarter turns, anticlockwise. A rectangle changes its width for its height; a door
 * keeps the side of its hinges, as it stands upright in any case.
 */
export function turnedBy<T extends WallObject>(job: Job, object: T, about: MmPoint, quarters: number): T {
  let turned = object;
  for (let n = ((quarters % 4) + 4) % 4; n > 0; n--) turned = quarterTurn(job, turned, about);
  return turned;
}

function quarterTurn<T extends WallObject>(job: Job, object: T, about: MmPoint): T {
  const turn = (x: number, y: number): [number, number] => [
    tidy(about.x - (y - about.y)),
    tidy(about.y + (x - about.x)),
  ];
  const layout = (object as Zone).layout;
  const withLayout = {
    ...object,
    ...(layout && { layout: turnedLayout(job, layout, turn) }),
    ...turnedMarkings(object as Zone),
    ...(isHung(object) && { magnets: withPlaces(object, turnedPlaces(object)).magnets }),
  };
  if (!isRectangle(object)) return mapped(withLayout, turn);
  const { x, y, width, height } = boxOfObject(object);
  // The upper left corner becomes the lower left one.
  const [left, foot] = turn(x, y + height);
  return { ...withLayout, x: left, y: foot, width: height, height: width };
}

function isRectangle(object: WallObject): boolean {
  return (object as Opening).circle === undefined && object.shape === undefined;
}

function hingeOf(object: WallObject): Partial<Opening> {
  const { hinge, kind } = object as Opening;
  if (hinge === undefined && kind !== 'door') return {};
  return { hinge: hinge === 'right' ? 'left' : 'right' };
}

function mirroredLayout(job: Job, layout: Layout, { axis, at }: MirrorLine): Layout {
  const { start, stagger } = layout;
  const shift = stagger === 0 ? {} : { stagger: 1 - stagger };
  if (typeof start === 'string') return { ...layout, ...shift, start: mirroredCorner(start, axis) };
  const { width, height } = cellOf(job, layout);
  const image =
    axis === 'x'
      ? { ...start, x: tidy(2 * at - start.x - width) }
      : { ...start, y: tidy(2 * at - start.y - height) };
  return { ...layout, ...shift, start: image };
}

function turnedLayout(job: Job, layout: Layout, turn: (x: number, y: number) => [number, number]): Layout {
  const { start } = layout;
  const turned = !layout.turned;
  if (typeof start === 'string') return { ...layout, turned, start: cornersAround.get(start) ?? start };
  const [x, y] = turn(start.x, start.y + cellOf(job, layout).height);
  return { ...layout, turned, start: { ...start, x, y } };
}

type StartName = Extract<Layout['start'], string>;

function mirroredCorner(start: StartName, axis: 'x' | 'y'): StartName {
  const [a, b] = axis === 'x' ? ['left', 'right'] : ['lower', 'upper'];
  if (start.includes(a)) return start.replace(a, b) as StartName;
  return start.replace(b, a) as StartName;
}

/** Anticlockwise. */
const cornersAround: ReadonlyMap<string, StartName> = new Map([
  ['lower-left', 'lower-right'],
  ['lower-right', 'upper-right'],
  ['upper-right', 'upper-left'],
  ['upper-left', 'lower-left'],
]);

/** A stock sheet as it is laid. */
function cellOf(job: Job, { stock, turned }: Layout): Pick<StockSheet, 'width' | 'height'> {
  const { width, height } = job.stock.find(({ id }) => id === stock) ?? { width: 0, height: 0 };
  return turned ? { width: height, height: width } : { width, height };
}
