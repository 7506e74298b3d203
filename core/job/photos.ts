import { changeWall } from './changes';
import { fromBase64, toBase64 } from './photo-bytes';
import type { Job, Photo, Pin, Wall, WallPhoto, Zone } from './schema';
import { findWall } from './shape';

/*
 * Pure changes of a job's photos. The job names a photo by the hash of its bytes; the bytes themselves are kept beside it
 * and enter it only when it is written to a file.
 */

export function findPhoto(job: Job, id: string): Photo | undefined {
  return job.photos?.find((photo) => photo.id === id);
}

/** @param photo undefined takes the photo away from under the drawing */
export function setWallPhoto(job: Job, wallId: string, wallPhoto: WallPhoto | undefined, photo?: Photo): Job {
  return changeWall(withPhoto(job, photo), wallId, (wall) => {
    const { photo: _, ...rest } = wall;
    return (wallPhoto ? { ...rest, photo: wallPhoto } : rest) as Wall;
  });
}

export function changeWallPhoto(job: Job, wallId: string, patch: Partial<WallPhoto>): Job {
  return changeWall(job, wallId, (wall) =>
    wall.photo ? { ...wall, photo: { ...wall.photo, ...patch } as WallPhoto } : wall,
  );
}

export function addPin(job: Job, wallId: string, pin: Pin, photo: Photo): Job {
  return changeWall(withPhoto(job, photo), wallId, (wall) => ({
    ...wall,
    pins: [...(wall.pins ?? []), pin],
  }));
}

export function changePin(job: Job, wallId: string, id: string, patch: Partial<Pin>): Job {
  return changeWall(job, wallId, (wall) => ({
    ...wall,
    pins: (wall.pins ?? []).map((pin) => (pin.id === id ? ({ ...pin, ...patch } as Pin) : pin)),
  }));
}

export function removePin(job: Job, wallId: string, id: string): Job {
  return changeWall(job, wallId, (wall) => {
    const pins = (wall.pins ?? []).filter((pin) => pin.id !== id);
    const { pins: _, ...rest } = wall;
    return (pins.length > 0 ? { ...rest, pins } : rest) as Wall;
  });
}

export function freshPinId(job: Job, wallId: string): string {
  const taken = new Set((findWall(job, wallId)?.pins ?? []).map(({ id }) => id));
  for (let number = 1; ; number++) if (!taken.has(`P${number}`)) return `P${number}`;
}

/** Pictures that are markings of zones, in every alternative. A frozen record may hold anything, or lack lists. */
export function picturesOf({ walls, alternatives }: Partial<Job>): Set<string> {
  const zones = [
    ...listOf(walls).flatMap((wall) => listOf(wall?.zones)),
    ...listOf(alternatives).flatMap((one) => Object.values(one?.zones ?? {}).flatMap(listOf<Zone>)),
  ];
  const photos = zones.flatMap((zone) => listOf(zone?.markings).map((marking) => marking?.photo));
  return new Set(photos.filter((id) => typeof id === 'string'));
}

/** The job without photos that nothing shows; itself if there are none. */
export function withUsedPhotos(job: Job): Job {
  if (!job.photos) return job;
  const used = new Set([
    ...job.walls.flatMap(({ photo, pins = [] }) => [
      ...(photo ? [photo.photo] : []),
      ...pins.map((pin) => pin.photo),
    ]),
    ...picturesOf(job),
    // What was issued is printed again from its record, pictures on its zones too.
    ...job.revisions.flatMap((revision) => picturesOf((revision.job ?? {}) as Partial<Job>)),
  ]);
  const photos = job.photos.filter(({ id }) => used.has(id));
  if (photos.length === job.photos.length) return job;
  const { photos: _, ...rest } = job;
  return (photos.length > 0 ? { ...rest, photos } : rest) as Job;
}

/** A job as its file has it: with the bytes of the photos that it shows, as far as they are at hand. */
export function withPhotoData(job: Job, bytesOf: (id: string) => Uint8Array | undefined): Job {
  const used = withUsedPhotos(job);
  if (!used.photos) return used;
  const photos = used.photos.map((photo) => {
    const bytes = bytesOf(photo.id);
    return bytes ? { ...photo, bytes: bytes.length, data: toBase64(bytes) } : photo;
  });
  return { ...used, photos };
}

/** A job that was read from a file, without the bytes of its photos, and these by their ids. */
export function takeOutPhotoData(job: Job): {
  job: Job;
  bytes: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
} {
  const bytes = new Map<string, Uint8Array<ArrayBuffer>>();
  if (!job.photos) return { job, bytes };
  const photos = job.photos.map((photo) => {
    const { data, ...rest } = photo;
    const own = data === undefined ? null : fromBase64(data);
    if (!own) return rest as Photo;
    bytes.set(photo.id, own);
    return { ...rest, bytes: own.length } as Photo;
  });
  return { job: { ...job, photos }, bytes };
}

/** The job with a photo that it may have already. */
export function withPhoto(job: Job, photo: Photo | undefined): Job {
  if (!photo || findPhoto(job, photo.id)) return job;
  return { ...job, photos: [...(job.photos ?? []), photo] };
}

function listOf<T>(value: readonly T[] | undefined): readonly T[] {
  return Array.isArray(value) ? (value as readonly T[]) : [];
}
