import type { RectifiedArea } from '../../core/geometry/rectify';
import type { RectifyReply, RectifyRequest } from './rectify-protocol';
import { startRectifier } from './start-rectifier';

/** A photo seen square-on. */
export interface Picture {
  readonly area: RectifiedArea;
  /** The first with all pixels of `area`, each next half as fine. */
  readonly levels: readonly ImageBitmap[];
}

export type Wanted = Omit<RectifyRequest, 'number' | 'bytes'>;

/** As many as someone goes back and forth between; each takes tens of megabytes. */
const mostKept = 3;

/** The pictures that a worker makes of photos, the newest request first. */
export class Rectified {
  /** Of what was asked for last, once it is there. */
  picture = $state.raw<Picture | null>(null);
  /** Why there is none, in words. */
  fault = $state.raw<string | null>(null);

  readonly #bytesOf: (photo: string) => Promise<Blob | undefined>;
  #kept: readonly { readonly key: string; readonly picture: Picture }[] = [];
  #worker: Worker | null = null;
  #number = 0;
  #asked: { readonly key: string; readonly area: RectifiedArea } | null = null;

  constructor(bytesOf: (photo: string) => Promise<Blob | undefined>) {
    this.#bytesOf = bytesOf;
  }

  show(wanted: Wanted | null): void {
    const key = wanted && JSON.stringify(wanted);
    if (key === (this.#asked?.key ?? null)) return;
    const number = ++this.#number;
    this.fault = null;
    this.#asked = wanted && key ? { key, area: wanted.area } : null;
    this.picture = this.#kept.find((one) => one.key === key)?.picture ?? null;
    if (wanted && !this.picture) void this.#ask(wanted, number);
  }

  async #ask(wanted: Wanted, number: number): Promise<void> {
    const bytes = await this.#bytesOf(wanted.photo).catch(() => undefined);
    if (number !== this.#number) return;
    if (!bytes) {
      this.fault =
        'This photo is not on this device: open the file that it was saved in, or load the photo again.';
      return;
    }
    this.#worker ??= this.#startWorker();
    this.#worker.postMessage({ ...wanted, number, bytes } satisfies RectifyRequest);
  }

  #startWorker(): Worker {
    const worker = startRectifier();
    worker.onmessage = ({ data }: MessageEvent<RectifyReply>) => {
      const asked = this.#asked;
      if (data.number !== this.#number || !asked) return;
      if ('fault' in data) {
        this.fault = `The photo cannot be rectified (${data.fault}); load it again.`;
        return;
      }
      this.picture = { area: asked.area, levels: data.levels };
      this.#kept = [...this.#kept.slice(1 - mostKept), { key: asked.key, picture: this.picture }];
    };
    return worker;
  }
}
