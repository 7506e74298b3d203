import { compareAlternatives, type PricedAlternative } from '../offer/alternatives';
import { priceJob } from '../offer/price-job';
import { clientPrices } from '../offer/views';
import type { WorkedOut } from '../worked-out';
import { careSheet } from './care-sheet';
import { daySheets } from './day-sheets';
import type { DrawnAlternative } from './client-alternatives';
import { filmStripsSheet } from './film-strips-sheet';
import { materialsList } from './materials-list';
import { offerDocument } from './offer-document';
import { handoverPack } from './handover/handover-pack';
import type { LodeplanDocument, TextMeasure } from './page';
import type { Pictures } from './pictures';
import { programmeSheet } from './programme-sheet';

/** The documents that follow from quantities, dates and prices. */
export function pricedDocuments(
  worked: WorkedOut,
  alternatives: readonly DrawnAlternative[],
  pictures: Pictures,
  measure: TextMeasure,
): LodeplanDocument[] {
  const priced = priceJob(worked);
  const compared =
    alternatives.length > 1
      ? compareAlternatives(alternatives.map((one) => pricedOf(worked, one)))
      : undefined;
  return [
    materialsList(worked, priced.takeOff, measure),
    filmStripsSheet(worked, priced.takeOff, measure),
    programmeSheet(worked.job, priced.programme, measure),
    daySheets(worked, priced.programme, priced.takeOff, measure),
    offerDocument(worked, clientPrices(priced.offer), measure, { ...(compared && { compared }), pictures }),
    careSheet(worked, priced.inputs, measure),
    handoverPack(worked, priced, measure),
  ];
}

/** With the products, rates and terms of the job that is offered. */
export function pricedOf({ job }: WorkedOut, { title, worked }: DrawnAlternative): PricedAlternative {
  const { products, buildUps, quantities, programme, offer } = job;
  const zones = worked.job.walls.flatMap((wall) => wall.zones);
  const priced = priceJob({
    ...worked,
    job: { ...worked.job, products, buildUps, quantities, programme, offer },
  });
  return {
    title,
    buildUps: [...new Set(zones.map(({ buildUp }) => buildUp))],
    prices: clientPrices(priced.offer),
    inputs: priced.inputs,
  };
}
