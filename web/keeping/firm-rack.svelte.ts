import { nextMark, noHolders, stateOf, type FirmPiece, type Holders, type PieceState } from './firm-piece';
import { bringIn, readRack, writeRack } from './rack-file';
import { freshKey, holdersIn, type JobStore } from './store';

/**
 * The firm's rack as it lies on this device, beside the jobs. Which job holds a piece is read from the jobs that are kept
 * here; only what an issued revision booked is written on the piece itself, so that no undo touches it.
 */
export class FirmRack {
  pieces = $state.raw<readonly FirmPiece[]>([]);
  holders = $state.raw<Holders>(noHolders);

  #store: JobStore | null;
  readonly #channel = new BroadcastChannel('lodeplan-rack');
  readonly #jobs = new BroadcastChannel('lodeplan-jobs');
  #watchers = 0;
  #refreshing = false;
  #again = false;

  constructor(store: JobStore | null) {
    this.#store = store;
    // Storage that cannot be read any more is told of by the job that is kept in it; what is shown stays.
    this.#channel.onmessage = this.#jobs.onmessage = () => {
      if (this.#watchers > 0) void this.refresh().catch(() => undefined);
    };
  }

  /** The browser gives storage after all. */
  attach(store: JobStore): void {
    this.#store = store;
    if (this.#watchers > 0) void this.refresh();
  }

  /** False where the browser keeps nothing: then there is no firm's rack. */
  get isKept(): boolean {
    return this.#store !== null;
  }

  /** For whoever shows the rack: it is read now, and again whenever a tab changes it or a job. */
  readonly watch = (): (() => void) => {
    this.#watchers++;
    void this.refresh();
    return () => this.#watchers--;
  };

  stateOf(piece: FirmPiece): PieceState {
    return stateOf(piece, this.holders);
  }

  async refresh(): Promise<void> {
    if (!this.#store) return;
    this.#again = true;
    if (this.#refreshing) return;
    this.#refreshing = true;
    try {
      while (this.#again) {
        this.#again = false;
        const [pieces, heads] = [await this.#store.rack(), await this.#store.list()];
        this.pieces = [...pieces].sort((a, b) => a.id.localeCompare(b.id, 'en', { numeric: true }));
        this.holders = holdersIn(heads);
      }
    } finally {
      this.#refreshing = false;
    }
  }

  /** Where a piece stands at this very moment, in all tabs; undefined if it is gone. */
  async stateNow(key: string): Promise<PieceState | undefined> {
    let state: PieceState | undefined;
    await this.#store?.changeRack((pieces, holders) => {
      const piece = pieces.find((one) => one.key === key);
      state = piece && stateOf(piece, holders);
      return { put: [], remove: [] };
    });
    return state;
  }

  /** Puts a piece on the rack under the next mark. */
  async add(piece: Omit<FirmPiece, 'key' | 'id'>): Promise<void> {
    await this.#change((pieces) => ({
      put: [{ ...piece, key: freshKey(), id: nextMark(pieces.map(({ id }) => id)) }],
      remove: [],
    }));
  }

  /** A piece that a job has used up stays as it was. A field set to undefined is taken out. */
  async set(
    key: string,
    patch: Partial<Pick<FirmPiece, 'width' | 'height' | 'value' | 'currency'>>,
  ): Promise<void> {
    await this.#change((pieces) => {
      const piece = pieces.find((one) => one.key === key && !one.usedUp);
      const changed =
        piece &&
        Object.fromEntries(Object.entries({ ...piece, ...patch }).filter(([, value]) => value !== undefined));
      return { put: changed ? [changed as unknown as FirmPiece] : [], remove: [] };
    });
  }

  /** Takes free pieces, and those used up, off the rack for good; a reserved one stays. */
  async discard(keys: readonly string[]): Promise<void> {
    await this.#change((pieces, holders) => ({
      put: [],
      remove: pieces
        .filter(
          (piece) => keys.includes(piece.key) && ['free', 'used-up'].includes(stateOf(piece, holders).kind),
        )
        .map(({ key }) => key),
    }));
  }

  toFile(): string {
    return writeRack(this.pieces);
  }

  /** @returns what was brought in, or why nothing was, in a sentence */
  async takeFile(text: string): Promise<string> {
    const file = readRack(text);
    if ('fault' in file) return file.fault;
    let said = '';
    await this.#change((pieces) => {
      const { put, marked } = bringIn(pieces, file.pieces);
      const anew = marked.map(({ before, now }) => `${before} is now ${now}`).join(', ');
      said = [
        put.length === 0
          ? 'Every piece of this file is on the rack already.'
          : `${put.length === 1 ? '1 piece' : `${put.length} pieces`} brought in.`,
        ...(anew ? [`Write new marks on these: ${anew}.`] : []),
      ].join(' ');
      return { put, remove: [] };
    });
    return said;
  }

  tellOthers(): void {
    this.#channel.postMessage('changed');
    if (this.#watchers > 0) void this.refresh();
  }

  async #change(change: Parameters<JobStore['changeRack']>[0]): Promise<void> {
    await this.#store?.changeRack(change);
    this.#channel.postMessage('changed');
    await this.refresh();
  }
}
