import { expect, type Locator, type Page } from '@playwright/test';
import { elevation } from './wall-points';

/*
 * A photo of a wall of 4200 × 2600 with a door, drawn in the page as a camera of known place sees it, so that it is
 * known where everything must come to lie.
 */

/** A pinhole camera before a wall of 4200 × 2600: focal length 2100 px, 2400 × 1800 px, turned to the left and tilted. */
const size = { width: 2400, height: 1800 };
export function seen(x: number, y: number): { x: number; y: number } {
  const [a, b, c] = [x - 2600, 1500 - y, 4600];
  const [pan, tilt] = [-0.12, 0.06];
  const [a1, c1] = [a * Math.cos(pan) - c * Math.sin(pan), a * Math.sin(pan) + c * Math.cos(pan)];
  const [b2, c2] = [b * Math.cos(tilt) - c1 * Math.sin(tilt), b * Math.sin(tilt) + c1 * Math.cos(tilt)];
  return { x: 1200 + (2100 * a1) / c2, y: 900 + (2100 * b2) / c2 };
}

export const rectangle = (x: number, y: number, width: number, height: number) => [
  seen(x, y),
  seen(x + width, y),
  seen(x + width, y + height),
  seen(x, y + height),
];
export const door = { x: 300, y: 0, width: 926, height: 2040 };
/** A red square of 60 mm, its middle at (3200, 1700). */
const mark = { x: 3170, y: 1670, width: 60, height: 60 };

/** The wall as this camera sees it, drawn in the page. `turned`: on its side, with the Exif orientation that says so. */
export async function drawPhoto(page: Page, { type = 'image/jpeg', turned = false } = {}): Promise<Buffer> {
  const shapes = [
    { points: rectangle(0, 0, 4200, 2600), fill: '#d8d2c2' },
    { points: rectangle(door.x, door.y, door.width, door.height), fill: '#6b7d6a' },
    { points: rectangle(mark.x, mark.y, mark.width, mark.height), fill: '#e00000' },
  ];
  const bytes = await page.evaluate(
    async ({ shapes, size, type, turned }) => {
      const canvas = document.createElement('canvas');
      canvas.width = turned ? size.height : size.width;
      canvas.height = turned ? size.width : size.height;
      const context = canvas.getContext('2d')!;
      // Orientation 6: the file lies on its left side, to be turned a quarter clockwise.
      if (turned) context.setTransform(0, -1, 1, 0, 0, size.width);
      context.fillStyle = '#90a0a8';
      context.fillRect(0, 0, size.width, size.height);
      for (const { points, fill } of shapes) {
        context.beginPath();
        for (const { x, y } of points) context.lineTo(x, y);
        context.fillStyle = fill;
        context.fill();
      }
      const blob = await new Promise<Blob>((done) => canvas.toBlob((made) => done(made!), type, 0.95));
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    { shapes, size, type, turned },
  );
  return turned ? withExif(Buffer.from(bytes)) : Buffer.from(bytes);
}

/** Puts an Exif segment after a JPEG's first marker: orientation 6 and the day it was taken (TIFF 6.0, Exif 2.32). */
function withExif(jpeg: Buffer): Buffer {
  const day = Buffer.from('2026:11:20 10:15:00\0', 'ascii');
  const tiff = Buffer.alloc(26 + 12 + 4 + 18 + day.length);
  tiff.write('II', 0);
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(2, 8);
  const entry = (at: number, tag: number, kind: number, count: number, value: number) => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(kind, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(10, 0x0112, 3, 1, 6);
  entry(22, 0x8769, 4, 1, 38);
  tiff.writeUInt16LE(1, 38);
  entry(40, 0x9003, 2, day.length, 56);
  day.copy(tiff, 56);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'ascii'), tiff]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}

export async function load(
  page: Page,
  button: string,
  file: { name: string; mimeType: string; buffer: Buffer },
) {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: button, exact: true }).click();
  await (await chooser).setFiles(file);
}

/** Zooms in on a point of the photo and clicks it. */
export async function markPoint(page: Page, { x, y }: { x: number; y: number }) {
  const view = page.getByTestId('photo-view');
  const place = async () => {
    const box = (await view.boundingBox())!;
    const [scale, left, top] = await Promise.all(
      ['data-scale', 'data-x', 'data-y'].map(async (name) => Number(await view.getAttribute(name))),
    );
    return { x: box.x + left! + x * scale!, y: box.y + top! + y * scale! };
  };
  const scale = async () => Number(await view.getAttribute('data-scale'));
  await page.getByRole('button', { name: 'Fit', exact: true }).last().click();
  await expect.poll(scale).toBeLessThan(1);
  let at = await place();
  await page.mouse.move(at.x, at.y);
  await page.mouse.wheel(0, -1400);
  // A wheel is not waited for, and may be worked off in parts.
  let before = 0;
  await expect
    .poll(async () => {
      const isStill = before === (before = await scale());
      return isStill && before > 1.5;
    })
    .toBe(true);
  at = await place();
  await page.mouse.click(at.x, at.y);
}

/** Where the red square lies on the elevation, mm, from the picture on the screen. */
export async function redOnWall(drawing: Locator): Promise<{ x: number; y: number; pixels: number }> {
  return drawing.evaluate((element) => {
    const canvas = element.querySelector('canvas')!;
    const { width, height } = canvas;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, height);
    let [x, y, pixels] = [0, 0, 0];
    for (let i = 0; i < data.length; i += 4) {
      const [red, green, opacity] = [data[i]!, data[i + 1]!, data[i + 3]!];
      if (opacity < 100 || red < 150 || green > 60) continue;
      x += (i / 4) % width;
      y += Math.floor(i / 4 / width);
      pixels++;
    }
    const ratio = width / element.clientWidth;
    const { scale, originX, originY } = (element as HTMLElement).dataset;
    return {
      x: ((x / pixels + 0.5) / ratio - Number(originX)) / Number(scale),
      y: (Number(originY) - (y / pixels + 0.5) / ratio) / Number(scale),
      pixels,
    };
  });
}

export async function expectSquareOnWall(page: Page) {
  await expect.poll(async () => (await redOnWall(elevation(page))).pixels).toBeGreaterThan(30);
  const { x, y } = await redOnWall(elevation(page));
  // A pixel of the elevation is 3 to 5 mm, the middle of a square is found finer.
  expect(Math.abs(x - 3200)).toBeLessThan(3);
  expect(Math.abs(y - 1700)).toBeLessThan(3);
}

/** Gives what is marked in the photo the size and place of the door. */
export async function knowTheDoor(page: Page) {
  for (const [field, value] of [
    ['width', door.width],
    ['height', door.height],
    ['lower left, from left', door.x],
    ['lower left, from floor', door.y],
  ] as const) {
    const entry = page.getByRole('textbox', { name: `Known size, ${field}`, exact: true });
    await entry.fill(String(value));
    await entry.press('Enter');
  }
}
