import type { Finding } from '../finding';
import { largestPhoto, mostPhotoBytes } from './limits';
import { fromBase64, photoIdOf, photoTypeOf } from './photo-bytes';
import { readSvg } from '../svg/read-svg';
import { refusal, shown, type Path } from './place';
import type { Job, Photo } from './schema';
import { zoneListsOf } from './zone-lists';

/**
 * Walls, pins and markings show photos that the job has, walls and pins no pictures of lines; bytes in a file are a photo,
 * whole, of a bearable size.
 */
export function checkPhotos(job: Job): Finding[] {
  const photos = job.photos ?? [];
  const types = new Map(photos.map(({ id, type }) => [id, type]));
  const check = (path: Path, id: string, ofLines = false): Finding[] => {
    const type = types.get(id);
    if (type === undefined)
      return [
        refusal(job, path, 'unknown-photo', `is ${shown(id)}, but the job has no such photo; take it out.`),
      ];
    if (type !== svgType || ofLines) return [];
    return [
      refusal(job, path, 'bad-photo', 'is a picture of lines (SVG) and no photo; load a photo instead.'),
    ];
  };
  return [
    ...photos.flatMap((photo, i) => checkData(job, photo, ['photos', i, 'data'])),
    ...checkTotal(job, photos),
    ...job.walls.flatMap((wall, w) => [
      ...(wall.photo ? check(['walls', w, 'photo', 'photo'], wall.photo.photo) : []),
      ...(wall.pins ?? []).flatMap((pin, i) => check(['walls', w, 'pins', i, 'photo'], pin.photo)),
    ]),
    ...zoneListsOf(job).flatMap(({ zones, path }) =>
      zones.flatMap(({ markings = [] }, z) =>
        markings.flatMap(({ photo }, m) =>
          photo === undefined ? [] : check([...path, z, 'markings', m, 'photo'], photo, true),
        ),
      ),
    ),
  ];
}

function checkData(job: Job, { id, type, data }: Photo, path: Path): Finding[] {
  if (data === undefined) return [];
  const refuse = (says: string) => [refusal(job, path, 'bad-photo', says)];
  if (data.length > largestPhoto * 1.4) return refuse(tooLarge);
  const bytes = fromBase64(data);
  if (!bytes) return refuse('is no base64; take this photo out, and load it again in the job.');
  if (bytes.length > largestPhoto) return refuse(tooLarge);
  if (photoTypeOf(bytes) !== type) {
    const name = type === svgType ? 'SVG' : type.slice(6).toUpperCase();
    return refuse(`is no ${name}; take this photo out, and load it again in the job.`);
  }
  if (photoIdOf(bytes) !== id)
    return refuse(
      'is not the photo that its id names, so it was damaged; take it out, and load it again in the job.',
    );
  const read = type === svgType ? readSvg(bytes) : null;
  if (read && 'fault' in read) return refuse(`${read.fault}; take it out, and load it again in the job.`);
  return [];
}

const svgType = 'image/svg+xml';
const tooLarge = `is larger than ${largestPhoto / 1e6} MB; load the photo again in the job, which makes it smaller.`;

function checkTotal(job: Job, photos: readonly Photo[]): Finding[] {
  const total = photos.reduce((sum, { bytes, data }) => sum + (bytes ?? ((data?.length ?? 0) * 3) / 4), 0);
  if (total <= mostPhotoBytes) return [];
  const says = `are ${Math.ceil(total / 1e6)} MB together; ${mostPhotoBytes / 1e6} MB are the most, so take a photo out first.`;
  return [refusal(job, ['photos'], 'photos-too-large', says)];
}
