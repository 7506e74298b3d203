import { findPhoto } from '../../core/job/photos';
import type { Job } from '../../core/job/schema';
import type { Pictures } from '../../core/drawings/pictures';
import { readSvg, type SvgPicture } from '../../core/svg/read-svg';
import type { PhotoStore } from '../keeping/photo-store';

/** A picture as the drawing shows it: of pixels, of lines, or missing on this device. */
export type ShownPicture =
  | { readonly kind: 'pixels'; readonly bitmap: ImageBitmap }
  | { readonly kind: 'lines'; readonly lines: SvgPicture }
  | { readonly kind: 'missing' };

/**
 * Pictures that markings show, fetched from where the device keeps photos when they are first asked for. A picture of lines
 * is read here and never given to the browser: nothing in it can run or fetch anything.
 */
export class MarkingPictures {
  readonly #store: PhotoStore;
  #shown = $state.raw<ReadonlyMap<string, ShownPicture>>(new Map());
  readonly #asked = new Set<string>();
  readonly #addresses = new Map<string, string>();

  constructor(store: PhotoStore) {
    this.#store = store;
  }

  /** undefined while it is being fetched; whoever asks in an effect is told when it is there. */
  shown(id: string): ShownPicture | undefined {
    const known = this.#shown.get(id);
    if (!known && !this.#asked.has(id)) {
      this.#asked.add(id);
      void this.#fetch(id);
    }
    return known;
  }

  /** A picture that was just put into the store, or could not be found before. */
  forget(id: string): void {
    this.#asked.delete(id);
    this.#shown = new Map([...this.#shown].filter(([key]) => key !== id));
  }

  /** Of a picture of pixels, once it has been printed: where the browser shows it from. */
  addressOf(id: string): string | null {
    return this.#addresses.get(id) ?? null;
  }

  /** The bytes of those that a job shows, as the printer takes them: PNG, JPEG or SVG. */
  async forPrinting(job: Job, ids: Iterable<string>): Promise<Pictures> {
    const pictures = new Map<
      string,
      { type: NonNullable<ReturnType<typeof findPhoto>>['type']; bytes: Uint8Array }
    >();
    for (const id of ids) {
      const kept = await this.#store.get(id).catch(() => undefined);
      const photo = findPhoto(job, id);
      if (!kept || !photo) continue;
      const isWebp = photo.type === 'image/webp';
      const blob = isWebp ? await asPng(kept.bytes).catch(() => null) : kept.bytes;
      if (!blob) continue;
      const type = isWebp ? 'image/png' : photo.type;
      pictures.set(id, { type, bytes: new Uint8Array(await blob.arrayBuffer()) });
      if (type !== 'image/svg+xml' && !this.#addresses.has(id))
        this.#addresses.set(id, URL.createObjectURL(new Blob([blob], { type })));
    }
    return pictures;
  }

  async #fetch(id: string): Promise<void> {
    const picture = await this.#read(id).catch((): ShownPicture => ({ kind: 'missing' }));
    this.#shown = new Map([...this.#shown, [id, picture]]);
  }

  async #read(id: string): Promise<ShownPicture> {
    const kept = await this.#store.get(id);
    if (!kept) return { kind: 'missing' };
    if (kept.type !== 'image/svg+xml') return { kind: 'pixels', bitmap: await createImageBitmap(kept.bytes) };
    const lines = readSvg(new Uint8Array(await kept.bytes.arrayBuffer()));
    return 'fault' in lines ? { kind: 'missing' } : { kind: 'lines', lines };
  }
}

async function asPng(bytes: Blob): Promise<Blob> {
  const bitmap = await createImageBitmap(bytes);
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
  bitmap.close();
  return canvas.convertToBlob({ type: 'image/png' });
}
