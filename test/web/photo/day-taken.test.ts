import { describe, expect, it } from 'vitest';
import { dayTaken } from '../../../web/photo/day-taken';

/** A JPEG of nothing but an Exif segment with DateTimeOriginal (Exif 2.32, tag 0x9003; TIFF 6.0). */
function jpegOf(date: string): ArrayBuffer {
  const text = Buffer.from(`${date}\0`, 'ascii');
  const tiff = Buffer.alloc(44 + text.length);
  tiff.write('II', 0);
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(1, 8);
  const entry = (at: number, tag: number, kind: number, count: number, value: number) => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(kind, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(10, 0x8769, 4, 1, 26);
  tiff.writeUInt16LE(1, 26);
  entry(28, 0x9003, 2, text.length, 44);
  text.copy(tiff, 44);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'ascii'), tiff]);
  const head = Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 4);
  const bytes = Buffer.concat([head, body, Buffer.from([0xff, 0xd9])]);
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer;
}

describe('the day a photo was taken, by its Exif data', () => {
  it.each([
    ['2026:11:20 10:15:00', '2026-11-20'],
    ['2024:02:29 23:59:59', '2024-02-29'],
    ['2023:02:29 12:00:00', undefined],
    ['0000:00:00 00:00:00', undefined],
    ['    :  :     :  :  ', undefined],
    ['yesterday', undefined],
  ])('%s', async (written, day) => {
    expect(await dayTaken(jpegOf(written))).toBe(day);
  });

  it('is unknown where there are none, or broken ones', async () => {
    expect(await dayTaken(new ArrayBuffer(0))).toBeUndefined();
    expect(await dayTaken(Uint8Array.of(0xff, 0xd8, 0xff, 0xe1, 0xff, 0xff, 69, 120).buffer)).toBeUndefined();
  });
});
