import type { Picture } from '../../photo/rectified.svelte';
import type { Pen } from './pen';

/**
 * The photo of the wall under everything else, to scale: only the part of it that is on the screen, from the coarsest of
 * its levels that is fine enough there.
 *
 * @param fade 0: as taken, 1: faded away
 */
export function paintPhoto({ context, frame }: Pen, { area, levels }: Picture, fade: number): void {
  const needed = frame.scale * devicePixelRatio;
  let level = 0;
  while (level + 1 < levels.length && area.scale / 2 ** (level + 1) >= needed * 0.95) level++;
  const image = levels[level]!;
  // Wall mm at the edges of the screen, within the picture.
  const left = Math.max(area.left, -frame.originX / frame.scale);
  const right = Math.min(area.right, (frame.width - frame.originX) / frame.scale);
  const top = Math.min(area.top, frame.originY / frame.scale);
  const bottom = Math.max(area.bottom, (frame.originY - frame.height) / frame.scale);
  if (left >= right || bottom >= top) return;
  // The picture ends on a whole pixel, a little beyond the area.
  const across = (area.scale * image.width) / area.width;
  const down = (area.scale * image.height) / area.height;
  context.save();
  context.globalAlpha = 1 - fade;
  context.imageSmoothingEnabled = true;
  context.drawImage(
    image,
    (left - area.left) * across,
    (area.top - top) * down,
    (right - left) * across,
    (top - bottom) * down,
    frame.originX + left * frame.scale,
    frame.originY - top * frame.scale,
    (right - left) * frame.scale,
    (top - bottom) * frame.scale,
  );
  context.restore();
}
