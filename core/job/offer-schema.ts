import * as v from 'valibot';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { identifier, length, text } from './schema-values';

/*
 * What a job is offered for: rates, surcharges, taxes, terms and words. Every field is optional; what is absent is as
 * `core/offer/usual-prices.ts` has it. Money is in the job's currency, rounded to its minor unit on reading.
 */

export const finishLevels = ['Q2', 'Q3', 'Q4'] as const;
/** What prices of an area are given for. */
export const areaUnits = ['m²', 'm2', 'ft²', 'ft2'] as const;
/** What a line of the offer stands for. */
export const offerLineKinds = ['zone', 'wall', 'job'] as const;
export const leftOverPolicies = ['client', 'firm'] as const;
export const siteCostPlaces = ['own-lines', 'in-unit-prices'] as const;
export const roundingModes = ['half-up', 'half-even'] as const;
export const taxRoundings = ['per-total', 'per-line'] as const;

const amount = v.pipe(length, v.minValue(0), v.maxValue(limits.highestPrice));
const price = v.pipe(amount, v.description("In the job's currency, rounded to its minor unit on reading."));
const share = v.pipe(length, v.minValue(0), v.maxValue(100), v.description('Per cent.'));
const surcharge = v.pipe(length, v.minValue(0), v.maxValue(1_000), v.description('Per cent.'));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(10_000));
const list = <const Item extends v.GenericSchema>(item: Item) =>
  v.pipe(v.array(item), v.maxLength(limits.mostOfferEntries));
const tax = v.pipe(identifier, v.description("Id of one of the offer's taxes; absent: the usual one."));

const labourRate = namedFields({
  kind: v.optional(
    v.pipe(text, v.description('Kind of work as the programme names it; absent: every other kind.')),
  ),
  rate: v.pipe(price, v.description('For an hour of one person.')),
});

const access = namedFields({
  name: v.pipe(text, v.minLength(1)),
  price,
  per: v.optional(v.picklist(['job', 'day']), 'job'),
  days: v.optional(v.pipe(count, v.description('Absent: the working days of the programme.'))),
});

const protection = namedFields({
  rate: v.pipe(price, v.description('For a square metre.')),
  area: v.optional(v.pipe(amount, v.description('m²; absent: as much as the zones measure.'))),
});

const provisionalSum = v.pipe(
  namedFields({
    id: identifier,
    words: v.pipe(text, v.minLength(1)),
    amount: price,
    tax: v.optional(tax),
  }),
  v.description('For work that cannot be measured yet, such as levelling the ground.'),
);

const finishPrice = v.optional(
  v.pipe(price, v.description('For a square metre that is filled to this level; absent: within the price.')),
);

const finish = namedFields({
  level: v.optional(v.picklist(finishLevels)),
  prices: v.optional(namedFields({ Q2: finishPrice, Q3: finishPrice, Q4: finishPrice })),
  rakingLight: v.optional(
    v.pipe(v.boolean(), v.description('true: the surface is judged in raking light too.')),
  ),
  light: v.optional(v.pipe(text, v.description('Which light, where it stands, from how far one looks.'))),
});

const taxKind = namedFields({
  id: identifier,
  name: v.pipe(text, v.minLength(1)),
  percent: v.pipe(length, v.minValue(0), v.maxValue(100)),
  reverseCharge: v.optional(
    v.pipe(v.boolean(), v.description('true: the client accounts for the tax; none is charged.')),
  ),
  words: v.optional(v.pipe(text, v.description('What the offer says of it.'))),
});

const listedPrice = namedFields({
  id: identifier,
  name: v.pipe(text, v.minLength(1)),
  unit: v.optional(text, ''),
  price,
  tax: v.optional(tax),
});

const extra = namedFields({
  id: identifier,
  item: v.pipe(identifier, v.description('Id of an entry of the price list.')),
  quantity: v.optional(
    v.pipe(
      amount,
      v.description(
        "In the entry's unit; absent: as much as the zones measure, where the unit is m² or ft².",
      ),
    ),
  ),
  words: v.optional(text),
  optional: v.optional(
    v.pipe(v.boolean(), v.description('true: offered beside the others, not in the total.')),
  ),
});

const lineTax = namedFields({
  line: v.pipe(text, v.description('Id of a line of the offer, such as A/Z1.')),
  tax: identifier,
});

const stage = namedFields({
  name: v.pipe(text, v.minLength(1)),
  percent: share,
});

const care = namedFields({
  pens: v.optional(v.pipe(text, v.description('Pens and chalks that were tried on this finish.'))),
  cleaning: v.optional(text),
});

const budgetRange = v.pipe(
  namedFields({ below: share, above: surcharge }),
  v.description('By how much a budget price may be off, per cent of it.'),
);

export const offerSchema = v.pipe(
  namedFields({
    offeredBy: v.optional(v.pipe(text, v.description('Name and address of whoever offers.'))),
    locale: v.optional(
      v.pipe(
        v.string(),
        v.maxLength(40),
        v.description('How figures are written, as a BCP 47 tag such as en-GB.'),
      ),
    ),
    labourRates: v.optional(list(labourRate)),
    visits: v.optional(v.pipe(count, v.description('Absent: as many as the programme has.'))),
    setUp: v.optional(v.pipe(price, v.description('Of one visit.'))),
    travel: v.optional(v.pipe(price, v.description('Of one visit.'))),
    parking: v.optional(v.pipe(price, v.description('Of one visit.'))),
    access: v.optional(list(access)),
    protection: v.optional(protection),
    wasteRemoval: v.optional(price),
    minimumCharge: v.optional(v.pipe(price, v.description('Before tax and without provisional sums.'))),
    leftOver: v.optional(
      v.pipe(
        v.picklist(leftOverPolicies),
        v.description('Who keeps what is left in opened packs; the client pays whole packs and keeps it.'),
      ),
    ),
    siteCosts: v.optional(v.picklist(siteCostPlaces)),
    provisionalSums: v.optional(list(provisionalSum)),
    finish: v.optional(finish),
    overhead: v.optional(v.pipe(surcharge, v.description('Per cent of costs.'))),
    markup: v.optional(v.pipe(surcharge, v.description('Per cent of costs with overhead.'))),
    discount: v.optional(v.pipe(share, v.description('Per cent of all lines but provisional sums.'))),
    taxes: v.optional(list(taxKind)),
    tax: v.optional(v.pipe(identifier, v.description('Id of the usual tax; absent: the first of `taxes`.'))),
    lineTaxes: v.optional(list(lineTax)),
    rounding: v.optional(v.picklist(roundingModes)),
    taxRounding: v.optional(v.picklist(taxRoundings)),
    lines: v.optional(v.picklist(offerLineKinds)),
    priceList: v.optional(list(listedPrice)),
    extras: v.optional(list(extra)),
    deposit: v.optional(v.pipe(share, v.description('Per cent of the total, when the offer is accepted.'))),
    retention: v.optional(v.pipe(share, v.description('Per cent of the total that is held back.'))),
    retentionUntil: v.optional(text),
    stages: v.optional(
      v.pipe(list(stage), v.description('Shares of what is left after deposit and retention.')),
    ),
    validityDays: v.optional(v.pipe(count, v.minValue(1), v.maxValue(3_650))),
    exclusions: v.optional(list(text)),
    duties: v.optional(v.pipe(list(text), v.description("The client's."))),
    closingWords: v.optional(text),
    care: v.optional(care),
    budgetRange: v.optional(budgetRange),
  }),
  v.description('Rates, terms and words of the offer.'),
);

export type Offer = v.InferOutput<typeof offerSchema>;
export type TaxKind = v.InferOutput<typeof taxKind>;
export type ProvisionalSum = v.InferOutput<typeof provisionalSum>;
export type ListedPrice = v.InferOutput<typeof listedPrice>;
export type OfferExtra = v.InferOutput<typeof extra>;
export type FinishLevel = (typeof finishLevels)[number];
export type OfferLineKind = (typeof offerLineKinds)[number];
