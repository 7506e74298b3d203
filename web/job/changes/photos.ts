import {
  addPin,
  changePin,
  changeWallPhoto,
  freshPinId,
  removePin,
  setWallPhoto,
  withUsedPhotos,
} from '../../../core/job/photos';
import type { Job, Photo, PhotoPoint, Pin, WallPhoto } from '../../../core/job/schema';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

export function putPhotoUnder(wallId: string, photo: Photo): NamedChange {
  return {
    name: `Put a photo under ${nameOfWall(wallId)}`,
    change: (job) =>
      withUsedPhotos(
        setWallPhoto(job, wallId, { photo: photo.id, points: [], fade: 0.3, shown: true }, photo),
      ),
  };
}

export function markPhoto(wallId: string, points: readonly PhotoPoint[]): NamedChange {
  return {
    name: `Mark the photo of ${nameOfWall(wallId)}`,
    change: (job) => changeWallPhoto(job, wallId, { points: [...points], shown: true }),
  };
}

export function showPhoto(wallId: string, shown: boolean): NamedChange {
  return {
    name: `${shown ? 'Show' : 'Hide'} the photo of ${nameOfWall(wallId)}`,
    change: (job) => changeWallPhoto(job, wallId, { shown }),
  };
}

export function fadePhoto(wallId: string, fade: WallPhoto['fade']): NamedChange {
  return {
    name: `Fade the photo of ${nameOfWall(wallId)}`,
    change: (job) => changeWallPhoto(job, wallId, { fade }),
  };
}

export function takeOutPhoto(wallId: string): NamedChange {
  return {
    name: `Take out the photo of ${nameOfWall(wallId)}`,
    change: (job) => withUsedPhotos(setWallPhoto(job, wallId, undefined)),
  };
}

export function putInPin(job: Job, wallId: string, pin: Omit<Pin, 'id'>, photo: Photo): NamedChange {
  const id = freshPinId(job, wallId);
  return {
    name: `Put in pinned photo ${id}`,
    change: (now) => addPin(now, wallId, { ...pin, id } as Pin, photo),
  };
}

export function setPin(wallId: string, id: string, patch: Partial<Pin>): NamedChange {
  return { name: `Change pinned photo ${id}`, change: (job) => changePin(job, wallId, id, patch) };
}

export function takeOutPin(wallId: string, id: string): NamedChange {
  return {
    name: `Delete pinned photo ${id}`,
    change: (job) => withUsedPhotos(removePin(job, wallId, id)),
  };
}
