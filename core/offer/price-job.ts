import { planProgramme, type Programme } from '../programme/programme';
import { takeOffInSteps, type TakeOff } from '../quantities/take-off';
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
  const work = priceJobInSteps(worked);
  for (;;) {
    const { value, done } = work.next();
    if (done) return value;
  }
}

/** The same, yielding at pauses, so that the caller may stop or listen. */
export function* priceJobInSteps(worked: WorkedOut): Generator<undefined, PricedJob> {
  const { job, walls, cutting } = worked;
  const amounts = yield* takeOffInSteps(job, walls, cutting);
  yield undefined;
  const programme = planProgramme(job, walls);
  yield undefined;
  const inputs = offerInputs(worked, amounts, programme);
  yield undefined;
  return { takeOff: amounts, programme, inputs, offer: priceOffer(job, inputs) };
}
