import { largestPhoto, largestSvg } from '../../core/job/limits';
import { photoIdOf, photoTypeOf } from '../../core/job/photo-bytes';
import type { Photo } from '../../core/job/schema';
import { readSvg } from '../../core/svg/read-svg';
import { keptSide, type TakenPhoto } from '../photo/take-photo';

const largestFile = 60_000_000;

/** A picture as a job keeps it; `said` tells what was done to it, where that is not plain. */
export type TakenPicture = TakenPhoto & { readonly said: string | null };

/**
 * Reads a picture for a marking. An SVG of plain paths and shapes is kept as it is, so that its lines stay lines; one with
 * more than these is painted once, as an image that can neither run nor fetch anything, and kept as a PNG. Anything of
 * pixels is kept as PNG, or as JPEG where it was one, at most 3000 px long.
 *
 * @returns `fault`: why not, in a sentence
 */
export async function takePicture(file: File): Promise<TakenPicture | { readonly fault: string }> {
  const called = `“${file.name || 'The picture'}”`;
  if (file.size > largestFile)
    return {
      fault: `${called} is ${Math.round(file.size / 1e6)} MB; make it smaller than ${largestFile / 1e6} MB first.`,
    };
  const bytes = new Uint8Array(await file.arrayBuffer());
  const type = photoTypeOf(bytes);
  if (type === null)
    return { fault: `${called} is no PNG, JPEG, WebP or SVG; save it as one of these and load it again.` };
  if (type === 'image/svg+xml') {
    if (bytes.length > largestSvg)
      return {
        fault: `${called} is an SVG of ${(bytes.length / 1e6).toFixed(1)} MB; simplify it to less than ${largestSvg / 1e6} MB first.`,
      };
    const lines = readSvg(bytes);
    if (!('fault' in lines)) return { ...kept(bytes, 'image/svg+xml', sides(lines), file.name), said: null };
    const painted = lines.beyond && (await paint(bytes).catch(() => null));
    if (!painted)
      return { fault: `${called} cannot be read: it ${lines.fault}; save it once more, or as PNG.` };
    return asPixels(
      painted,
      'image/png',
      file.name,
      `${called} ${lines.fault}, so that it is kept as a picture of pixels.`,
    );
  }
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (!bitmap)
    return { fault: `${called} cannot be read: it is damaged, cut short or too large; load another copy.` };
  return asPixels(bitmap, type === 'image/jpeg' ? type : 'image/png', file.name, null);
}

function kept(
  content: Uint8Array<ArrayBuffer>,
  type: Photo['type'],
  size: { width: number; height: number },
  name: string,
): TakenPhoto {
  const photo = {
    id: photoIdOf(content),
    type,
    ...size,
    bytes: content.length,
    ...(name && { name: name.slice(0, 200) }),
  };
  return { photo: photo as Photo, bytes: new Blob([content], { type }) };
}

async function asPixels(
  image: ImageBitmap,
  type: 'image/png' | 'image/jpeg',
  name: string,
  said: string | null,
): Promise<TakenPicture | { readonly fault: string }> {
  const scale = Math.min(1, keptSide / Math.max(image.width, image.height));
  const size = {
    width: Math.max(1, Math.round(image.width * scale)),
    height: Math.max(1, Math.round(image.height * scale)),
  };
  const canvas = new OffscreenCanvas(size.width, size.height);
  const context = canvas.getContext('2d')!;
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, size.width, size.height);
  image.close();
  const blob = await canvas.convertToBlob({ type, quality: 0.9 });
  const content = new Uint8Array(await blob.arrayBuffer());
  if (content.length > largestPhoto)
    return {
      fault: `“${name}” would take ${(content.length / 1e6).toFixed(1)} MB; save it as JPEG, or smaller, and load it again.`,
    };
  return { ...kept(content, type, size, name), said };
}

/** An SVG as the browser paints it in an image: scripts do not run there, and nothing outside of the file is fetched. */
async function paint(bytes: Uint8Array<ArrayBuffer>): Promise<ImageBitmap> {
  const address = URL.createObjectURL(new Blob([bytes], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const [width, height] = [image.naturalWidth || 300, image.naturalHeight || 150];
    const scale = keptSide / Math.max(width, height);
    return await createImageBitmap(image, {
      resizeWidth: Math.max(1, Math.round(width * scale)),
      resizeHeight: Math.max(1, Math.round(height * scale)),
      resizeQuality: 'high',
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Only its proportions matter: as fine as a job can have them. */
function sides({ width, height }: { width: number; height: number }): { width: number; height: number } {
  const scale = 20_000 / Math.max(width, height);
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}
