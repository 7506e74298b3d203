import type { Mm } from '../../units';
import type { Contour } from './contour';

/*
 * A drawing for a machine or another drawing program: true sizes, nothing that only paper needs.
 */

/** Layers by what is to be done: cut through, only marked on, the edge of the stock sheet, read and never cut. */
export const patternLayers = ['cut', 'mark', 'sheet', 'text'] as const;
/** Layers by what it is; `mark` holds everything that is scribed, screwed or ruled on the wall. */
export const wallLayers = ['wall', 'opening', 'fitting', 'zone', 'panel', 'mark', 'text'] as const;

export type WorkshopLayer = (typeof patternLayers)[number] | (typeof wallLayers)[number];

/** What stands on a layer; mm, x to the right, y up. Words stand on `text` alone, so that no machine cuts them. */
export type WorkshopShape =
  | { readonly kind: 'contour'; readonly layer: Exclude<WorkshopLayer, 'text'>; readonly contour: Contour }
  | {
      readonly kind: 'line';
      readonly layer: Exclude<WorkshopLayer, 'text'>;
      readonly from: readonly [x: Mm, y: Mm];
      readonly to: readonly [x: Mm, y: Mm];
    }
  | WorkshopText;

export interface WorkshopText {
  readonly kind: 'text';
  readonly text: string;
  /** Left end of the base line; its middle where `centred`. */
  readonly at: readonly [x: Mm, y: Mm];
  /** Of a capital. */
  readonly height: Mm;
  readonly centred: boolean;
}

export interface WorkshopDrawing {
  /** Name of its file, without ending. */
  readonly name: string;
  readonly title: string;
  readonly layers: readonly WorkshopLayer[];
  readonly shapes: readonly WorkshopShape[];
}

/** About as wide as plain lettering runs, so that frames and files know where words end. */
export function textWidth({ text, height }: Pick<WorkshopText, 'text' | 'height'>): Mm {
  return [...text].length * height * 0.95;
}

/** What all of a drawing takes up, mm. */
export function extentOf({ shapes }: Pick<WorkshopDrawing, 'shapes'>): {
  left: Mm;
  bottom: Mm;
  right: Mm;
  top: Mm;
} {
  const points = shapes.flatMap(pointsOf);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), -Infinity);
  return { left: least(xs), bottom: least(ys), right: most(xs), top: most(ys) };
}

function pointsOf(shape: WorkshopShape): (readonly [number, number])[] {
  if (shape.kind === 'line') return [shape.from, shape.to];
  if (shape.kind === 'text') {
    const [x, y] = shape.at;
    const width = textWidth(shape);
    const left = shape.centred ? x - width / 2 : x;
    return [
      [left, y - shape.height * 0.3],
      [left + width, y + shape.height],
    ];
  }
  const { contour } = shape;
  if (contour.kind === 'circle') {
    const { x, y, radius } = contour;
    return [
      [x - radius, y - radius],
      [x + radius, y + radius],
    ];
  }
  const { vertices } = contour;
  return vertices.flatMap((from, i): (readonly [number, number])[] => {
    if (from.bulge === 0) return [[from.x, from.y]];
    // An arc stays within its height over the chord.
    const to = vertices[(i + 1) % vertices.length]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const [offX, offY] = [(dy * from.bulge) / 2, (-dx * from.bulge) / 2];
    return [
      [from.x, from.y],
      [from.x + offX, from.y + offY],
      [to.x + offX, to.y + offY],
    ];
  });
}
