import type { Pictures } from '../../core/drawings/pictures';
import { findPhoto } from '../../core/job/photos';
import type { Job, Photo } from '../../core/job/schema';
import type { PhotoStore } from '../keeping/photo-store';

/** Pictures of a job from where the device keeps them; WebP, which no PDF holds, as PNG. Those that are not there are left out. */
export async function picturesToPrint(
  job: Job,
  ids: Iterable<string>,
  store: Pick<PhotoStore, 'get'>,
): Promise<Pictures> {
  const pictures = new Map<string, { type: Photo['type']; bytes: Uint8Array }>();
  for (const id of ids) {
    const kept = await store.get(id).catch(() => undefined);
    const photo = findPhoto(job, id);
    if (!kept || !photo) continue;
    const isWebp = photo.type === 'image/webp';
    const blob = isWebp ? await asPng(kept.bytes).catch(() => null) : kept.bytes;
    if (!blob) continue;
    const bytes = new Uint8Array(await blob.arrayBuffer());
    pictures.set(id, { type: isWebp ? 'image/png' : photo.type, bytes });
  }
  return pictures;
}

async function asPng(bytes: Blob): Promise<Blob> {
  const bitmap = await createImageBitmap(bytes);
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
  bitmap.close();
  return canvas.convertToBlob({ type: 'image/png' });
}
