import { photoIdOf, photoTypeOf } from '../../core/job/photo-bytes';
import type { Photo } from '../../core/job/schema';
import { dayTaken } from './day-taken';

/** px of the longest side: 12 megapixels on a wall of 4 m are then 1.3 mm each. */
export const keptSide = 3000;
/** Bytes; larger ones are no photos of a camera that a surveyor carries (common practice, no source). */
const largestFile = 60_000_000;
const smallestSide = 32;

/** A photo as a job keeps it, and its bytes. */
export interface TakenPhoto {
  readonly photo: Photo;
  readonly bytes: Blob;
}

/**
 * Reads a photo upright, as its Exif orientation asks, makes it as small as a job keeps it and leaves out all that its
 * file says besides the picture, such as where it was taken.
 *
 * @returns `fault`: why not, in a sentence
 */
export async function takePhoto(file: File): Promise<TakenPhoto | { readonly fault: string }> {
  const called = `“${file.name || 'The picture'}”`;
  if (file.size > largestFile) {
    return {
      fault: `${called} is ${Math.round(file.size / 1e6)} MB; a photo has at most ${largestFile / 1e6} MB, so make it smaller first.`,
    };
  }
  const original = await file.arrayBuffer();
  if (photoTypeOf(new Uint8Array(original, 0, Math.min(16, file.size))) === null) {
    return { fault: `${called} is no JPEG, PNG or WebP; save it as one of these and load it again.` };
  }
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (!bitmap) {
    return { fault: `${called} cannot be read: it is damaged, cut short or too large; load another copy.` };
  }
  try {
    if (Math.min(bitmap.width, bitmap.height) < smallestSide) {
      return {
        fault: `${called} is only ${bitmap.width} × ${bitmap.height} px; load a photo of at least ${smallestSide} px.`,
      };
    }
    const bytes = await madeSmaller(bitmap);
    const taken = await dayTaken(original);
    const content = new Uint8Array(await bytes.blob.arrayBuffer());
    const photo: Photo = {
      id: photoIdOf(content),
      type: 'image/jpeg',
      width: bytes.width,
      height: bytes.height,
      bytes: content.length,
      ...(file.name && { name: file.name.slice(0, 200) }),
      ...(taken && { taken }),
    };
    return { photo, bytes: bytes.blob };
  } catch {
    return { fault: `${called} is too large for this browser; make it smaller first.` };
  } finally {
    bitmap.close();
  }
}

async function madeSmaller(bitmap: ImageBitmap): Promise<{ blob: Blob; width: number; height: number }> {
  const scale = Math.min(1, keptSide / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * scale));
  const height = Math.max(1, Math.round(bitmap.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d')!;
  // A JPEG has no see-through parts.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  return { blob: await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.88 }), width, height };
}
