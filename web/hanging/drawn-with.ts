import type { HungVerdict } from '../../core/holding/judge-wall';
import { magnetsOf } from '../../core/holding/ready-magnets';
import type { Job } from '../../core/job/schema';

const byId = new WeakMap<readonly HungVerdict[], ReadonlyMap<string, HungVerdict>>();

/** What is said of each item, by its id; the same map as long as the list is the same. */
export function verdictsOf(
  hung: readonly HungVerdict[] | undefined,
): ReadonlyMap<string, HungVerdict> | null {
  if (!hung) return null;
  const known = byId.get(hung) ?? new Map(hung.map((one) => [one.id, one]));
  byId.set(hung, known);
  return known;
}

const ofReady = (id: string) => magnetsOf({}).get(id)?.diameter;
const byMagnets = new WeakMap<object, (id: string) => number | undefined>();

/** How wide each of the job's magnets is, mm; the same function as long as the magnets are the same. */
export function diametersOf(job: Job): (magnet: string) => number | undefined {
  if (!job.magnets) return ofReady;
  const known = byMagnets.get(job.magnets);
  if (known) return known;
  const magnets = magnetsOf(job);
  const found = (id: string) => magnets.get(id)?.diameter;
  byMagnets.set(job.magnets, found);
  return found;
}
