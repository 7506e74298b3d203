import type { Box } from '../geometry/polygon';
import type { MarkingInk } from '../job/marking-schema';
import type { MarkingDrawing } from '../markings/marking-drawing';
import { readSvg, type SvgPicture } from '../svg/read-svg';
import type { Art, Colour, Item, LineWidth, Stroke } from './page';
import { boxHeight, boxWidth, cornersOf, type PaperBox } from './paper';
import type { Pictures } from './pictures';

/** From the wall's frame (hundredths) to paper (mm), with how many mm of paper a millimetre of the wall is. */
export interface OnPaper {
  readonly toPaper: (point: { readonly x: number; readonly y: number }) => { x: number; y: number };
  readonly perMm: number;
}

export const inkColours: Readonly<Record<MarkingInk, Colour>> = {
  dark: 'ink',
  light: 'paper',
  red: 'red-lead',
};

/** A marking as it will look on the wall, its lines as wide as they will be or as narrow as a printer shows. */
export function lookOfMarking(
  drawn: MarkingDrawing,
  ink: MarkingInk,
  { toPaper, perMm }: OnPaper,
  pictures: Pictures,
): Item[] {
  const colour = inkColours[ink];
  const width = widthOnPaper((drawn.lineWidth / 100) * perMm);
  return [
    ...drawn.filled.map((box): Item => ({
      kind: 'fill',
      rings: [cornersOf(boxOnPaper(box, toPaper))],
      colour,
    })),
    ...drawn.lines.map(({ from, to }): Stroke => ({
      kind: 'stroke',
      points: [toPaper(from), toPaper(to)],
      width,
      colour,
    })),
    ...drawn.texts.map(({ text, cell, height }): Item => {
      const { left, bottom, right, top } = boxOnPaper(cell, toPaper);
      const high = (height / 100) * perMm;
      const at = { x: (left + right) / 2, y: (bottom + top - high) / 2 };
      return { kind: 'lettering', text, at, height: high, anchor: 'middle', colour };
    }),
    ...pictureItems(drawn, toPaper, pictures),
  ];
}

/** The picture of a marking over its box: its lines as lines, anything else as it is. */
export function pictureItems(
  { picture, box }: MarkingDrawing,
  toPaper: OnPaper['toPaper'],
  pictures: Pictures,
): Item[] {
  if (picture === null) return [];
  const place = boxOnPaper(box, toPaper);
  const bytes = pictures.get(picture);
  const lines = bytes?.type === 'image/svg+xml' ? linesOf(bytes.bytes) : null;
  if (lines) return artOf(lines, place);
  return [
    {
      kind: 'photograph',
      photo: picture,
      left: place.left,
      bottom: place.bottom,
      width: boxWidth(place),
      height: boxHeight(place),
    },
  ];
}

const known = new WeakMap<Uint8Array, SvgPicture | null>();

/** Read once, however many pages show it; null where it cannot be. */
function linesOf(bytes: Uint8Array): SvgPicture | null {
  const read = known.get(bytes);
  if (read !== undefined) return read;
  const picture = readSvg(bytes);
  const lines = 'fault' in picture ? null : picture;
  known.set(bytes, lines);
  return lines;
}

function artOf({ width, height, shapes }: SvgPicture, place: PaperBox): Art[] {
  const [perX, perY] = [boxWidth(place) / width, boxHeight(place) / height];
  return shapes.map(({ chains, fill, stroke, strokeWidth, evenOdd }) => ({
    kind: 'art',
    chains: chains.map(({ points, closed }) => ({
      closed,
      points: points.map(({ x, y }) => ({ x: place.left + x * perX, y: place.top - y * perY })),
    })),
    fill,
    stroke,
    evenOdd,
    width: strokeWidth * Math.sqrt(perX * perY),
  }));
}

export function boxOnPaper({ left, bottom, right, top }: Box, toPaper: OnPaper['toPaper']): PaperBox {
  const [low, high] = [toPaper({ x: left, y: bottom }), toPaper({ x: right, y: top })];
  return { left: low.x, bottom: low.y, right: high.x, top: high.y };
}

const widths: readonly LineWidth[] = [0.18, 0.25, 0.35, 0.5, 0.7, 1];

/** The nearest width of the ISO 128 series. */
function widthOnPaper(width: number): LineWidth {
  return widths.reduce((best, one) => (Math.abs(one - width) < Math.abs(best - width) ? one : best));
}
