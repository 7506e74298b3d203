import type { Point2 } from '../../core/geometry/homography';

/** How a photo lies on the screen: screen px per photo px, and where its upper left corner is. */
export interface PhotoFrame {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const greatestScale = 16;

export function fitPhoto(photo: Size, view: Size): PhotoFrame {
  const scale = Math.max(0.01, Math.min((view.width - 24) / photo.width, (view.height - 24) / photo.height));
  return { scale, x: (view.width - photo.width * scale) / 2, y: (view.height - photo.height * scale) / 2 };
}

export function toPhoto({ scale, x, y }: PhotoFrame, [sx, sy]: Point2): Point2 {
  return [(sx - x) / scale, (sy - y) / scale];
}

export function toView({ scale, x, y }: PhotoFrame, [px, py]: Point2): Point2 {
  return [x + px * scale, y + py * scale];
}

/** Zoomed so that the point of the photo under the hand stays there; never farther away than the whole photo. */
export function zoomPhoto(
  frame: PhotoFrame,
  at: Point2,
  factor: number,
  photo: Size,
  view: Size,
): PhotoFrame {
  const least = fitPhoto(photo, view).scale;
  const scale = Math.max(least, Math.min(greatestScale, frame.scale * factor));
  const ratio = scale / frame.scale;
  return heldIn(
    { scale, x: at[0] + (frame.x - at[0]) * ratio, y: at[1] + (frame.y - at[1]) * ratio },
    photo,
    view,
  );
}

export function panPhoto(frame: PhotoFrame, dx: number, dy: number, photo: Size, view: Size): PhotoFrame {
  return heldIn({ ...frame, x: frame.x + dx, y: frame.y + dy }, photo, view);
}

/** The photo never leaves the view: a half of the view stays filled with it. */
function heldIn({ scale, x, y }: PhotoFrame, photo: Size, view: Size): PhotoFrame {
  const hold = (at: number, size: number, room: number) =>
    Math.min(room / 2, Math.max(room / 2 - size * scale, at));
  return { scale, x: hold(x, photo.width, view.width), y: hold(y, photo.height, view.height) };
}
