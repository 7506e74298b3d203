import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { mostPhotoBytes } from '../../core/job/limits';
import { fromBase64, photoIdOf, photoTypeOf, toBase64 } from '../../core/job/photo-bytes';
import {
  addPin,
  changePin,
  freshPinId,
  removePin,
  setWallPhoto,
  takeOutPhotoData,
  withPhotoData,
  withUsedPhotos,
} from '../../core/job/photos';
import { readJob } from '../../core/job/read';
import type { Job, Photo } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';

/** The first bytes of a JPEG, and as many others as asked for. */
const jpeg = (length: number, seed = 1) =>
  Uint8Array.from({ length }, (_, i) => [0xff, 0xd8, 0xff][i] ?? (i * 31 * seed) % 251);
const photoOf = (bytes: Uint8Array): Photo => ({
  id: photoIdOf(bytes),
  type: 'image/jpeg',
  width: 400,
  height: 300,
  bytes: bytes.length,
});
const bare: Job = { ...emptyJob('Bindery'), walls: [newWall('A', '', 4000, 2600)] };
const bytes = jpeg(70_000);
const photo = photoOf(bytes);
const underDrawing = (job: Job, one = photo) =>
  setWallPhoto(job, 'A', { photo: one.id, points: [], fade: 0.3, shown: true }, one);

describe('bytes of a photo', () => {
  it('are named by their SHA-256 (FIPS 180-4, the value of "abc"; else by the runtime’s own)', () => {
    expect(photoIdOf(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    expect(photo.id).toBe(createHash('sha256').update(bytes).digest('hex'));
  });

  it('become base64 and back, as the runtime writes it', () => {
    expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    expect(fromBase64(toBase64(bytes))).toEqual(bytes);
    expect(fromBase64('§§')).toBeNull();
  });

  it('tell their type by their signature', () => {
    expect(photoTypeOf(bytes)).toBe('image/jpeg');
    expect(photoTypeOf(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a))).toBe('image/png');
    expect(photoTypeOf(new TextEncoder().encode('RIFF1234WEBPVP8 '))).toBe('image/webp');
    expect(photoTypeOf(new TextEncoder().encode('GIF89a'))).toBeNull();
    expect(photoTypeOf(new Uint8Array())).toBeNull();
  });
});

describe('a job with photos', () => {
  it('without photos has no field of them, before and after', () => {
    const file = writeJob(bare);
    expect(file).not.toMatch(/photo|pin/);
    expect(withUsedPhotos(setWallPhoto(underDrawing(bare), 'A', undefined))).toEqual(bare);
  });

  it('has the bytes in its file only, and gives them back', () => {
    const job = underDrawing(bare);
    expect(writeJob(job)).not.toContain('data');
    const file = writeJob(withPhotoData(job, (id) => (id === photo.id ? bytes : undefined)));
    const read = readJob(file);
    expect(read.findings).toEqual([]);
    const taken = takeOutPhotoData(read.job!);
    expect(taken.job).toEqual(job);
    expect([...taken.bytes]).toEqual([[photo.id, bytes]]);
  });

  it('shares one photo between pins and the drawing, and drops it with the last of them', () => {
    const pin = { id: freshPinId(bare, 'A'), photo: photo.id, at: [100, 200] as [number, number] };
    let job = addPin(underDrawing(bare), 'A', { ...pin, date: '2026-11-27', note: 'crack' }, photo);
    expect(job.photos).toHaveLength(1);
    expect(freshPinId(job, 'A')).toBe('P2');
    job = changePin(job, 'A', 'P1', { note: 'hairline crack' });
    expect(job.walls[0]!.pins).toEqual([{ ...pin, date: '2026-11-27', note: 'hairline crack' }]);
    job = withUsedPhotos(setWallPhoto(job, 'A', undefined));
    expect(job.photos).toHaveLength(1);
    expect(withUsedPhotos(removePin(job, 'A', 'P1'))).toEqual(bare);
  });
});

describe('bad photos in a file: one sentence each, nothing is opened', () => {
  const fileWith = (patch: Partial<Photo>, job = underDrawing(bare)) =>
    writeJob({ ...job, photos: [{ ...photo, data: toBase64(bytes), ...patch } as Photo] });
  it.each([
    ['no base64', fileWith({ data: '§§§' }), /photos\[0\]\.data is no base64; take/],
    ['damaged', fileWith({ data: toBase64(jpeg(70_000, 2)) }), /is not the photo that its id names/],
    ['of another type', fileWith({ type: 'image/png' }), /photos\[0\]\.data is no PNG;/],
    ['too large', fileWith({ data: 'A'.repeat(12_000_000) }), /is larger than 8 MB; load/],
    ['an id that is no hash', fileWith({ id: 'P' }), /photos\[0\]\.id .*64 figures from 0 to f/],
    ['an unknown type', fileWith({ type: 'image/gif' as 'image/png' }), /image\/jpeg" or "image\/png" or/],
    ['no size', fileWith({ width: 0 }), /photos\[0\]\.width is 0; give at least 1/],
    ['not there', writeJob({ ...underDrawing(bare), photos: [] }), /wall A.* but the job has no such photo/],
    [
      'twice',
      writeJob({ ...underDrawing(bare), photos: [photo, photo] }),
      /photos\[1\]\.id is .* which photos\[0\]\.id has already/,
    ],
    [
      'too many together',
      writeJob({
        ...underDrawing(bare),
        photos: Array.from({ length: 1 + mostPhotoBytes / 8e6 }, (_, i) => ({
          ...photo,
          id: i === 0 ? photo.id : photoIdOf(jpeg(100 + i)),
          bytes: 8e6,
        })),
      }),
      /photos are 48 MB together; 40 MB are the most/,
    ],
  ])('%s', (_, file, words) => {
    const { job, findings } = readJob(file);
    expect(job).toBeNull();
    expect(findings).toHaveLength(1);
    expect(findings[0]!.text).toMatch(words);
  });
});
