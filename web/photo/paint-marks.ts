import type { Marking } from './marking.svelte';
import { toView, type PhotoFrame } from './photo-frame';
import type { Point2 } from '../../core/geometry/homography';

const red = '#b5401c';
const paper = '#fffdf7';
const ink = '#1f2d36';

/** The marked points over the photo: the corners' outline, rings with hair crosses and numbers. */
export function paintMarks(context: CanvasRenderingContext2D, frame: PhotoFrame, marking: Marking): void {
  const { marks, chosen } = marking;
  const corners = marks.slice(0, 4).flatMap(({ px }) => (px ? [toView(frame, px)] : []));
  twice(context, () => {
    context.beginPath();
    corners.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
    if (corners.length === 4) context.closePath();
    context.stroke();
  });
  marks.forEach(({ px }, i) => {
    if (px) paintMark(context, toView(frame, px), String(i + 1), i === chosen);
  });
}

function paintMark(context: CanvasRenderingContext2D, [x, y]: Point2, number: string, chosen: boolean): void {
  const reach = chosen ? 15 : 11;
  twice(context, () => {
    context.beginPath();
    context.arc(x, y, reach - 3, 0, 2 * Math.PI);
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      context.moveTo(x + dx * 3, y + dy * 3);
      context.lineTo(x + dx * (reach + 2), y + dy * (reach + 2));
    }
    context.stroke();
  });
  context.font = `600 14px 'Fira Sans Condensed', sans-serif`;
  const width = context.measureText(number).width + 8;
  context.fillStyle = chosen ? red : ink;
  context.fillRect(x + reach, y - reach - 12, width, 18);
  context.fillStyle = paper;
  context.textBaseline = 'middle';
  context.fillText(number, x + reach + 4, y - reach - 3);
}

/** Light below, red above: it is seen on any photo. */
function twice(context: CanvasRenderingContext2D, stroke: () => void): void {
  context.strokeStyle = paper;
  context.lineWidth = 4;
  stroke();
  context.strokeStyle = red;
  context.lineWidth = 1.5;
  stroke();
}

/** What is under the hand, larger, with a hair cross over the very point. */
export function paintLoupe(
  context: CanvasRenderingContext2D,
  bitmap: ImageBitmap,
  [px, py]: Point2,
  side: number,
  zoom: number,
): void {
  const half = side / 2;
  context.fillStyle = '#8b8672';
  context.fillRect(0, 0, side, side);
  context.imageSmoothingEnabled = false;
  const reach = half / zoom;
  context.drawImage(bitmap, px - reach, py - reach, 2 * reach, 2 * reach, 0, 0, side, side);
  twice(context, () => {
    context.beginPath();
    context.moveTo(half, 0);
    context.lineTo(half, half - 5);
    context.moveTo(half, half + 5);
    context.lineTo(half, side);
    context.moveTo(0, half);
    context.lineTo(half - 5, half);
    context.moveTo(half + 5, half);
    context.lineTo(side, half);
    context.stroke();
  });
}
