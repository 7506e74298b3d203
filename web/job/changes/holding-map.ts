import { setHoldingMap } from '../../../core/job/holding-map';
import type { HoldingMapSettings } from '../../../core/job/hung-schema';
import type { NamedChange } from './named-change';

/** @param what `magnet`, in the name of the change */
export function askMap(patch: Partial<HoldingMapSettings>, what: string): NamedChange {
  return { name: `Set ${what} of the holding map`, change: (job) => setHoldingMap(job, patch) };
}

export function showMapToClient(forClient: boolean): NamedChange {
  return {
    name: forClient ? 'Show the holding map to the client' : 'Keep the holding map from the client',
    change: (job) => setHoldingMap(job, { forClient }),
  };
}
