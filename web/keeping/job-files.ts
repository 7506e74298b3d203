import type { KeptFile } from './kept';
import type { JobStore } from './store';

/** Which file on disk each job goes to. */
export class JobFiles {
  readonly #known = new Map<string, KeptFile>();
  readonly #store: () => JobStore | null;

  constructor(store: () => JobStore | null) {
    this.#store = store;
  }

  async of(id: string): Promise<KeptFile | undefined> {
    return this.#known.get(id) ?? (await this.#store()?.file(id));
  }

  /** Some browsers give files that they cannot keep; then it is known until the page is left. */
  async remember(id: string, file: KeptFile): Promise<void> {
    this.#known.set(id, file);
    await this.#store()
      ?.putFile(id, file)
      .catch(() => undefined);
  }
}
