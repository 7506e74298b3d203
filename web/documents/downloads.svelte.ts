import type { DrawnBudget } from '../../core/drawings/budget-sheet';
import type { LodeplanDocument } from '../../core/drawings/page';
import { noPictures, type Pictures } from '../../core/drawings/pictures';
import type { Job } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';
import { download, fileName } from './download';
import { PrintStopped, type PrintShop } from './print-shop';

/** What was composed last, and where it is said if something of it cannot be saved. */
interface Composed {
  readonly worked: WorkedOut | null;
  readonly list: readonly LodeplanDocument[] | null;
  readonly pictures: Pictures;
  fault: string | null;
}

/** Files made of the documents that are on the screen, one order at a time. */
export class Downloads {
  /** What is being made, in words, or null. */
  making = $state.raw<string | null>(null);
  /** Whether what is being made can be stopped. */
  stoppable = $state.raw(false);
  readonly #composed: Composed;
  readonly #shop: PrintShop;

  constructor(composed: Composed, shop: PrintShop) {
    this.#composed = composed;
    this.#shop = shop;
  }

  async savePdf(document: LodeplanDocument): Promise<void> {
    await this.#make('The PDF', document.title, (worked) => this.#savePdf(worked, document));
  }

  async saveEachPdf(): Promise<void> {
    await this.#make('The PDF', '', async (worked) => {
      for (const document of this.#composed.list ?? []) {
        this.making = document.title;
        await this.#savePdf(worked, document);
      }
    });
  }

  /** These documents bound to one PDF. */
  async saveSet(documents: readonly LodeplanDocument[]): Promise<void> {
    this.stoppable = true;
    await this.#make('The set', 'the set', async (worked) => {
      const { job } = worked;
      const { pictures } = this.#composed;
      const pdf = await this.#shop.bind(worked, documents, dayOf(job), pictures, ({ wrote, of }) => {
        this.making = `the set, page ${wrote} of ${of}`;
      });
      download(pdf, `${fileOf(job, 'set')}.pdf`);
    });
    this.stoppable = false;
  }

  /** Gives up what is being made; nothing of it is saved. */
  stop(): void {
    this.#shop.stop();
  }

  /** @returns what went wrong, in a sentence, or null */
  async saveBudget(budgets: readonly DrawnBudget[]): Promise<string | null> {
    const { job } = budgets[0]!;
    try {
      const sheet = await this.#shop.drawBudget(
        budgets.map(({ job, offer, inputs, walls }) => ({ job, offer, inputs, walls })),
      );
      download(await this.#shop.print(sheet, dayOf(job), noPictures), `${fileOf(job, sheet.name)}.pdf`);
      return null;
    } catch (reason) {
      return `The PDF could not be made: ${wordsOf(reason)}.`;
    }
  }

  /** The check of one item of a plan. @returns what went wrong, in a sentence, or null */
  async saveHoldingCheck(worked: WorkedOut, wall: string, item: string): Promise<string | null> {
    const { job } = worked;
    try {
      const check = await this.#shop.drawHoldingCheck(worked, wall, item);
      if (!check) return 'The check could not be printed: the item no longer hangs on this wall.';
      download(await this.#shop.print(check, dayOf(job), noPictures), `${fileOf(job, check.name)}.pdf`);
      return null;
    } catch (reason) {
      return `The PDF could not be made: ${wordsOf(reason)}.`;
    }
  }

  async saveCsv(): Promise<void> {
    await this.#make('The lists', 'the lists', async (worked) => {
      const [{ csvTables }, { pricedTables }] = await loadLists();
      const lists = csvTables(worked).map(({ name, text }) => ({ name: `${name}.csv`, text }));
      for (const { name, text } of [...lists, ...pricedTables(worked)]) {
        const type = name.endsWith('.ics') ? 'text/calendar' : 'text/csv';
        download(new Blob([text], { type: `${type};charset=utf-8` }), fileOf(worked.job, name));
      }
    });
  }

  /** @param name with its ending: a drawing, `lists.xlsx`, or `workshop.zip` for all of them */
  async saveForWorkshop(name: string): Promise<void> {
    await this.#make(name, name, async (worked) => {
      const files = await this.#shop.makeForWorkshop(worked);
      const file = files.find((one) => one.name === name);
      if (!file) throw new Error('the plan on the screen has no such drawing any more');
      download(new Blob([file.content]), fileOf(worked.job, name));
    });
  }

  async #savePdf({ job }: WorkedOut, document: LodeplanDocument): Promise<void> {
    const pdf = await this.#shop.print(document, dayOf(job), this.#composed.pictures);
    download(pdf, `${fileOf(job, document.name)}.pdf`);
  }

  async #make(what: string, making: string, work: (worked: WorkedOut) => Promise<void>): Promise<void> {
    const { worked } = this.#composed;
    if (!worked || this.making !== null) return;
    this.making = making;
    try {
      await work(worked);
      this.#composed.fault = null;
    } catch (reason) {
      if (!(reason instanceof PrintStopped))
        this.#composed.fault = `${what} could not be made: ${wordsOf(reason)}.`;
    } finally {
      this.making = null;
    }
  }
}

export const loadLists = () =>
  Promise.all([import('../../core/drawings/csv'), import('../../core/drawings/priced-tables')]);

export function wordsOf(reason: unknown): string {
  return (reason instanceof Error ? reason.message : String(reason)).replace(/\.$/, '');
}

/** The job's own day, so that the same job gives the same file; else today. */
function dayOf({ date }: Job): Date {
  const day = new Date(`${date}T00:00:00Z`);
  return Number.isNaN(day.getTime()) ? new Date() : day;
}

function fileOf(job: Job, name: string): string {
  const revision = job.revision ? ` ${job.revision}` : '';
  return fileName(`${job.name}${revision} ${name}`);
}
