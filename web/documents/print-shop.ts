import type { DrawnBudget } from '../../core/drawings/budget-sheet';
import type { LodeplanDocument } from '../../core/drawings/page';
import type { Pictures } from '../../core/drawings/pictures';
import type { WorkedOut } from '../../core/worked-out';
import type { DrawnBeside, MadeFile, PrintAnswer, PrintOrder, PrintProgress } from './print-orders';

/** Said in place of an answer by an order that was stopped. */
export class PrintStopped extends Error {}

type Unnumbered<T> = T extends unknown ? Omit<T, 'order'> : never;

/** Draws and prints in a worker that starts with the first order, or before it. */
export class PrintShop {
  #worker: Worker | undefined;
  #orders = 0;
  readonly #waiting = new Map<number, (answer: PrintAnswer | PrintStopped) => void>();
  #told: ((progress: PrintProgress) => void) | undefined;

  /** Fetches all that is needed, so that an order still works if the network is gone by then. */
  makeReady(): void {
    this.#worker ??= this.#start();
  }

  /** The documents of a worked-out job: of this very plan, not of another one. */
  async compose(
    worked: WorkedOut,
    beside: DrawnBeside,
    pictures: Pictures,
  ): Promise<readonly LodeplanDocument[]> {
    const answer = await this.#ask({ kind: 'compose', worked, beside, pictures });
    return 'documents' in answer ? answer.documents : [];
  }

  /** A budget price of each way to build up a wall, on one page. */
  async drawBudget(budgets: readonly DrawnBudget[]): Promise<LodeplanDocument> {
    const answer = await this.#ask({ kind: 'budget', budgets });
    return 'documents' in answer ? answer.documents[0]! : { name: '', title: '', pages: [] };
  }

  /** The check of one item alone; undefined if it no longer hangs there. */
  async drawHoldingCheck(
    worked: WorkedOut,
    wall: string,
    item: string,
  ): Promise<LodeplanDocument | undefined> {
    const answer = await this.#ask({ kind: 'holding-check', worked, wall, item });
    return 'documents' in answer ? answer.documents[0] : undefined;
  }

  /** Drawings at true size as DXF and SVG, the lists as a workbook, and all of these in one ZIP, which comes last. */
  async makeForWorkshop(worked: WorkedOut): Promise<readonly MadeFile[]> {
    const answer = await this.#ask({ kind: 'workshop', worked });
    return 'files' in answer ? answer.files : [];
  }

  /** @param day written into the file; the same document and day give the same bytes */
  async print(document: LodeplanDocument, day: Date, pictures: Pictures): Promise<Blob> {
    const answer = await this.#ask({ kind: 'print', document, day, pictures });
    return new Blob('pdf' in answer ? [answer.pdf] : [], { type: 'application/pdf' });
  }

  /**
   * @param told how many pages of how many are written
   * @throws PrintStopped after `stop`
   */
  async bind(
    worked: WorkedOut,
    documents: readonly LodeplanDocument[],
    day: Date,
    pictures: Pictures,
    told: (progress: PrintProgress) => void,
  ): Promise<Blob> {
    this.#told = told;
    try {
      const answer = await this.#ask({ kind: 'bind', worked, documents, day, pictures });
      return new Blob('pdf' in answer ? [answer.pdf] : [], { type: 'application/pdf' });
    } finally {
      this.#told = undefined;
    }
  }

  /** Gives up every order at once; the next one starts a worker anew. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const settle of waiting) settle(new PrintStopped('stopped'));
  }

  /** @throws Error with the worker's words for what went wrong */
  async #ask(asked: Unnumbered<PrintOrder>): Promise<PrintAnswer> {
    const order = ++this.#orders;
    const worker = (this.#worker ??= this.#start());
    const answer = await new Promise<PrintAnswer | PrintStopped>((settle) => {
      this.#waiting.set(order, settle);
      worker.postMessage({ ...asked, order });
    });
    if (answer instanceof PrintStopped) throw answer;
    if ('fault' in answer) throw new Error(answer.fault);
    return answer;
  }

  #start(): Worker {
    const worker = new Worker(new URL('./documents.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PrintAnswer | PrintProgress>) => {
      if ('wrote' in data) return this.#told?.(data);
      this.#waiting.get(data.order)?.(data);
      this.#waiting.delete(data.order);
    };
    worker.onerror = (event) => {
      for (const [order, settle] of this.#waiting)
        settle({ order, fault: event.message || 'their part of the program could not be loaded' });
      this.#waiting.clear();
      this.#worker = undefined;
    };
    return worker;
  }
}
