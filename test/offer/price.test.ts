import { describe, expect, it } from 'vitest';
import { priceOffer } from '../../core/offer/price';
import { inputs, offeredJob } from './offered-job';

const rated = { labourRates: [{ kind: 'bond', rate: 60 }, { rate: 50 }] };
const vat = { taxes: [{ id: 'V', name: 'VAT', percent: 20 }] };

function amountsOf(offer: Parameters<typeof offeredJob>[0], currency?: string): [string, number][] {
  return priceOffer(offeredJob(offer, currency), inputs).lines.map(({ id, amount }) => [id, amount]);
}

describe('the price of a job, reckoned by hand', () => {
  /*
   * Labour: bond 4 h × 60 = 240 to A/Z1; coat 5 h × 50 = 250: 2/5 A/Z2, 3/5 B/Z1; protect 0.9 h × 50 = 45 by
   * areas 2 : 1 : 1.5 = 20, 10, 15. Adhesive 90 to A/Z1; sealer 30 by 0.2 : 0.1 : 0.1 = 15, 7.50, 7.50; tape 9 by area
   * = 4, 2, 3. So A/Z1 240 + 20 + 90 + 15 + 4 = 369; A/Z2 100 + 10 + 7.50 + 2 = 119.50; B/Z1 150 + 15 + 7.50 + 3 = 175.50.
   */
  it('puts labour and materials on the zones that cause them, and what none causes by area', () => {
    const { lines, net, internal } = priceOffer(offeredJob(rated), inputs);
    expect(lines.map(({ id, cost }) => [id, cost])).toEqual([
      ['A/Z1', 36_900],
      ['A/Z2', 11_950],
      ['B/Z1', 17_550],
    ]);
    expect(lines.map(({ quantity, unitPrice }) => [quantity, unitPrice])).toEqual([
      [2, 18_450],
      [1, 11_950],
      [1.5, 11_700],
    ]);
    expect(net).toBe(66_400);
    expect(internal.direct).toBe(66_400);
    expect(internal.roundedAway).toBe(0);
  });

  it('adds overhead and markup one upon the other: 369.00 × 1.1 × 1.2 = 487.08, for 2 m² 243.54 each', () => {
    const { lines, internal } = priceOffer(offeredJob({ ...rated, overhead: 10, markup: 20 }), inputs);
    expect(lines[0]).toMatchObject({ unitPrice: 24_354, amount: 48_708 });
    expect(internal.overhead).toBe(6_640);
    expect(internal.markup).toBe(14_608);
    expect(internal.result).toBe(lines.reduce((sum, { amount }) => sum + amount, 0) - 66_400 - 6_640);
  });

  it('charges whole packs and leaves the rest to the client, or only what is used and keeps the rest', () => {
    const whole = priceOffer(offeredJob(rated), inputs).internal.costs;
    const used = priceOffer(offeredJob({ ...rated, leftOver: 'firm' }), inputs).internal.costs;
    const materials = (costs: typeof whole) =>
      costs.filter(({ kind }) => kind === 'material').map(({ cost }) => cost);
    expect(materials(whole)).toEqual([9_000, 3_000, 900]);
    expect(materials(used)).toEqual([6_750, 1_200, 900]);
  });

  it('has one line for a wall or for the job, where that is chosen', () => {
    expect(amountsOf({ ...rated, lines: 'wall' })).toEqual([
      // 488.50 on 3 m² are 162.83 a square metre.
      ['A', 48_849],
      ['B', 17_550],
    ]);
    // 664.00 on 4.5 m² are 147.56 a square metre.
    expect(amountsOf({ ...rated, lines: 'job' })).toEqual([['job', 66_402]]);
  });

  const site = {
    setUp: 30,
    travel: 20,
    access: [
      { name: 'Tower', price: 25, per: 'day' as const },
      { name: 'Lift', price: 80, per: 'job' as const },
    ],
    protection: { rate: 2 },
    wasteRemoval: 40,
  };

  it('charges visits, access, protection and waste on lines of their own, with markup', () => {
    expect(amountsOf({ ...rated, ...site, markup: 10 }).slice(3)).toEqual([
      ['visits', 16_500],
      ['access 1', 11_000],
      ['access 2', 8_800],
      // 4.4 m² as built at 2.00, a tenth more; 2.20 each.
      ['protection', 968],
      ['waste', 4_400],
    ]);
  });

  it('or spreads them over the unit prices, and no cost is lost', () => {
    const { lines, internal } = priceOffer(
      offeredJob({ ...rated, ...site, siteCosts: 'in-unit-prices' }),
      inputs,
    );
    expect(lines.map(({ kind }) => kind)).toEqual(['work', 'work', 'work']);
    expect(lines.reduce((sum, { cost }) => sum + cost, 0)).toBe(internal.direct);
    expect(internal.direct).toBe(66_400 + 15_000 + 10_000 + 8_000 + 880 + 4_000);
  });

  it('takes visits and days of access as typed before those of the programme', () => {
    const typed = {
      ...site,
      visits: 1,
      access: [{ name: 'Tower', price: 25, per: 'day' as const, days: 2 }],
    };
    const lines = new Map(amountsOf({ ...rated, ...typed }));
    expect(lines.get('visits')).toBe(5_000);
    expect(lines.get('access 1')).toBe(5_000);
  });

  const extras = {
    priceList: [{ id: 'E1', name: 'Shelf', unit: 'piece', price: 35 }],
    extras: [{ id: 'X1', item: 'E1', quantity: 3, words: 'oak' }],
  };
  const provisionalSums = [{ id: 'P1', words: 'levelling the ground', amount: 200 }];

  it('reduces all lines but provisional sums by the discount', () => {
    const { lines, net } = priceOffer(
      offeredJob({ ...rated, ...extras, provisionalSums, discount: 10 }),
      inputs,
    );
    expect(lines.slice(3).map(({ id, amount }) => [id, amount])).toEqual([
      ['X1', 10_500],
      ['discount', -7_690],
      ['P1', 20_000],
    ]);
    expect(net).toBe(66_400 + 10_500 - 7_690 + 20_000);
  });

  it('keeps optional lines out of every sum, and out of the discount', () => {
    const without = priceOffer(offeredJob({ ...rated, discount: 10 }), inputs);
    const optional = { ...extras, extras: [{ ...extras.extras[0]!, optional: true }] };
    const offer = priceOffer(offeredJob({ ...rated, ...optional, discount: 10 }), inputs);
    expect(offer.options).toMatchObject([{ id: 'X1', title: 'Shelf: oak', amount: 10_500, kind: 'option' }]);
    expect(offer.lines).toEqual(without.lines);
    expect([offer.net, offer.gross, offer.payments]).toEqual([without.net, without.gross, without.payments]);
    expect(offer.internal.result).toBe(without.internal.result);
  });

  it('counts a fixed price by area over all zones as they are measured, in its own unit', () => {
    const fixed = (unit: string) =>
      priceOffer(
        offeredJob({
          ...rated,
          priceList: [{ id: 'E1', name: 'Protective film', unit, price: 12.5 }],
          extras: [{ id: 'X1', item: 'E1' }],
        }),
        inputs,
      ).lines.find(({ id }) => id === 'X1');
    // 2.00 + 1.00 + 1.50 m²; 4.5 / 0.3048² = 48.4376 ft².
    expect(fixed('m²')).toMatchObject({ quantity: 4.5, unit: 'm²', unitPrice: 1_250, amount: 5_625 });
    expect(fixed('ft²')).toMatchObject({ quantity: 48.44, amount: 60_550 });
  });

  it('tops up to the least charge with a line of its own, after the discount and without provisional sums', () => {
    const { lines, net } = priceOffer(
      offeredJob({ ...rated, provisionalSums, discount: 50, minimumCharge: 500 }),
      inputs,
    );
    expect(lines.find(({ kind }) => kind === 'minimum')?.amount).toBe(50_000 - 33_200);
    expect(net).toBe(70_000);
    expect(amountsOf({ ...rated, minimumCharge: 500 }).map(([id]) => id)).not.toContain('minimum');
  });

  it('never falls below nothing: all of it may be given away, no more', () => {
    expect(priceOffer(offeredJob({ ...rated, discount: 100 }), inputs).net).toBe(0);
  });

  it('takes each tax on its lines, the discount shared out among them', () => {
    const { taxes, gross, net } = priceOffer(
      offeredJob({
        ...rated,
        ...extras,
        discount: 10,
        taxes: [
          { id: 'V', name: 'VAT', percent: 20 },
          { id: 'L', name: 'VAT', percent: 5 },
        ],
        lineTaxes: [{ line: 'B/Z1', tax: 'L' }],
      }),
      inputs,
    );
    // A/Z1 369 + A/Z2 119.50 + shelf 105 = 593.50, less a tenth 534.15; B/Z1 175.50, less a tenth 157.95.
    expect(taxes.map(({ base, amount }) => [base, amount])).toEqual([
      [53_415, 10_683],
      [15_795, 790],
    ]);
    expect(gross).toBe(net + 10_683 + 790);
  });

  it('charges no tax that the client accounts for, and says so', () => {
    const { taxes, gross, net } = priceOffer(
      offeredJob({ ...rated, taxes: [{ id: 'R', name: 'VAT', percent: 20, reverseCharge: true }] }),
      inputs,
    );
    expect(taxes).toMatchObject([{ base: net, amount: 0 }]);
    expect(taxes[0]!.words).toBe(
      'VAT 20 %. Reverse charge: the client accounts for this tax to the tax authority.',
    );
    expect(gross).toBe(net);
  });

  it('asks for the total in a deposit, stages of the rest and a retention', () => {
    const { payments, gross } = priceOffer(
      offeredJob({
        ...rated,
        ...vat,
        deposit: 30,
        retention: 5,
        retentionUntil: 'a year after handover',
        stages: [{ name: 'When the steel is up', percent: 40 }],
      }),
      inputs,
    );
    expect(gross).toBe(79_680);
    expect(payments).toEqual([
      { name: 'Deposit, when this offer is accepted', amount: 23_904, basis: '30 % of the total' },
      { name: 'When the steel is up', amount: 20_717, basis: '40 % of the rest' },
      { name: 'On completion', amount: 31_075, basis: '60 % of the rest' },
      { name: 'Retention, until a year after handover', amount: 3_984, basis: '5 % of the total, held back' },
    ]);
  });

  it('refuses stages that come to more than all, and asks for all on completion', () => {
    const stages = [70, 50].map((percent, i) => ({ name: `Stage ${i + 1}`, percent }));
    const { payments, findings, gross } = priceOffer(offeredJob({ ...rated, ...vat, stages }), inputs);
    expect(payments).toMatchObject([{ name: 'On completion', amount: gross }]);
    expect(findings.map(({ text }) => text)).toEqual([
      'The payment stages of the offer come to 120 %; lower them by 20 %, until then all that is left is due on completion.',
    ]);
  });

  it('stands open for as many days as it says, from the date of the job', () => {
    expect(priceOffer(offeredJob({ validityDays: 28 }), inputs).validUntil).toBe('2026-03-30');
    expect(priceOffer({ ...offeredJob(), date: 'soon' }, inputs).validUntil).toBeNull();
  });
});

describe('what a price leaves out', () => {
  it('is said: hours without a rate, materials without a price, no tax', () => {
    const blank = { ...inputs, materials: inputs.materials.map((one) => ({ ...one, cost: null })) };
    const texts = priceOffer(offeredJob(), blank).findings.map(({ text }) => text);
    expect(texts).toEqual([
      '9.9 hours of work have no rate and are priced at nothing (bond, coat, protect): give the offer labour rates.',
      'Materials without a price are offered for nothing: Panel adhesive, 1 × 6 kg, Sealer, 1 × 2.5 l, Masking tape, 2 pieces; give their packs prices.',
      'The offer has no tax: its total is before tax; give it one, or say that none is due.',
    ]);
  });

  it('is nothing where all is given', () => {
    expect(priceOffer(offeredJob({ ...rated, ...vat }), inputs).findings).toEqual([]);
  });

  it('is said of a tax for a line that is not there', () => {
    const lineTaxes = [{ line: 'A/Z9', tax: 'V' }];
    const { findings } = priceOffer(offeredJob({ ...rated, ...vat, lineTaxes }), inputs);
    expect(findings.map(({ code, level }) => [code, level])).toEqual([['offer-stray-tax', 'note']]);
    expect(findings[0]!.text).toContain('“A/Z9”');
  });

  it('is said where the firm would pay for the work itself', () => {
    const { findings } = priceOffer(offeredJob({ ...rated, ...vat, discount: 25 }), inputs);
    expect(findings.map(({ text }) => text)).toEqual([
      'The price is €166.00 below costs and overhead: raise the markup or lower the discount.',
    ]);
  });

  it('is no reason to lose a cost: a job without zones is one lump sum', () => {
    const none = { ...inputs, zones: [], labour: [{ kind: 'protect', hours: 2 }], materials: [] };
    const { lines, net } = priceOffer({ ...offeredJob(rated), walls: [] }, none);
    expect(net).toBe(10_000);
    expect(lines).toMatchObject([{ id: 'job', quantity: 1, unit: '' }]);
  });
});

describe('every figure says how it comes about', () => {
  it('to the client without a cost, to the firm with all of them', () => {
    const measured = { ...inputs, measuredBy: 'DIN 18363: openings above 2.5 m² out' };
    const [first] = priceOffer(offeredJob({ ...rated, overhead: 10, markup: 20 }), measured).lines;
    expect(first!.basis).toBe('Measured by DIN 18363; true area 1.90\u00A0m².');
    expect(first!.costBasis).toBe('labour 260.00, materials 109.00; overhead 10 %, then markup 20 %.');
    expect(priceOffer(offeredJob(rated), measured).measured).toBe(
      'Areas are measured by DIN 18363: openings above 2.5 m² out.',
    );
    expect(priceOffer(offeredJob(rated), inputs).measured).toBe('Areas are measured as built.');
    const { costs } = priceOffer(offeredJob(rated), inputs).internal;
    expect(costs.find(({ name }) => name === 'bond')?.basis).toBe('4 h × 60.00');
  });
});

describe('levels of finish with a price of their own', () => {
  const finish = { level: 'Q3', prices: { Q3: 12.5, Q4: 20 } } as const;

  it('are lines by the area of the zones that are filled to them: 3 m² × 12.50 and 1.5 m² × 20.00', () => {
    const job = offeredJob({ finish });
    // A/Z1 and A/Z2 as the offer says, B/Z1 by itself; all of them are filled or smoothed.
    const raised = {
      ...job,
      walls: job.walls.map((wall) =>
        wall.id === 'B'
          ? { ...wall, zones: wall.zones.map((zone) => ({ ...zone, finishLevel: 'Q4' as const })) }
          : wall,
      ),
    };
    const lines = priceOffer(raised as typeof job, inputs).lines.filter(({ id }) => id.startsWith('finish'));
    expect(lines.map(({ id, quantity, amount }) => [id, quantity, amount])).toEqual([
      ['finish Q3', 3, 3_750],
      ['finish Q4', 1.5, 3_000],
    ]);
  });

  it('are none without a level or without a price', () => {
    expect(
      amountsOf({ finish: { level: 'Q2', prices: { Q3: 12.5 } } }).filter(([id]) => id.startsWith('finish')),
    ).toEqual([]);
    expect(amountsOf({ finish: { prices: { Q3: 12.5 } } }).filter(([id]) => id.startsWith('finish'))).toEqual(
      [],
    );
  });
});
