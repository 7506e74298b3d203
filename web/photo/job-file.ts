import { longestFile } from '../../core/job/limits';
import { takeOutPhotoData, withPhotoData, withUsedPhotos } from '../../core/job/photos';
import { readJob, type ReadJob } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';
import type { PhotoStore } from '../keeping/photo-store';

/**
 * The text of a job's file: with the bytes of its photos, which the open job only names.
 *
 * @returns `said`: what is not in the file, in a sentence, or null
 */
export async function writeJobFile(
  job: Job,
  store: Pick<PhotoStore, 'get'>,
): Promise<{ text: string; said: string | null }> {
  const bytes = new Map<string, Uint8Array>();
  const photos = withUsedPhotos(job).photos ?? [];
  for (const { id } of photos) {
    const kept = await store.get(id);
    if (kept) bytes.set(id, new Uint8Array(await kept.bytes.arrayBuffer()));
  }
  const text = writeJob(withPhotoData(job, (id) => bytes.get(id)));
  if (text.length > longestFile) {
    const says = `The file is saved without its photos: with them it would be longer than ${longestFile / 1e6} MB.`;
    return { text: writeJob(withUsedPhotos(job)), said: says };
  }
  const missing = photos.filter(({ id }) => !bytes.has(id)).map(({ name, id }) => name ?? id.slice(0, 8));
  const said =
    missing.length === 0
      ? null
      : `The file is saved without ${missing.map((name) => `“${name}”`).join(', ')}: the photo is not on this device. Load it again first.`;
  return { text, said };
}

/**
 * A job from its file. The bytes of its photos, checked by `readJob`, are put beside it.
 *
 * @returns `said`: why a photo may be lost when the page is left, in a sentence, or null
 */
export async function readJobFile(
  text: string,
  store: Pick<PhotoStore, 'put'>,
): Promise<ReadJob & { said: string | null }> {
  const read = readJob(text);
  if (!read.job) return { ...read, said: null };
  const { job, bytes } = takeOutPhotoData(read.job);
  let said: string | null = null;
  for (const { id, type } of job.photos ?? []) {
    const own = bytes.get(id);
    if (!own) continue;
    try {
      await store.put(new Blob([own], { type }));
    } catch (reason) {
      said = notKept(reason);
    }
  }
  return { ...read, job, said };
}

/** What is told where the browser has no room for a photo. */
export function notKept(reason: unknown): string {
  const why = reason instanceof Error && reason.message ? ` (${reason.message})` : '';
  return `This browser has no room for the photo${why}. It is here until the page is left; use “Save file” before.`;
}
