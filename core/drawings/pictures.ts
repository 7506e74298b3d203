import { fromBase64 } from '../job/photo-bytes';
import { picturesOf } from '../job/photos';
import type { Job, Photo } from '../job/schema';

/** The bytes of pictures that markings show, by the ids that the job has for them. */
export type Pictures = ReadonlyMap<string, { readonly type: Photo['type']; readonly bytes: Uint8Array }>;

export const noPictures: Pictures = new Map();

/** Those whose bytes stand in the job itself, as in a file. */
export function picturesInFile(job: Job): Pictures {
  const shown = picturesOf(job);
  return new Map(
    (job.photos ?? []).flatMap(({ id, type, data }) => {
      const bytes = shown.has(id) && data !== undefined ? fromBase64(data) : null;
      return bytes ? [[id, { type, bytes }] as const] : [];
    }),
  );
}
