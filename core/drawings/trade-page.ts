import type { Job } from '../job/schema';
import { budgetField } from './budget-words';
import type { Item, Page, PaperFormat, TextMeasure } from './page';
import type { PaperBox } from './paper';
import { fieldsOfJob, frameAndTitleBlock } from './title-block';

/** What the pages of a many-paged workshop document have in common. */
export interface TradeDocument {
  readonly job: Job;
  /** Absent: A4. */
  readonly format?: PaperFormat;
  /** Absent: upright, for a clipboard. */
  readonly landscape?: boolean;
  readonly title: string;
  readonly documentType: string;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/**
 * Frame, title block and free space of one page; notes and cautions on the first page alone.
 *
 * @param scaleText what the title block says of the scale where a page shows something to scale
 */
export function tradePage(
  document: TradeDocument,
  sheet: number,
  sheets: number,
  measure: TextMeasure,
  scaleText?: string,
  /** Whether it begins something: notes and cautions stand there. */
  isFirst = sheet === 1,
): { items: Item[]; space: PaperBox } {
  const { job, format = 'A4', landscape = false, title, documentType, notes, cautions } = document;
  const steelWalls = job.walls.filter(({ zones }) => zones.some(({ layout }) => layout));
  return frameAndTitleBlock(
    {
      ...fieldsOfJob(job),
      format,
      landscape,
      title,
      documentType,
      scale: null,
      ...(scaleText !== undefined && { scaleText }),
      sheet,
      sheets,
      notes: isFirst ? notes : [],
      cautions: isFirst ? cautions : [],
      ...budgetField(steelWalls),
    },
    measure,
  );
}

export function upright(items: readonly Item[]): Page {
  return { format: 'A4', landscape: false, items };
}
