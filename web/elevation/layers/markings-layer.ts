import { boxOf } from '../../../core/geometry/polygon';
import type { Zone } from '../../../core/job/schema';
import { drawMarking } from '../../../core/markings/draw-marking';
import { inkOf } from '../../../core/markings/ink';
import type { MarkedText, MarkingDrawing } from '../../../core/markings/marking-drawing';
import type { SvgPicture } from '../../../core/svg/read-svg';
import type { ShownPicture } from '../../markings/pictures.svelte';
import { polygonOf } from '../rings';
import { acrossOf, condensed, downOf, inks, screenBox, strokeLine, type Pen } from './pen';

export type PictureOf = (photo: string) => ShownPicture | undefined;

const ofInk = { dark: inks.ink, light: inks.paper, red: inks['red-lead'] } as const;
/** Letters smaller than this are not to be read; then they are written larger, where their cell has room. */
const leastType = 12;
/** Of the height of a capital of Fira Sans. */
const typePerCapital = 1000 / 689;

/** Markings of zones, in their inks: lines as wide as they will be, but never less than a hairline. */
export function paintMarkings(pen: Pen, zones: readonly Zone[], pictureOf: PictureOf): void {
  for (const zone of zones) {
    if (!zone.markings) continue;
    const { left, bottom } = boxOf(polygonOf(zone).outer);
    for (const marking of zone.markings) {
      const drawn = drawMarking(marking, { x: left, y: bottom });
      paintMarking(pen, drawn, ofInk[inkOf(marking, zone)], pictureOf);
    }
  }
}

function paintMarking(pen: Pen, drawn: MarkingDrawing, ink: string, pictureOf: PictureOf): void {
  const { context, frame } = pen;
  const { box, picture } = drawn;
  context.fillStyle = ink;
  for (const square of drawn.filled) {
    const { x, y, width, height } = screenBox(frame, square);
    context.fillRect(x, y, width, height);
  }
  const width = Math.max(1, (drawn.lineWidth / 100) * frame.scale);
  for (const { from, to } of drawn.lines) {
    const line = [
      acrossOf(frame, from.x),
      downOf(frame, from.y),
      acrossOf(frame, to.x),
      downOf(frame, to.y),
    ] as const;
    strokeLine(pen, line, ink, width);
  }
  paintLetters(pen, drawn.texts, ink);
  if (picture !== null) paintPicture(pen, screenBox(frame, box), pictureOf(picture));
}

/** All of them or none: a single short word in a row of empty cells would be read as the only one there is. */
function paintLetters({ context, frame }: Pen, texts: readonly MarkedText[], ink: string): void {
  const [first] = texts;
  if (!first) return;
  const size = Math.max(leastType, (first.height / 100) * frame.scale * typePerCapital);
  context.font = `${size}px ${condensed}`;
  const placed = texts.map(({ text, cell }) => ({ text, box: screenBox(frame, cell) }));
  const fits = ({ text, box }: (typeof placed)[number]) =>
    size * 0.8 <= box.height && context.measureText(text).width <= box.width - 2;
  if (!placed.every(fits)) return;
  context.fillStyle = ink;
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  for (const { text, box } of placed)
    context.fillText(text, box.x + box.width / 2, box.y + box.height / 2 + size / typePerCapital / 2);
}

interface ScreenBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function paintPicture(pen: Pen, box: ScreenBox, picture: ShownPicture | undefined): void {
  const { context } = pen;
  if (picture?.kind === 'pixels') {
    context.imageSmoothingEnabled = true;
    context.drawImage(picture.bitmap, box.x, box.y, box.width, box.height);
  } else if (picture?.kind === 'lines') paintLines(context, box, picture.lines);
  if (picture && picture.kind !== 'missing') return;
  // Its place is to scale all the same.
  const [right, foot] = [box.x + box.width, box.y + box.height];
  context.strokeStyle = inks.soft;
  context.lineWidth = 1;
  context.strokeRect(box.x, box.y, box.width, box.height);
  strokeLine(pen, [box.x, box.y, right, foot], inks.soft, 1);
  strokeLine(pen, [box.x, foot, right, box.y], inks.soft, 1);
}

function paintLines(
  context: CanvasRenderingContext2D,
  box: ScreenBox,
  { width, height, shapes }: SvgPicture,
): void {
  const [perX, perY] = [box.width / width, box.height / height];
  for (const { chains, fill, stroke, strokeWidth, evenOdd } of shapes) {
    context.beginPath();
    for (const { points, closed } of chains) {
      points.forEach(({ x, y }, i) => {
        const [across, down] = [box.x + x * perX, box.y + y * perY];
        if (i === 0) context.moveTo(across, down);
        else context.lineTo(across, down);
      });
      if (closed) context.closePath();
    }
    if (fill) {
      context.fillStyle = fill;
      context.fill(evenOdd ? 'evenodd' : 'nonzero');
    }
    if (stroke) {
      context.strokeStyle = stroke;
      context.lineWidth = Math.max(1, strokeWidth * Math.sqrt(perX * perY));
      context.stroke();
    }
  }
}
