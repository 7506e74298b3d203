import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../../core/job/defaults';
import { photoIdOf } from '../../../core/job/photo-bytes';
import { setWallPhoto } from '../../../core/job/photos';
import type { Job } from '../../../core/job/schema';
import { writeJob } from '../../../core/job/write';
import { PhotoStore } from '../../../web/keeping/photo-store';
import { readJobFile, writeJobFile } from '../../../web/photo/job-file';

const bytes = Uint8Array.from({ length: 5000 }, (_, i) => [0xff, 0xd8, 0xff][i] ?? i % 256);
const photo = {
  id: photoIdOf(bytes),
  type: 'image/jpeg',
  width: 40,
  height: 30,
  bytes: 5000,
  name: 'stair.jpg',
} as const;
const bare: Job = { ...emptyJob('Bindery'), walls: [newWall('A', '', 4000, 2600)] };
const job = setWallPhoto(bare, 'A', { photo: photo.id, points: [], fade: 0.3, shown: true }, photo);

describe('a job file with photos', () => {
  it('takes them from the device and gives them to another', async () => {
    const here = new PhotoStore(null);
    expect(await here.put(new Blob([bytes], { type: 'image/jpeg' }))).toBe(photo.id);
    const { text, said } = await writeJobFile(job, here);
    expect(said).toBeNull();

    const there = new PhotoStore(null);
    const read = await readJobFile(text, there);
    expect(read).toMatchObject({ job, findings: [], said: null });
    const kept = await there.get(photo.id);
    expect(new Uint8Array(await kept!.bytes.arrayBuffer())).toEqual(bytes);
    expect(kept!.type).toBe('image/jpeg');
  });

  it('says which photo is not on this device, and is saved all the same', async () => {
    const { text, said } = await writeJobFile(job, new PhotoStore(null));
    expect(said).toMatch(/without “stair\.jpg”.*Load it again/);
    expect((await readJobFile(text, new PhotoStore(null))).job).toEqual(job);
  });

  it('opens although the device has no room, and says so', async () => {
    const here = new PhotoStore(null);
    await here.put(new Blob([bytes], { type: 'image/jpeg' }));
    const { text } = await writeJobFile(job, here);
    const full = { put: () => Promise.reject(new Error('quota')) };
    const read = await readJobFile(text, full);
    expect(read.job).toEqual(job);
    expect(read.said).toMatch(/no room for the photo \(quota\).*“Save file”/);
  });

  it('puts nothing on the device if the file is bad', async () => {
    const put = () => Promise.reject(new Error('put'));
    const text = writeJob({ ...job, photos: [{ ...photo, data: 'AAAA' }] } as Job);
    const read = await readJobFile(text, { put });
    expect(read.job).toBeNull();
    expect(read.findings).toHaveLength(1);
  });
});
