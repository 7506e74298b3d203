import { make, type NamedChange } from '../job/changes/named-change';
import type { OpenJob } from '../job/open-job.svelte';

/** Makes a change from a field, which shows a refusal itself: it need not be said at the top of the page too. */
export function tell(open: OpenJob, change: NamedChange): string | null {
  const refused = make(open, change);
  open.refused = null;
  return refused;
}
