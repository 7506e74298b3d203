import { describe, expect, it } from 'vitest';
import { budgetSheet } from '../../core/drawings/budget-sheet';
import { measureWith } from '../../core/drawings/fonts';
import { alternativesOf, jobOfAlternative } from '../../core/job/alternatives';
import { demoJob } from '../../core/job/demo';
import { budgetJobOf } from '../../core/offer/budget-job';
import { priceJob } from '../../core/offer/price-job';
import type { LengthUnits } from '../../core/lengths';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);

function sheetOf(buildUps: readonly string[], units?: LengthUnits, width = 4200, height = 2600) {
  const rates = { ...demoJob(), ...(units && { units }) };
  const job = budgetJobOf(rates, { name: 'Proofing wall', width, height, date: '2026-11-28' }, buildUps);
  const budgets = alternativesOf(job).map(({ id }) => {
    const worked = workOutFully(jobOfAlternative(job, id), { steps: 1 });
    const { inputs, offer } = priceJob(worked);
    return { job: worked.job, walls: worked.walls, inputs, offer };
  });
  return budgetSheet(budgets, measure);
}

const saysOf = (sheet: ReturnType<typeof sheetOf>) =>
  wordsOf(sheet).replaceAll('\u00A0', ' ').replace(/\s+/g, ' ');

describe('the budget price on paper', () => {
  const three = ['steel-panel-writable', 'magnetic-coating-writable', 'magnetic-film-writable'];

  it.each([
    [three, 4200, 2600],
    [[...three, 'writable'], 4200, 2600],
    [['steel-panel'], 1200, 2600],
    [three, 12_000, 2600],
  ])('is one page of %s at %d × %d mm, with no text on another', (buildUps, width, height) => {
    const sheet = sheetOf(buildUps, undefined, width, height);
    expect(sheet.pages).toHaveLength(1);
    expect(textFaults(sheet, measure, false)).toEqual([]);
  });

  it('says that it is subject to survey and no offer, what is assumed, and every way with its range', () => {
    const words = saysOf(sheetOf(three));
    expect(words).toContain('Budget price, subject to survey');
    expect(words).toContain('This is no offer and binds nobody');
    expect(words).toContain('4200 × 2600 mm and all of it one zone');
    for (const title of ['Steel panels, writable', 'Magnetic coating, writable', 'Magnetic film, writable'])
      expect(words).toContain(title.split(',')[0]);
    // The demo has no price for films.
    expect(words).toContain(
      'Not in the price of magnetic film, writable film: materials that have no price yet.',
    );
    expect(words.match(/EUR to/g)).toHaveLength(3);
  });

  it('writes lengths in the units of the job', () => {
    expect(saysOf(sheetOf(three, 'ft-in', 3048, 2438.4))).toContain(
      '10\'-0" × 8\'-0" and all of it one zone',
    );
  });
});
