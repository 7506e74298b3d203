import type { Item, PictureColour } from '../page';
import { inset, type Pencil, type RealBox } from './pencil';

/* Things of paper and board that lie flat on the wall, and what all drawings of hung things are made with. */

/** What a thing looks like from the front, and the parts of it that throw a shadow on the wall. */
export interface HungLook {
  readonly body: readonly Item[];
  readonly casts: readonly RealBox[];
}

export const ink: PictureColour = '#2b3941';
export const steel: PictureColour = '#8e979b';
export const woodEdge: PictureColour = '#97733f';
const paper: PictureColour = '#fdfcf8';

/** A kind of the user's own: nobody knows what it looks like, so it is a board of its size. */
export function plainThing(box: RealBox, pencil: Pencil): HungLook {
  const edge = Math.min(box.right - box.left, box.top - box.bottom) * 0.06;
  return {
    casts: [box],
    body: [pencil.box(box, '#e5dccb'), frame(inset(box, edge), 2, '#a89c85', pencil)],
  };
}

/** A large initial over two columns of type. */
export function print(box: RealBox, pencil: Pencil): HungLook {
  const [wide, high] = [box.right - box.left, box.top - box.bottom];
  const type = inset(box, wide * 0.14, high * 0.12);
  const initial = {
    left: type.left,
    right: type.left + wide * 0.26,
    top: type.top,
    bottom: type.top - high * 0.2,
  };
  const below = initial.bottom - high * 0.05;
  const gap = wide * 0.04;
  const middle = (type.left + type.right) / 2;
  return {
    casts: [box],
    body: [
      ...sheet(box, pencil),
      pencil.box(initial, '#b5401c'),
      pencil.box(inset(initial, wide * 0.07, high * 0.03), paper),
      ...linesOfType({ ...type, left: initial.right + gap, bottom: initial.bottom }, high * 0.028, pencil),
      ...linesOfType({ ...type, top: below, right: middle - gap / 2 }, high * 0.028, pencil),
      ...linesOfType({ ...type, top: below, left: middle + gap / 2 }, high * 0.028, pencil),
    ],
  };
}

/** Three bold lines over a band and a rule. */
export function poster(box: RealBox, pencil: Pencil): HungLook {
  const [wide, high] = [box.right - box.left, box.top - box.bottom];
  const { left, right, top, bottom } = inset(box, wide * 0.1, high * 0.08);
  const bar = (from: number, to: number, share: number, colour: PictureColour) =>
    pencil.box(
      { left, right: left + (right - left) * share, top: top - high * from, bottom: top - high * to },
      colour,
    );
  return {
    casts: [box],
    body: [
      ...sheet(box, pencil),
      bar(0, 0.13, 1, ink),
      bar(0.16, 0.29, 0.72, ink),
      bar(0.32, 0.6, 1, '#d9a441'),
      pencil.disc(right - wide * 0.2, top - high * 0.46, wide * 0.13, '#b5401c'),
      ...linesOfType({ left, right, top: top - high * 0.65, bottom }, high * 0.035, pencil),
    ],
  };
}

export function clipboard(box: RealBox, pencil: Pencil): HungLook {
  const [wide, high] = [box.right - box.left, box.top - box.bottom];
  const page = { ...inset(box, wide * 0.07, high * 0.05), top: box.top - high * 0.09 };
  const middle = (box.left + box.right) / 2;
  const clip = {
    left: middle - wide * 0.2,
    right: middle + wide * 0.2,
    top: box.top - high * 0.005,
    bottom: box.top - high * 0.12,
  };
  return {
    casts: [box],
    body: [
      pencil.box(box, '#b08d5b'),
      frame(box, 2, woodEdge, pencil),
      pencil.box(page, paper),
      ...linesOfType(inset({ ...page, top: clip.bottom }, wide * 0.1, high * 0.05), high * 0.045, pencil),
      pencil.box(clip, steel),
      pencil.box({ ...clip, bottom: clip.top - high * 0.03 }, '#c3c9cb'),
    ],
  };
}

/** Blocks of a quarter between streets, a water across them; no place that exists. */
export function map(box: RealBox, pencil: Pencil): HungLook {
  const [wide, high] = [box.right - box.left, box.top - box.bottom];
  const field = inset(box, wide * 0.03, high * 0.04);
  const [w, h] = [field.right - field.left, field.top - field.bottom];
  const at = (u: number, v: number): [number, number] => [field.left + u * w, field.bottom + v * h];
  const streets: (readonly [number, number])[][] = [
    [
      [0, 0.3],
      [1, 0.42],
    ],
    [
      [0.22, 0],
      [0.3, 1],
    ],
    [
      [0.55, 0],
      [0.6, 1],
    ],
    [
      [0, 0.85],
      [0.6, 0.72],
      [1, 0.9],
    ],
    [
      [0.8, 0],
      [0.78, 1],
    ],
  ];
  const water: [number, number][] = [
    [0, 0.62],
    [0.3, 0.5],
    [0.62, 0.6],
    [1, 0.52],
    [1, 0.66],
    [0.62, 0.71],
    [0.3, 0.61],
    [0, 0.74],
  ];
  return {
    casts: [box],
    body: [
      ...sheet(box, pencil),
      pencil.box(field, '#ece6d2'),
      pencil.area(
        water.map(([u, v]) => at(u, v)),
        '#b9d1d6',
      ),
      pencil.lines(
        streets.map((street) => street.map(([u, v]) => at(u, v))),
        h * 0.022,
        '#ffffff',
      ),
      frame(field, 2, '#9b9481', pencil),
    ],
  };
}

function sheet(box: RealBox, pencil: Pencil): Item[] {
  return [pencil.box(box, paper), frame(box, 1, '#bdb6a6', pencil)];
}

function linesOfType({ left, right, top, bottom }: RealBox, pitch: number, pencil: Pencil): Item[] {
  const count = Math.max(0, Math.floor((top - bottom) / pitch));
  const lines = Array.from({ length: count }, (_, i): [number, number][] => {
    const y = top - (i + 0.5) * pitch;
    // The last line of every paragraph is short.
    const end = i % 6 === 5 ? left + (right - left) * 0.6 : right;
    return [
      [left, y],
      [end, y],
    ];
  });
  return [pencil.lines(lines, pitch * 0.34, '#7d868b')];
}

export function frame(
  { left, right, bottom, top }: RealBox,
  width: number,
  colour: PictureColour,
  pencil: Pencil,
): Item {
  return pencil.line(
    [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
      [left, bottom],
    ],
    width,
    colour,
  );
}
