import type { Since } from '../drawings/changes-since';
import type { Revision } from '../job/schema';
import type { WorkedOut } from '../worked-out';
import { compareWorked } from './compare-worked';
import { readRevision } from './read-revision';

/** In what a plan differs from an issued revision, from its record; null where the record cannot be read. */
export function sinceRevision(worked: WorkedOut, revision: Revision | undefined): Since | null {
  if (!revision) return null;
  const read = readRevision(revision);
  if ('fault' in read) return null;
  const differences = compareWorked(read.worked, worked);
  return { revision: revision.id, date: revision.date, before: read.worked, differences };
}
