import { describe, expect, it } from 'vitest';
import { jobDifferences } from '../../core/job/differences/differences';
import { readJobObject } from '../../core/job/read';
import { writeJob } from '../../core/job/write';

const file = (offer: unknown, currency = 'EUR') => ({
  format: 'lodeplan-job',
  version: 1,
  name: 'Studio',
  currency,
  offer,
});

function faultsOf(offer: unknown): string[] {
  return readJobObject(file(offer)).findings.map(({ text }) => text);
}

describe('the offer of a job file', () => {
  it('may be absent, empty or hold fields that nobody knows', () => {
    expect(readJobObject(file(undefined)).job).not.toBeNull();
    expect(readJobObject(file({})).job!.offer).toEqual({});
    expect(readJobObject(file({ letterhead: { colour: 'blue' } })).job!.offer).toEqual({
      letterhead: { colour: 'blue' },
    });
  });

  it('rounds every price to the minor unit of the currency on reading', () => {
    const offer = {
      labourRates: [{ rate: 52.005 }],
      setUp: 10.555,
      travel: 1.004,
      parking: 0.125,
      wasteRemoval: 3.3333,
      minimumCharge: 99.999,
      access: [{ name: 'Tower', price: 12.345 }],
      protection: { rate: 1.115, area: 12.345 },
      provisionalSums: [{ id: 'P1', words: 'Levelling', amount: 100.006 }],
      priceList: [{ id: 'E1', name: 'Shelf', price: 7.777 }],
    };
    const read = readJobObject(file(offer)).job!.offer!;
    expect(read).toMatchObject({
      labourRates: [{ rate: 52.01 }],
      setUp: 10.56,
      travel: 1,
      parking: 0.13,
      wasteRemoval: 3.33,
      minimumCharge: 100,
      access: [{ price: 12.35 }],
      protection: { rate: 1.12, area: 12.345 },
      provisionalSums: [{ amount: 100.01 }],
      priceList: [{ price: 7.78 }],
    });
    expect(readJobObject(file(offer, 'JPY')).job!.offer!.setUp).toBe(11);
    expect(readJobObject(file(offer, 'KWD')).job!.offer!.access![0]!.price).toBe(12.345);
  });

  it('is written and read again as it was', () => {
    const offer = { discount: 3, taxes: [{ id: 'T1', name: 'VAT', percent: 20 }], tax: 'T1' };
    const { job } = readJobObject(file(offer));
    expect(readJobObject(JSON.parse(writeJob(job!))).job).toEqual(job);
  });

  it('says what, where and how to mend it, in the unit of the field', () => {
    expect(faultsOf({ discount: 120 })).toEqual(['offer.discount is 120; give at most 100 per cent.']);
    expect(faultsOf({ travel: -1 })).toEqual(["offer.travel is -1; give 0 or more in the job's currency."]);
    expect(faultsOf({ labourRates: [{ rate: '52' }] })).toEqual([
      'offer.labourRates[0].rate is "52"; give a number in the job\'s currency, without quotes.',
    ]);
    expect(faultsOf({ finish: { level: 'Q9' } })[0]).toContain('give "Q2" or "Q3" or "Q4"');
  });

  it('refuses ids that name two things or nothing', () => {
    const taxes = [
      { id: 'T1', name: 'VAT', percent: 20 },
      { id: 'T1', name: 'VAT', percent: 5 },
    ];
    expect(faultsOf({ taxes })[0]).toContain('which entry 1 of taxes has already');
    expect(faultsOf({ tax: 'T9' })[0]).toContain('no tax of the offer has that id; it has none');
    const piece = [{ id: 'E1', name: 'Shelf', unit: 'piece', price: 35 }];
    expect(faultsOf({ priceList: piece, extras: [{ id: 'X1', item: 'E1' }] })[0]).toContain(
      'is priced by the piece, and only a price by m² or ft² can do without one; give the line a quantity',
    );
    expect(
      faultsOf({ priceList: [{ ...piece[0]!, unit: 'm²' }], extras: [{ id: 'X1', item: 'E1' }] }),
    ).toEqual([]);
    expect(faultsOf({ extras: [{ id: 'X1', item: 'E9', quantity: 1 }] })[0]).toContain(
      'no entry of the price list has that id',
    );
    expect(faultsOf({ lineTaxes: [{ line: 'A/Z1', tax: 'T2' }], taxes: taxes.slice(0, 1) })[0]).toContain(
      'the offer has T1',
    );
  });

  it('is told where two jobs differ in it', () => {
    const [before, after] = [file({ discount: 3 }), file({ discount: 5 })].map(
      (one) => readJobObject(one).job!,
    );
    expect(jobDifferences(before!, after!).map(({ text }) => text)).toEqual([
      'The offer: discount 5 % instead of 3 %.',
    ]);
  });
});
