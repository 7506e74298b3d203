import { rectify, type Pixels } from '../../core/geometry/rectify';
import type { RectifyReply, RectifyRequest } from './rectify-protocol';

/** px: a smaller one is not worth keeping. */
const smallest = 300;

let newest = 0;
let read: { readonly photo: string; readonly pixels: Pixels } | null = null;

self.onmessage = ({ data }: MessageEvent<RectifyRequest>) => {
  newest = data.number;
  void answer(data).then(
    (reply) => {
      if (reply) self.postMessage(reply, { transfer: 'levels' in reply ? [...reply.levels] : [] });
    },
    (reason: unknown) => {
      const fault = reason instanceof Error ? reason.message : String(reason);
      self.postMessage({ number: data.number, fault } satisfies RectifyReply);
    },
  );
};

/** @returns null if something newer was asked meanwhile */
async function answer({ number, photo, bytes, toPhoto, area }: RectifyRequest): Promise<RectifyReply | null> {
  if (read?.photo !== photo) read = { photo, pixels: await pixelsOf(bytes) };
  const { pixels } = read;
  const { width, height } = area;
  const image = new ImageData(width, height);
  for (let from = 0; from < height; from += 200) {
    rectify(pixels, toPhoto, area, image, { from, to: Math.min(height, from + 200) });
    await new Promise((resume) => setTimeout(resume));
    if (number !== newest) return null;
  }
  const levels = [await createImageBitmap(image)];
  for (let half = 2; Math.max(width, height) / half >= smallest; half *= 2) {
    levels.push(
      await createImageBitmap(levels.at(-1)!, {
        resizeWidth: Math.max(1, Math.round(width / half)),
        resizeHeight: Math.max(1, Math.round(height / half)),
        resizeQuality: 'medium',
      }),
    );
  }
  return { number, levels };
}

async function pixelsOf(bytes: Blob): Promise<Pixels> {
  const bitmap = await createImageBitmap(bytes, { imageOrientation: 'from-image' });
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return context.getImageData(0, 0, canvas.width, canvas.height);
}
