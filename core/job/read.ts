import * as v from 'valibot';
import type { Finding } from '../finding';
import { checkJob } from './check';
import { explainIssue } from './explain-issue';
import { parseJson } from './json-text';
import { mostFaultsListed } from './limits';
import { migrateJob, type JobFile } from './migrate';
import { roundToMinorUnit } from './minor-unit';
import { withRoundedOffer } from './offer-prices';
import { refusal, shown } from './place';
import { jobSchema, type Job } from './schema';
import { withRoundedPacks } from './rounded-packs';
import { boundsOfFile } from './untrusted';

/** `findings` of level `error` if and only if there is no job. */
export type ReadJob =
  | { readonly job: Job; readonly findings: readonly Finding[] }
  | { readonly job: null; readonly findings: readonly Finding[] };

/**
 * A job from the text of a job file. Past this nobody asks again whether an outline crosses itself or an id
 * names something. Never throws on bad text: each fault is a finding that says where, what and how to mend it.
 *
 * @example readJob('{"format": "lodeplan-job", "version": 1, "name": "Reading room"}').job?.walls // []
 */
export function readJob(text: string): ReadJob {
  const parsed = parseJson(text);
  return 'finding' in parsed ? refused([parsed.finding]) : readJobObject(parsed.value);
}

/** The same from a value that was parsed already; the value is not changed. */
export function readJobObject(value: unknown): ReadJob {
  const bounds = boundsOfFile(value);
  if ('finding' in bounds) return refused([bounds.finding]);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refused([
      refusal(value, [], 'not-a-job', `holds ${shown(value)}; a job file holds one object in braces.`),
    ]);
  }
  const migrated = migrateJob(value as JobFile);
  if ('finding' in migrated) return refused([migrated.finding]);
  const file = migrated.file;

  // A long file with a fault in every line would fill the memory with faults; its first is enough.
  const result = v.safeParse(jobSchema, file, { abortEarly: bounds.values > 50_000 });
  if (!result.success) return refused(onePerPath(result.issues.map((issue) => explainIssue(file, issue))));

  const job = withRoundedOffer(withRoundedPacks(withRoundedPrices(result.output)));
  const faults = checkJob(job);
  return faults.length > 0 ? refused(faults) : { job, findings: [] };
}

function refused(faults: readonly Finding[]): ReadJob {
  if (faults.length <= mostFaultsListed) return { job: null, findings: faults };
  const more: Finding = {
    level: 'error',
    code: 'more-faults',
    text: `The file has ${faults.length - mostFaultsListed} more faults; mend these first.`,
  };
  return { job: null, findings: [...faults.slice(0, mostFaultsListed), more] };
}

/** The first fault of a value is its cause; those after it at the same place only follow from it. */
function onePerPath(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const subject = finding.text.split(' ', 1)[0]!;
    if (seen.has(subject)) return false;
    seen.add(subject);
    return true;
  });
}

function withRoundedPrices(job: Job): Job {
  const stock = job.stock.map((sheet) => ({ ...sheet, price: roundToMinorUnit(sheet.price, job.currency) }));
  return { ...job, stock };
}
