import type { Finding } from '../finding';
import { refusal, shown, type Path } from './place';
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
    ...extras.flatMap(({ item }, i) =>
      unknown(['extras', i, 'item'], item, priceList, 'entry of the price list'),
    ),
  ];
}

function repeated(job: Job, list: string, entries: readonly { readonly id: string }[]): Finding[] {
  return entries.flatMap(({ id }, i) => {
    const first = entries.findIndex((one) => one.id === id);
    if (first === i) return [];
    const says = `is ${shown(id)}, which entry ${first + 1} of ${list} has already; give one of them another id.`;
    return [refusal(job, ['offer', list, i, 'id'], 'duplicate-id', says)];
  });
}
