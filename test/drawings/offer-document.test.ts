import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clientMargin } from '../../core/drawings/client-header';
import { cautions } from '../../core/drawings/cautions';
import { careSheet } from '../../core/drawings/care-sheet';
import { measureWith } from '../../core/drawings/fonts';
import { offerDocument } from '../../core/drawings/offer-document';
import type { LodeplanDocument } from '../../core/drawings/page';
import { textBoxes } from '../../core/drawings/text';
import { demoJob } from '../../core/job/demo';
import type { Offer } from '../../core/job/offer-schema';
import type { Job } from '../../core/job/schema';
import { compareAlternatives } from '../../core/offer/alternatives';
import { formatAmount, formatMoney } from '../../core/offer/money';
import { priceOffer } from '../../core/offer/price';
import {
  cautionsInWords,
  dutiesInWords,
  exclusionsInWords,
  lastingCautions,
} from '../../core/offer/scope-words';
import { clientPrices } from '../../core/offer/views';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { inputs, offeredJob } from '../offer/offered-job';
import { currencies, offers } from '../offer/random-offer';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);
const worked = workOutFully(offeredJob(), { steps: 1 });
const demo = workOutFully(demoJob(), { steps: 1 });

const full: Partial<Offer> = {
  offeredBy: 'The firm\n1 Street\nTown',
  labourRates: [{ rate: 52 }],
  travel: 35,
  markup: 20,
  discount: 3,
  taxes: [
    { id: 'V', name: 'VAT', percent: 20 },
    { id: 'R', name: 'VAT', percent: 10, reverseCharge: true },
  ],
  lineTaxes: [{ line: 'B/Z1', tax: 'R' }],
  provisionalSums: [{ id: 'P1', words: 'levelling the ground', amount: 400 }],
  deposit: 30,
  retention: 5,
  closingWords: 'Thank you for asking us.',
};

/** The worked job with another offer: nothing that is worked out depends on it. */
function withOffer(of: WorkedOut, offer: Partial<Offer>, patch: Partial<Job> = {}): WorkedOut {
  return { ...of, job: { ...of.job, ...patch, offer } };
}

function drawn(of: WorkedOut) {
  const prices = clientPrices(priceOffer(of.job, inputs));
  return { prices, document: offerDocument(of, prices, measure) };
}

/** Texts of a document without regard to where lines end. */
function saysOf(document: LodeplanDocument): string {
  return wordsOf(document).replaceAll('\u00A0', ' ').replace(/\s+/g, ' ');
}

const plain = (text: string) => text.replaceAll('\u00A0', ' ').replace(/\s+/g, ' ');

/** Texts that reach into the margins, but for the head and the foot. */
function outOfMargins(document: LodeplanDocument): string[] {
  return document.pages.flatMap((page) =>
    textBoxes(page, measure)
      .filter(
        ({ box }) =>
          box.left < clientMargin - 0.01 || box.right > 210 - clientMargin + 0.01 || box.bottom < 11,
      )
      .map(({ text }) => text.text),
  );
}

describe.each([
  ['three zones', worked],
  ['the demo', demo],
])('the offer of %s', (_, of) => {
  const { document, prices } = drawn(withOffer(of, full));

  it('lays no text on another and keeps to its margins', () => {
    expect(document.pages.length).toBeGreaterThan(1);
    expect(textFaults(document, measure, false)).toEqual([]);
    expect(outOfMargins(document)).toEqual([]);
  });

  it('shows the sums that were reckoned', () => {
    const says = saysOf(document);
    const money = (amount: number) => plain(formatAmount(amount, 'EUR', prices.locale));
    for (const { amount, title } of prices.lines) {
      expect(says).toContain(money(amount));
      expect(says).toContain(plain(title));
    }
    for (const { amount } of [...prices.taxes, ...prices.payments]) expect(says).toContain(money(amount));
    expect(says).toContain(`Net price ${money(prices.net)}`);
    expect(says).toContain(`Total ${plain(formatMoney(prices.gross, 'EUR', prices.locale, 'code'))}`);
    expect(says).toContain('Reverse charge');
  });

  it('leaves out no caution, duty or exclusion of the job', () => {
    const says = saysOf(document);
    const { job } = withOffer(of, full);
    const due = [
      ...cautionsInWords(job),
      ...dutiesInWords(job),
      ...exclusionsInWords(job),
      cautions.overhead,
    ];
    for (const text of due) expect(says).toContain(plain(text));
  });

  it('has a place to sign, and says until when it stands', () => {
    const says = saysOf(document);
    expect(says).toContain('This offer stands until 1 April 2026');
    expect(says.match(/Signature/g)).toHaveLength(2);
    expect(says).toContain('For The firm');
    expect(says).toContain('Thank you for asking us.');
  });

  it('shows no cost, rate or markup', () => {
    const says = saysOf(document);
    const priced = priceOffer(withOffer(of, full).job, inputs);
    for (const secret of ['52,00', 'markup', 'overhead', 'Labour'])
      expect(says.toLowerCase()).not.toContain(secret.toLowerCase());
    const shown = new Set(prices.lines.flatMap(({ amount, unitPrice }) => [amount, unitPrice]));
    for (const { cost } of priced.internal.costs.filter((one) => !shown.has(one.cost)))
      expect(says).not.toContain(plain(formatAmount(cost, 'EUR', prices.locale)));
  });
});

describe('the offer', () => {
  it('is a budget until all walls are surveyed, in its head and among its reservations', () => {
    const walls = worked.job.walls.map((wall) => ({ ...wall, surveyed: false }));
    const of: WorkedOut = {
      ...worked,
      job: { ...worked.job, walls, offer: full },
      walls: worked.walls.map((one, i) => ({ ...one, survey: { ...one.survey, wall: walls[i]! } })),
    };
    const says = saysOf(drawn(of).document);
    expect(says).toContain('Budget until surveyed');
    expect(says).toContain('has not been measured on site');
  });

  it('sets alternatives side by side where there are several', () => {
    const { prices } = drawn(withOffer(worked, full));
    const one = { title: 'Steel', buildUps: ['steel-panel'], prices, inputs };
    const two = { ...one, title: 'Coating', buildUps: ['magnetic-coating'], prices: { ...prices, gross: 1 } };
    const titles = ['Third', 'Fourth', 'Fifth of them all, with a name that is long'];
    const compared = compareAlternatives([one, two, ...titles.map((title) => ({ ...two, title }))]);
    const document = offerDocument(withOffer(worked, full), prices, measure, { compared });
    expect(textFaults(document, measure, false)).toEqual([]);
    const says = saysOf(document);
    for (const row of compared.rows) expect(says).toContain(row.label);
    for (const text of compared.differences) expect(says).toContain(plain(text));
    const single = offerDocument(withOffer(worked, full), prices, measure, {
      compared: compareAlternatives([one]),
    });
    expect(saysOf(single)).not.toContain('Alternatives');
  });

  it('is in the units of the job and the writing of its money', () => {
    const feet = saysOf(drawn(withOffer(worked, { ...full, locale: 'en-US' }, { units: 'ft-in' })).document);
    expect(feet).toContain(`6'-6 3/4" × 3'-3 3/8"`);
    expect(feet).toContain('ft²');
    expect(feet).not.toMatch(/\d,\d\d\b/);
    const point = saysOf(drawn(withOffer(worked, { ...full, locale: 'en-GB' })).document);
    expect(point).toContain('0.5 mm thick');
    expect(saysOf(drawn(withOffer(worked, full)).document)).toContain('0,5 mm thick');
  });

  it('that nobody priced says so, and has no place to sign', () => {
    const unpriced = clientPrices(priceOffer(withOffer(worked, {}).job, { ...inputs, materials: [] }));
    expect(unpriced.gross).toBe(0);
    const says = saysOf(offerDocument(worked, unpriced, measure));
    expect(says).toContain('Not priced yet');
    expect(says).not.toContain('Signature');
    expect(says).not.toContain('By signing');
  });

  it('has no page for a job without zones', () => {
    const empty = { ...worked, walls: [], job: { ...worked.job, walls: [] } };
    expect(offerDocument(empty, drawn(worked).prices, measure).pages).toEqual([]);
    expect(careSheet(empty, inputs, measure).pages).toEqual([]);
  });

  it('stays legible however much it has to say', () => {
    const words = 'and so on, with more of it than anybody would read '.repeat(12);
    const long: Partial<Offer> = {
      ...full,
      offeredBy: `${words.slice(0, 300)}\n${words.slice(0, 300)}`,
      exclusions: Array.from({ length: 60 }, (_, i) => `${i} ${words.slice(0, 200)}`),
      duties: [words],
      closingWords: words,
      provisionalSums: Array.from({ length: 40 }, (_, i) => ({
        id: `P${i}`,
        words: words.slice(0, 120),
        amount: 1e9,
      })),
    };
    const { document } = drawn(
      withOffer(worked, long, { name: words.slice(0, 200), client: words.slice(0, 200) }),
    );
    expect(textFaults(document, measure, false)).toEqual([]);
    expect(outOfMargins(document)).toEqual([]);
  });

  it('says again over a table what its columns are, where it goes on on another page', () => {
    const many = Array.from({ length: 60 }, (_, i) => ({ id: `P${i}`, words: `part ${i}`, amount: 100 }));
    const { document } = drawn(withOffer(worked, { ...full, provisionalSums: many }));
    const withLines = document.pages.filter((page) =>
      textsOf(page).some((text) => text.includes('Provisional')),
    );
    expect(withLines.length).toBeGreaterThan(2);
    for (const page of withLines)
      expect(textsOf(page).filter((text) => text === 'Description')).toHaveLength(1);
    expect(textFaults(document, measure, false)).toEqual([]);
  });

  it('keeps to its margins with every price', () => {
    fc.assert(
      fc.property(offers, currencies, (offer, currency) => {
        const of = withOffer(worked, offer, { currency });
        const { document } = drawn(of);
        expect(textFaults(document, measure, false)).toEqual([]);
        expect(outOfMargins(document)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the care sheet', () => {
  const document = careSheet(withOffer(worked, {}), inputs, measure);

  it('lays no text on another and keeps to its margins', () => {
    expect(textFaults(document, measure, false)).toEqual([]);
    expect(outOfMargins(document)).toEqual([]);
  });

  it('says from when each zone holds magnets and is written on, or that it is not for that', () => {
    const says = saysOf(document);
    expect(says).toContain('Proofs, steel panels, writable 20 March 2026 24 March 2026');
    expect(says).toContain('Week plan, writable coat not for magnets 24 March 2026');
    expect(says).toContain('Formes, magnetic coating 18 March 2026 not for writing');
  });

  it('leaves a blank for a day that nobody knows', () => {
    const blank = saysOf(careSheet(withOffer(worked, {}), { ready: [], handover: null }, measure));
    expect(blank).toContain('Proofs, steel panels, writable ________________ ________________');
  });

  it('has the words of the user on pens and cleaning, else asks for the list of the maker', () => {
    expect(saysOf(document)).toContain('ask for the maker’s list');
    const own = saysOf(
      careSheet(
        withOffer(worked, { care: { pens: 'Felt pens of batch 12', cleaning: 'Water only' } }),
        inputs,
        measure,
      ),
    );
    expect(own).toContain('Felt pens of batch 12');
    expect(own).toContain('Water only');
    expect(own).not.toContain('maker’s list');
  });

  it('leaves out no lasting caution', () => {
    const of = withOffer(demo, {});
    const says = saysOf(careSheet(of, inputs, measure));
    for (const text of [...lastingCautions(of.job), cautions.overhead]) expect(says).toContain(plain(text));
    expect(says).toContain('pacemakers');
    expect(says).toContain('licensed electrician');
  });
});

it('shows optional lines under the total, not in it, numbered on from the others', () => {
  const options = {
    priceList: [{ id: 'E1', name: 'Magnet rail', unit: 'piece', price: 48.5 }],
    extras: [{ id: 'X1', item: 'E1', quantity: 2, optional: true }],
  };
  const { prices, document } = drawn(withOffer(worked, { ...full, ...options }));
  const words = saysOf(document);
  const total = plain(formatMoney(prices.gross, 'EUR', prices.locale, 'code'));
  expect(prices.gross).toBe(drawn(withOffer(worked, full)).prices.gross);
  expect(words.indexOf('Optional, not in the total')).toBeGreaterThan(words.indexOf('Total'));
  expect(words).toContain(total);
  expect(words).toMatch(/Magnet rail.*97,00/);
  expect(textFaults(document, measure, false)).toEqual([]);
});
