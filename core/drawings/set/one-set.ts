import type { Job } from '../../job/schema';
import type { WorkedOut } from '../../worked-out';
import type { DocumentPart, LodeplanDocument, TextMeasure } from '../page';
import { titleInJob } from '../title-in-job';
import { registerPages } from './register';

/** The documents of a job that its set leaves out, by name; a set takes in whatever else there is. */
export function setOf(
  job: Pick<Job, 'printing'>,
  documents: readonly LodeplanDocument[],
): LodeplanDocument[] {
  const leftOut = new Set(job.printing?.set?.leftOut);
  return documents.filter(({ name }) => !leftOut.has(name));
}

/**
 * Documents bound to one, behind a register that numbers them. Each keeps its own sheet numbers; a page of the set is
 * called after both: 3.2 is sheet 2 of document 3, R1 the first page of the register. No pages if nothing is to be bound.
 */
export function oneSet(
  worked: WorkedOut,
  documents: readonly LodeplanDocument[],
  measure: TextMeasure,
): LodeplanDocument {
  const name = 'set';
  const title = `${worked.job.name}: drawing set`;
  const bound = documents.filter(({ pages }) => pages.length > 0);
  if (bound.length === 0) return { name, title, pages: [] };
  const register = registerPages(worked, bound, measure);
  const parts: DocumentPart[] = [
    { title: 'Drawing register', label: 'R', pageCount: register.length },
    ...bound.map((drawn, i) => ({
      title: `${i + 1} ${titleInJob(drawn, worked.job.name)}`,
      label: `${i + 1}.`,
      pageCount: drawn.pages.length,
    })),
  ];
  return { name, title, pages: [...register, ...bound.flatMap(({ pages }) => pages)], parts };
}

/** What the documents of a job belong to, as their files say it. */
export function subjectOf({ name, reference, revision }: Job): string {
  return [name, reference, revision && `revision ${revision}`].filter(Boolean).join(', ');
}
