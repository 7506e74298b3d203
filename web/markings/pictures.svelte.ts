import type { Job } from '../../core/job/schema';
import type { Pictures } from '../../core/drawings/pictures';
import { readSvg, type SvgPicture } from '../../core/svg/read-svg';
import type { PhotoStore } from '../keeping/photo-store';
import { picturesToPrint } from './pictures-to-print';

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
  #shown = $state.raw<Readonly<Record<string, ShownPicture>>>({});
  #asked: Readonly<Record<string, true>> = {};
  #addresses: Readonly<Record<string, string>> = {};

  constructor(store: PhotoStore) {
    this.#store = store;
  }

  /** undefined while it is being fetched; whoever asks in an effect is told when it is there. */
  shown(id: string): ShownPicture | undefined {
    const known = this.#shown[id];
    if (!known && !this.#asked[id]) {
      this.#asked = { ...this.#asked, [id]: true };
      void this.#fetch(id);
    }
    return known;
  }

  /** It was just put into the store: if it could not be found before, it can be now. */
  forget(id: string): void {
    const { [id]: _asked, ...asked } = this.#asked;
    const { [id]: _shown, ...shown } = this.#shown;
    this.#asked = asked;
    this.#shown = shown;
  }

  /** Of a picture of pixels, once it has been printed: where the browser shows it from. */
  addressOf(id: string): string | null {
    return this.#addresses[id] ?? null;
  }

  /** The bytes of those that a job shows, as the printer takes them: PNG, JPEG or SVG. */
  async forPrinting(job: Job, ids: Iterable<string>): Promise<Pictures> {
    const pictures = await picturesToPrint(job, ids, this.#store);
    for (const [id, { type, bytes }] of pictures) {
      if (type === 'image/svg+xml' || this.#addresses[id]) continue;
      const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
      this.#addresses = { ...this.#addresses, [id]: address };
    }
    return pictures;
  }

  async #fetch(id: string): Promise<void> {
    const picture = await this.#read(id).catch((): ShownPicture => ({ kind: 'missing' }));
    this.#shown = { ...this.#shown, [id]: picture };
  }

  async #read(id: string): Promise<ShownPicture> {
    const kept = await this.#store.get(id);
    if (!kept) return { kind: 'missing' };
    if (kept.type !== 'image/svg+xml') return { kind: 'pixels', bitmap: await createImageBitmap(kept.bytes) };
    const lines = readSvg(new Uint8Array(await kept.bytes.arrayBuffer()));
    return 'fault' in lines ? { kind: 'missing' } : { kind: 'lines', lines };
  }
}
