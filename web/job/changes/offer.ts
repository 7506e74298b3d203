import { changeJob } from '../../../core/job/changes';
import type { Offer } from '../../../core/job/offer-schema';
import type { NamedChange } from './named-change';

/** The offer as it is to be; one that says nothing is taken out of the job. */
export function setOffer(offer: Offer, what: string): NamedChange {
  const given = Object.fromEntries(Object.entries(offer).filter(([, value]) => !isNothing(value)));
  return {
    name: `Set ${what} of the offer`,
    change: (job) => changeJob(job, { offer: Object.keys(given).length > 0 ? (given as Offer) : undefined }),
  };
}

function isNothing(value: unknown): boolean {
  return value === undefined || (Array.isArray(value) && value.length === 0);
}
