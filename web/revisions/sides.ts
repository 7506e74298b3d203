import type { Revision } from '../../core/job/schema';
import { readRevision } from '../../core/run/read-revision';
import type { WorkedOut } from '../../core/worked-out';

/** The plan on the screen among the revisions that can be compared; no revision can be called so. */
export const onScreen = '/';

export type Side = { readonly worked: WorkedOut } | { readonly fault: string } | null;

const read = new WeakMap<Revision, Side>();

/** What a revision was issued with; reading a record takes time, so it is read once. */
export function sideOf(revision: Revision | undefined): Side {
  if (!revision) return null;
  const known = read.get(revision);
  if (known) return known;
  const side = readRevision(revision);
  read.set(revision, side);
  return side;
}
