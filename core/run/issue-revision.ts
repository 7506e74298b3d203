import type { Job, RackPiece, Revision } from '../job/schema';
import type { JobSheet, WorkedOut } from '../worked-out';
import { toMm } from '../units';
import { freezeResults, frozenSheets } from './frozen-results';
import { freeRevision, nextRevision } from './next-revision';

export interface Issue {
  /** What the revision is called from now on. */
  readonly id: string;
  /** Day of issue, ISO 8601; core has no clock. */
  readonly date: string;
  readonly note: string;
  /** Marks that pieces of the firm's rack have or had: none of them is given to a new offcut. */
  readonly takenMarks?: Iterable<string>;
}

/**
 * A job with one more frozen record: the job as it is issued (without its own revisions), its results in full, and what
 * issuing means for the rack (the pieces that the plan uses up, the offcuts that it leaves, with their marks). The job's
 * `revision` moves on to the next free one and its date is emptied: what is drawn from now on is not issued yet.
 *
 * Panels keep their marks from here on (see `markPanels`). An offcut that an earlier revision left of the same panels in
 * the same size is the same piece and keeps its mark.
 *
 * @param worked of this very job, its final plan: whoever calls has waited for it
 * @throws Error if `worked` is of another job or the id has been issued already: the caller asks before
 */
export function issueRevision(job: Job, worked: WorkedOut, issue: Issue): Job {
  if (worked.job !== job) throw new Error('A revision is issued with the results of the same job.');
  if (job.revisions.some(({ id }) => id === issue.id)) {
    throw new Error(`Revision ${issue.id} has been issued.`);
  }
  const { revisions, ...own } = job;
  const issued = { ...own, revision: issue.id, date: issue.date };
  const record: Revision = {
    id: issue.id,
    date: issue.date,
    note: issue.note,
    job: issued,
    results: freezeResults({ ...worked, job: { ...issued, revisions: [] } }),
    rack: rackBookings(job, worked, issue.takenMarks ?? []),
  };
  const next = [...revisions, record];
  return { ...job, revisions: next, revision: freeRevision(nextRevision(issue.id), next), date: '' };
}

/**
 * Rack pieces that a plan uses up, by their ids, and the offcuts that it leaves, as pieces of the rack.
 *
 * @param takenMarks see `Issue`
 */
export function rackBookings(
  job: Job,
  { cutting }: Pick<WorkedOut, 'cutting'>,
  takenMarks: Iterable<string> = [],
): { out: string[]; in: RackPiece[] } {
  const out = cutting.sheets.flatMap(({ fromRack }) => (fromRack === null ? [] : [fromRack]));
  const known = marksLeftBefore(job.revisions);
  let number = highestNumber([
    ...takenMarks,
    ...job.rack.map(({ id }) => id),
    ...job.revisions.flatMap(({ rack }) => [...(rack?.in ?? []).map(({ id }) => id), ...(rack?.out ?? [])]),
  ]);
  const left = cutting.sheets.flatMap((planned) => {
    const marks = panelMarks(planned);
    return keptSizes(planned).map(([width, height]): RackPiece => {
      const same = known.get(offcutKey(marks, planned.stock, width, height))?.shift();
      return { id: same ?? `R${++number}`, stock: planned.stock, width, height, from: planned.id };
    });
  });
  return { out, in: left };
}

/** Offcuts of the latest revision by what they are left of; of equal ones each mark is given once. */
function marksLeftBefore(revisions: readonly Revision[]): Map<string, string[]> {
  const latest = revisions.at(-1);
  const sheets = new Map(frozenSheets(latest?.results).map((sheet) => [sheet.id, sheet]));
  const marks = new Map<string, string[]>();
  for (const { id, stock, width, height, from } of latest?.rack?.in ?? []) {
    const sheet = from === undefined ? undefined : sheets.get(from);
    if (!sheet) continue;
    const key = offcutKey(panelMarks(sheet), stock, width, height);
    marks.set(key, [...(marks.get(key) ?? []), id]);
  }
  return marks;
}

function keptSizes({ offcuts }: JobSheet): [number, number][] {
  return offcuts.filter(({ keep }) => keep).map(({ width, height }) => [toMm(width), toMm(height)]);
}

function panelMarks({ placements }: { placements: readonly { mark: string }[] }): string[] {
  return placements.map(({ mark }) => mark).sort();
}

function offcutKey(marks: readonly string[], stock: string, width: number, height: number): string {
  return JSON.stringify([marks, stock, width, height]);
}

/** Marks of the rack are R and a number; others do not count. */
function highestNumber(marks: readonly string[]): number {
  return marks.reduce((most, mark) => Math.max(most, Number(/^R(\d{1,9})$/.exec(mark)?.[1] ?? 0)), 0);
}
