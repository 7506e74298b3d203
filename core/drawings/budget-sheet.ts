import { sentenceInUnits } from '../lengths';
import {
  assumptionsOf,
  budgetOf,
  compareBudgets,
  leftOutOf,
  rangeInWords,
  type PricedBudget,
} from '../offer/budget';
import { dayInWords } from '../job/day-in-words';
import { cautionsInWords } from '../offer/scope-words';
import { formatFigure } from '../offer/money';
import type { WorkedWall } from '../worked-out';
import { headingBlock, listBlocks, paragraphBlock } from './client-blocks';
import { clientPages, clientWidth as width, type ClientBlock } from './client-pages';
import { figureBlocks } from './offer-alternatives';
import { pictureBlocks } from './offer-pictures';
import type { LodeplanDocument, TextMeasure } from './page';
import { sentenceOnPaper } from './paper-figures';
import { noPictures } from './pictures';

/** A budget with the walls it was worked out from. */
export interface DrawnBudget extends PricedBudget {
  readonly walls: readonly WorkedWall[];
}

const nextStep =
  'This is no offer and binds nobody. The wall is measured and looked at first; the offer that follows says what holds.';

/**
 * A budget price on one page for the client: ranges, visits and dates of every way side by side, what each holds and does
 * not, what is assumed, cautions; with the picture of the wall where there is room for it.
 *
 * @param budgets of one wall, at least one
 */
export function budgetSheet(budgets: readonly DrawnBudget[], measure: TextMeasure): LodeplanDocument {
  const { job, walls, offer } = budgets[0]!;
  const isPoint = formatFigure(0.5, offer.locale, 1).includes('.');
  const onPaper = (text: string) =>
    isPoint ? sentenceInUnits(text, job.units ?? 'mm') : sentenceOnPaper(text, job.units);
  const list = (sentences: readonly string[], colour?: 'red-lead') =>
    listBlocks(sentences.map(onPaper), width, measure, colour);
  const cautions = [...new Set(budgets.flatMap((one) => cautionsInWords(one.job)))];
  const all = compareBudgets(budgets);
  const compared = { ...all, rows: all.rows.map((row, i) => ({ ...row, differs: i === 0 })) };
  const lead =
    budgets.length === 1
      ? budgetOf(job, offer).words
      : `Budget price, subject to survey. ${rangeInWords(job)}`;
  const words: ClientBlock[] = [
    paragraphBlock(onPaper(lead), width, measure, { weight: 'semi-bold' }),
    paragraphBlock(nextStep, width, measure, { below: 3 }),
    ...figureBlocks(compared, width, measure, budgets.length),
    ...compared.uses
      .flat()
      .map(({ label, words: { does, doesNot } }) =>
        paragraphBlock(`${label}. ${[...does, ...doesNot].join(' ')}`, width, measure, { below: 0.8 }),
      ),
    headingBlock('What is assumed', width),
    ...list(leftOutOf(budgets), 'red-lead'),
    ...list(assumptionsOf(job)),
    ...(cautions.length === 0
      ? []
      : [headingBlock('Cautions', width, 'red-lead'), ...list(cautions, 'red-lead')]),
  ];
  const paper = {
    job,
    title: 'Budget price',
    facts: [['Date', dayInWords(job.date) || 'as sent'] as const],
    status: 'Subject to survey',
  };
  const picture = pictureBlocks(walls, width, job.units, noPictures, measure);
  const withPicture = clientPages(paper, [...picture, ...words], measure);
  return {
    name: 'budget-price',
    title: `${job.name}: budget price`,
    pages: withPicture.length === 1 ? withPicture : clientPages(paper, words, measure),
  };
}
