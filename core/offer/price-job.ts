import { planProgramme, type Programme } from '../programme/programme';
import { takeOff, type TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import type { OfferInputs } from './offer-inputs';
import { offerInputs } from './inputs-of-stages';
import { priceOffer, type PricedOffer } from './price';

/** What a job takes, when it is done and what it is offered for. */
export interface PricedJob {
  readonly takeOff: TakeOff;
  readonly programme: Programme;
  readonly inputs: OfferInputs;
  readonly offer: PricedOffer;
}

/** Everything behind the panels and their cutting: quantities, programme, offer. */
export function priceJob(worked: WorkedOut): PricedJob {
  const { job, walls, cutting } = worked;
  const amounts = takeOff(job, walls, cutting);
  const programme = planProgramme(job, walls);
  const inputs = offerInputs(worked, amounts, programme);
  return { takeOff: amounts, programme, inputs, offer: priceOffer(job, inputs) };
}
