import { dayInWords } from '../job/day-in-words';
import { sentenceInUnits } from '../lengths';
import type { ComparedAlternatives } from '../offer/alternatives';
import { formatFigure, formatMoney } from '../offer/money';
import {
  cautionsInWords,
  dutiesInWords,
  exclusionsInWords,
  finishInWords,
  reservationsInWords,
  scopeOf,
} from '../offer/scope-words';
import { termsOf } from '../offer/usual-prices';
import type { ClientPrices } from '../offer/views';
import type { WorkedOut } from '../worked-out';
import { cautions } from './cautions';
import { headingBlock, listBlocks, paragraphBlock, signatureBlock, spaceBlock } from './client-blocks';
import { clientPages, clientWidth as width, statusOf, type ClientBlock } from './client-pages';
import { zoneNotices } from './client-view-zones';
import type { FlowBlock } from './flow-table';
import { comparedBlocks } from './offer-alternatives';
import { pictureBlocks } from './offer-pictures';
import { paymentBlocks } from './offer-payments';
import { priceBlocks } from './offer-price-table';
import type { LodeplanDocument, TextMeasure } from './page';
import { sentenceOnPaper } from './paper-figures';
import { noPictures, type Pictures } from './pictures';

/** What an offer shows beside the job and its price. */
export interface OfferBeside {
  readonly compared?: ComparedAlternatives;
  /** Of a budget price: its range, in words. */
  readonly budget?: string;
  readonly pictures?: Pictures;
}

/**
 * The offer for the client: pictures of the walls, scope, prices with tax, payment, alternatives, reservations, duties,
 * exclusions, cautions and where to sign. Cautions, reservations and what is a budget come from the job itself, so that no
 * caller can leave them out. An offer of nothing is not one to sign: it says that it has no price yet. No pages for a job
 * without zones.
 */
export function offerDocument(
  worked: WorkedOut,
  prices: ClientPrices,
  measure: TextMeasure,
  { compared, budget, pictures = noPictures }: OfferBeside = {},
): LodeplanDocument {
  const { job, walls } = worked;
  const title = budget ? 'Budget offer' : 'Offer';
  const onPaper = writerOf(worked, prices);
  const section = (heading: string, blocks: readonly ClientBlock[], colour?: 'red-lead'): ClientBlock[] =>
    blocks.length === 0 ? [] : [headingBlock(heading, width, colour), ...blocks];
  const list = (sentences: readonly string[], colour?: 'red-lead') =>
    listBlocks(sentences.map(onPaper), width, measure, colour);
  const blocks: ClientBlock[] = [
    ...priceAtAGlance(prices, budget, measure),
    ...pictureBlocks(walls, width, job.units, pictures, measure),
    ...section('What is offered', scopeBlocks(worked, onPaper, measure)),
    ...section('Finish', list(finishInWords(job))),
    ...section('Prices', [
      ...priceBlocks(prices, width, measure),
      paragraphBlock(onPaper(howReckoned(worked, prices)), width, measure, { colour: 'soft' }),
    ]),
    ...section('Payment', paymentBlocks(prices, width, measure)),
    ...(compared && compared.titles.length > 1
      ? section('Alternatives', comparedBlocks(compared, width, measure))
      : []),
    ...section('Reservations: what has not been recorded yet', list(reservationsInWords(job)), 'red-lead'),
    ...section('What the client sees to', list(dutiesInWords(job))),
    ...section('Not part of this offer', list(exclusionsInWords(job))),
    ...section('Cautions', list(cautionsOf(worked), 'red-lead'), 'red-lead'),
    ...(isPriced(prices) ? closing(worked, prices, measure) : []),
  ];
  const hasZones = walls.some(({ zones }) => zones.length > 0);
  return {
    name: 'offer',
    title: `${job.name}: offer`,
    pages: hasZones
      ? clientPages({ job, title, facts: factsOf(worked, prices), status: statusOf(job) }, blocks, measure)
      : [],
  };
}

/** Whether anything is asked for the work; a job that nobody priced comes to nothing. */
function isPriced({ gross }: ClientPrices): boolean {
  return gross !== 0;
}

/** Sentences in the job's units, with the decimal sign that its money has. */
function writerOf({ job }: WorkedOut, { locale }: ClientPrices): (text: string) => string {
  const isPoint = formatFigure(0.5, locale, 1).includes('.');
  return (text) => (isPoint ? sentenceInUnits(text, job.units ?? 'mm') : sentenceOnPaper(text, job.units));
}

function factsOf({ job }: WorkedOut, { validUntil, validityDays }: ClientPrices): [string, string][] {
  return [
    ...(job.reference ? [['Reference', job.reference] as [string, string]] : []),
    ['Date', dayInWords(job.date) || 'as sent'],
    ['Valid', validUntil ? `until ${dayInWords(validUntil)}` : `${validityDays} days from its date`],
  ];
}

/** What everybody looks for first. */
function priceAtAGlance(prices: ClientPrices, budget: string | undefined, measure: TextMeasure): FlowBlock[] {
  const { gross, taxes, currency, locale } = prices;
  const total = formatMoney(gross, currency, locale, 'code');
  const tax =
    taxes.length === 0
      ? 'before tax'
      : taxes.some(({ amount }) => amount > 0)
        ? 'with tax'
        : 'no tax charged';
  return [
    paragraphBlock(isPriced(prices) ? `${total} ${tax}` : 'Not priced yet', width, measure, {
      height: 5,
      weight: 'semi-bold',
      below: 1.5,
    }),
    ...(budget ? [paragraphBlock(budget, width, measure, { colour: 'red-lead', weight: 'semi-bold' })] : []),
    spaceBlock(3.5),
  ];
}

function scopeBlocks(
  worked: WorkedOut,
  onPaper: (text: string) => string,
  measure: TextMeasure,
): FlowBlock[] {
  const { job, walls } = worked;
  const scope = scopeOf(job);
  return scope.flatMap(({ id, title, zones }, i) => {
    const own = walls.find(({ survey }) => survey.wall.id === id)?.zones ?? [];
    const numbers = new Map(
      zoneNotices(own.map(({ area }) => area)).map(({ zone, number }) => [zone.zone.id, number]),
    );
    const names = zones.flatMap((zone) => {
      const number = numbers.get(zone.id);
      const words = onPaper(zone.title);
      return [
        paragraphBlock(number ? `${number}  ${words}` : words, width, measure, {
          weight: 'semi-bold',
          below: 0.4,
          keepWithNext: true,
        }),
        paragraphBlock(onPaper(zone.layers), width, measure, { indent: 5, colour: 'soft' }),
        ...zone.markings.map((text) =>
          paragraphBlock(`Marked on it: ${onPaper(text)}.`, width, measure, { indent: 5, colour: 'soft' }),
        ),
      ];
    });
    // A job of one wall says its name in the picture already.
    if (scope.length === 1) return names;
    return [
      paragraphBlock(title, width, measure, {
        height: 3.5,
        colour: 'soft',
        above: i === 0 ? 0.8 : 2.6,
        keepWithNext: true,
      }),
      ...names,
    ];
  });
}

function howReckoned({ job }: WorkedOut, { measured, rounding }: ClientPrices): string {
  const kept =
    termsOf(job).leftOver === 'client'
      ? 'Materials come in whole packs, which the price covers; what is left over stays with the client.'
      : 'The price covers the materials that are used; what is left over stays with the firm.';
  return `${measured} ${kept} ${rounding}`;
}

function cautionsOf({ job }: WorkedOut): string[] {
  const all = cautionsInWords(job);
  const holds = all.some((text) => text.startsWith('Strong magnets'));
  return holds ? [...all, cautions.overhead] : all;
}

function closing({ job }: WorkedOut, prices: ClientPrices, measure: TextMeasure): FlowBlock[] {
  const { closingWords, offeredBy } = termsOf(job);
  const { validUntil, validityDays, gross, currency, locale } = prices;
  const until = validUntil ? `until ${dayInWords(validUntil)}` : `for ${validityDays} days from its date`;
  const total = formatMoney(gross, currency, locale, 'code');
  const words = [
    ...(closingWords ? closingWords.split('\n') : []),
    `This offer stands ${until}. By signing, the client orders the work as it is described here for ${total}.`,
  ];
  const firm = offeredBy.split('\n')[0]!;
  return [
    headingBlock('Acceptance', width),
    ...words.map((text, i) => paragraphBlock(text, width, measure, { keepWithNext: i === words.length - 1 })),
    { ...spaceBlock(4), keepWithNext: true },
    signatureBlock(
      [firm ? `For ${firm}` : 'Offered by', job.client ? `For ${job.client}` : 'Accepted by the client'],
      width,
      measure,
    ),
  ];
}
