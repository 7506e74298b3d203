import fc from 'fast-check';
import type { Offer } from '../../core/job/offer-schema';
import type { OfferInputs } from '../../core/offer/offer-inputs';
import { inputs } from './offered-job';

const major = fc.integer({ min: 0, max: 500_000 }).map((cents) => Number(`${cents}e-2`));
const percent = (most: number) => fc.integer({ min: 0, max: most * 100 }).map((n) => Number(`${n}e-2`));
const optional = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });

/** Offers of every kind, as a file may hold them. */
export const offers: fc.Arbitrary<Partial<Offer>> = fc
  .record({
    labourRates: fc.array(fc.record({ kind: optional(fc.constantFrom('bond', 'coat')), rate: major })),
    setUp: optional(major),
    travel: optional(major),
    visits: optional(fc.nat(20)),
    access: optional(
      fc.array(
        fc.record({
          name: fc.constant('Tower'),
          price: major,
          per: fc.constantFrom('job' as const, 'day' as const),
        }),
        { maxLength: 3 },
      ),
    ),
    protection: optional(fc.record({ rate: major, area: optional(percent(300)) })),
    wasteRemoval: optional(major),
    minimumCharge: optional(major),
    leftOver: fc.constantFrom('client' as const, 'firm' as const),
    siteCosts: fc.constantFrom('own-lines' as const, 'in-unit-prices' as const),
    provisionalSums: fc.uniqueArray(
      fc.record({ id: fc.constantFrom('P1', 'P2'), words: fc.constant('levelling'), amount: major }),
      { selector: ({ id }) => id },
    ),
    overhead: percent(60),
    markup: percent(200),
    discount: percent(100),
    taxes: fc.tuple(percent(30), percent(30), fc.boolean()).map(([a, b, reverseCharge]) => [
      { id: 'V', name: 'VAT', percent: a },
      { id: 'L', name: 'VAT', percent: b, reverseCharge },
    ]),
    tax: optional(fc.constantFrom('V', 'L')),
    lineTaxes: fc.subarray([
      { line: 'A/Z1', tax: 'L' },
      { line: 'visits', tax: 'L' },
      { line: 'A', tax: 'L' },
    ]),
    rounding: fc.constantFrom('half-up' as const, 'half-even' as const),
    taxRounding: fc.constantFrom('per-total' as const, 'per-line' as const),
    lines: fc.constantFrom('zone' as const, 'wall' as const, 'job' as const),
    priceList: fc.constant([{ id: 'E1', name: 'Shelf', unit: 'piece', price: 35.35 }]),
    extras: fc.subarray([{ id: 'X1', item: 'E1', quantity: 2.345 }]),
    deposit: percent(100),
    retention: percent(100),
    stages: fc.array(fc.record({ name: fc.constant('Stage'), percent: percent(60) }), { maxLength: 3 }),
  })
  .map((offer) => JSON.parse(JSON.stringify(offer)) as Partial<Offer>);

export const currencies = fc.constantFrom('EUR', 'JPY', 'KWD');

/** The zones of the offered job with other areas, hours and costs. */
export const offerInputs: fc.Arbitrary<OfferInputs> = fc
  .record({
    areas: fc.array(fc.integer({ min: 0, max: 1e12 }), { minLength: 3, maxLength: 3 }),
    hours: fc.array(percent(40), { minLength: 4, maxLength: 4 }),
    costs: fc.array(fc.option(fc.nat(5_000_000)), { minLength: 3, maxLength: 3 }),
    visits: fc.nat(10),
    workingDays: fc.nat(20),
  })
  .map(({ areas, hours, costs, visits, workingDays }) => ({
    ...inputs,
    zones: inputs.zones.map((zone, i) => ({ ...zone, trueArea: areas[i]!, offerArea: areas[i]! })),
    labour: inputs.labour.map((task, i) => ({ ...task, hours: hours[i]! })),
    materials: inputs.materials.map((material, i) => ({ ...material, cost: costs[i]! })),
    visits,
    workingDays,
  }));
