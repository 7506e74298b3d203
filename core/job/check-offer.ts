import type { Finding } from '../finding';
import { refusal, shown, type Path } from './place';
import { areaUnits } from './offer-schema';
import type { Job } from './schema';

/** Ids of an offer's lists name one thing each, taxes and entries of the price list that are named are there. */
export function checkOffer(job: Job): Finding[] {
  const { offer } = job;
  if (!offer) return [];
  const { taxes = [], priceList = [], extras = [], provisionalSums = [], lineTaxes = [] } = offer;
  const unknown = (path: Path, id: string | undefined, known: readonly { id: string }[], what: string) => {
    if (id === undefined || known.some((one) => one.id === id)) return [];
    const has = known.length > 0 ? `the offer has ${known.map((one) => one.id).join(', ')}` : 'it has none';
    return [
      refusal(
        job,
        ['offer', ...path],
        'unknown-in-offer',
        `is ${shown(id)}, but no ${what} has that id; ${has}.`,
      ),
    ];
  };
  const tax = (path: Path, id: string | undefined) => unknown(path, id, taxes, 'tax of the offer');
  return [
    ...(['taxes', 'priceList', 'extras', 'provisionalSums'] as const).flatMap((list) =>
      repeated(job, list, offer[list] ?? []),
    ),
    ...tax(['tax'], offer.tax),
    ...lineTaxes.flatMap((one, i) => tax(['lineTaxes', i, 'tax'], one.tax)),
    ...priceList.flatMap((one, i) => tax(['priceList', i, 'tax'], one.tax)),
    ...provisionalSums.flatMap((one, i) => tax(['provisionalSums', i, 'tax'], one.tax)),
    ...extras.flatMap(({ item, quantity }, i) => [
      ...unknown(['extras', i, 'item'], item, priceList, 'entry of the price list'),
      ...uncounted(
        job,
        i,
        quantity,
        priceList.find(({ id }) => id === item),
      ),
    ]),
  ];
}

/** Only an area is known without a quantity. */
function uncounted(
  job: Job,
  i: number,
  quantity: number | undefined,
  entry: { readonly name: string; readonly unit: string } | undefined,
): Finding[] {
  if (quantity !== undefined || !entry || areaUnits.some((unit) => unit === entry.unit)) return [];
  const says = `is missing: “${entry.name}” is priced by ${entry.unit ? `the ${entry.unit}` : 'the lump'}, and only a price by m² or ft² can do without one; give the line a quantity.`;
  return [refusal(job, ['offer', 'extras', i, 'quantity'], 'no-quantity', says)];
}

function repeated(job: Job, list: string, entries: readonly { readonly id: string }[]): Finding[] {
  return entries.flatMap(({ id }, i) => {
    const first = entries.findIndex((one) => one.id === id);
    if (first === i) return [];
    const says = `is ${shown(id)}, which entry ${first + 1} of ${list} has already; give one of them another id.`;
    return [refusal(job, ['offer', list, i, 'id'], 'duplicate-id', says)];
  });
}
