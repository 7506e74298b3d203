import { describe, expect, it } from 'vitest';
import { buildUpKinds } from '../../core/job/build-up-kinds';
import { compareAlternatives, type PricedAlternative } from '../../core/offer/alternatives';
import { kindWords } from '../../core/offer/kind-words';
import { priceOffer } from '../../core/offer/price';
import { clientPrices } from '../../core/offer/views';
import { inputs, offeredJob } from './offered-job';

function alternative(
  title: string,
  buildUps: string[],
  rate: number,
  change: Partial<typeof inputs> = {},
): PricedAlternative {
  const of = { ...inputs, ...change };
  const job = offeredJob({ labourRates: [{ rate }], taxes: [{ id: 'V', name: 'VAT', percent: 20 }] });
  return { title, buildUps, prices: clientPrices(priceOffer(job, of)), inputs: of };
}

const steel = alternative('Steel', ['steel-panel-writable', 'writable'], 60);
const coating = alternative('Coating', ['magnetic-coating'], 50, {
  visits: 2,
  workingDays: 5,
  handover: '2026-03-12',
});

describe('alternatives side by side', () => {
  const { rows, differences, titles, uses } = compareAlternatives([steel, coating]);

  it('show price, visits, days and dates, and which of them differ', () => {
    expect(titles).toEqual(['Steel', 'Coating']);
    expect(rows.map(({ label, values, differs }) => [label, ...values, differs])).toEqual([
      // Labour 9.9 h: 594.00 or 495.00; materials 129.00; a fifth of tax.
      ['Price with tax', 'EUR\u00A0867.60', 'EUR\u00A0748.80', true],
      ['Tax in it', 'EUR\u00A0144.60', 'EUR\u00A0124.80', true],
      ['Visits', '3', '2', true],
      ['Working days on site', '4', '5', true],
      ['Ready for magnets', '20 March 2026', '20 March 2026', false],
      ['Ready for writing', '24 March 2026', '24 March 2026', false],
      ['Handover', '24 March 2026', '12 March 2026', true],
    ]);
  });

  it('say what differs in a sentence', () => {
    expect(differences).toEqual([
      'Coating costs EUR\u00A0118.80 less, takes 1 visit fewer and takes 1 working day more than Steel.',
    ]);
    expect(compareAlternatives([steel, { ...steel, title: 'Again' }]).differences).toEqual([
      'Again costs the same and takes as long as Steel.',
    ]);
  });

  it('say what each build-up of each does and does not', () => {
    expect(uses.map((list) => list.map(({ label }) => label))).toEqual([
      ['Steel panels, writable', 'Writable coat'],
      ['Magnetic coating'],
    ]);
  });

  it('leave out a date that no alternative has', () => {
    const plain = { ...coating, inputs: { ...coating.inputs, ready: [] } };
    expect(compareAlternatives([plain]).rows.map(({ label }) => label)).not.toContain('Ready for magnets');
    expect(compareAlternatives([])).toMatchObject({ titles: [], differences: [] });
  });
});

describe('what a build-up does, in ordinary words', () => {
  it.each(buildUpKinds.map(({ id }) => id))('%s: something each way, and no figure', (id) => {
    const { does, doesNot } = kindWords(id);
    expect(does.length).toBeGreaterThan(0);
    expect(doesNot.length).toBeGreaterThan(0);
    expect([...does, ...doesNot].join(' ')).not.toMatch(/\d/);
  });

  it('steel holds strong magnets, coating and film only paper, the rest none', () => {
    expect(kindWords('steel-panel').does.join(' ')).toContain('strong magnets');
    expect(kindWords('magnetic-coating').doesNot.join(' ')).toContain('no tools');
    expect(kindWords('magnetic-film').does.join(' ')).toContain('thin layer');
    expect(kindWords('writable').doesNot).toContain('Holds no magnets.');
    expect(kindWords('magnetic-film-writable').doesNot.join(' ')).toContain('seams');
  });
});
