import {
  finishLevels,
  leftOverPolicies,
  offerLineKinds,
  roundingModes,
  siteCostPlaces,
  taxRoundings,
} from '../../core/job/offer-schema';
import type { SettingField } from './setting-fields';

const money = { of: 'money' } as const;
const percent = { of: 'number', most: 100 } as const;
const surcharge = { of: 'number', most: 1000 } as const;
const text = { of: 'text' } as const;
const lines = { of: 'lines' } as const;
const whole = { of: 'number', whole: true, most: 10_000 } as const;

function choice(values: readonly string[], words: Readonly<Record<string, string>> = {}) {
  return { of: 'choice', options: values.map((value) => ({ value, label: words[value] ?? value })) } as const;
}

export interface SettingGroup {
  readonly heading: string;
  readonly fields: readonly SettingField[];
}

/** What one field each is typed for. Percentages of the offer are plain numbers in the job. */
export const offerGroups: readonly SettingGroup[] = [
  {
    heading: 'Every visit and the site',
    fields: [
      { path: 'visits', label: 'Visits', kind: whole, usual: 'by the programme' },
      { path: 'setUp', label: 'Setting up, a visit', kind: money, usual: '0.00' },
      { path: 'travel', label: 'Travel, a visit', kind: money, usual: '0.00' },
      { path: 'parking', label: 'Parking, a visit', kind: money, usual: '0.00' },
      { path: 'protection.rate', label: 'Protection, 1 m²', kind: money, usual: '0.00' },
      { path: 'wasteRemoval', label: 'Waste removal', kind: money, usual: '0.00' },
      { path: 'minimumCharge', label: 'Minimum charge', kind: money, usual: '0.00' },
    ],
  },
  {
    heading: 'Surcharges and how figures are made',
    fields: [
      { path: 'overhead', label: 'Overhead', unit: '%', kind: surcharge, usual: '0' },
      { path: 'markup', label: 'Markup', unit: '%', kind: surcharge, usual: '0' },
      { path: 'discount', label: 'Discount', unit: '%', kind: percent, usual: '0' },
      {
        path: 'leftOver',
        label: 'Left-over material',
        kind: choice(leftOverPolicies, { client: 'client pays and keeps it', firm: 'firm keeps it' }),
        usual: 'client',
      },
      {
        path: 'siteCosts',
        label: 'Visits and site costs stand',
        kind: choice(siteCostPlaces, {
          'own-lines': 'on lines of their own',
          'in-unit-prices': 'within the unit prices',
        }),
        usual: 'own-lines',
      },
      {
        path: 'lines',
        label: 'One line for each',
        kind: choice(offerLineKinds, { job: 'job, all in one' }),
        usual: 'zone',
      },
      {
        path: 'rounding',
        label: 'A half is rounded',
        kind: choice(roundingModes, { 'half-up': 'up', 'half-even': 'to the even one' }),
        usual: 'half-up',
      },
      {
        path: 'taxRounding',
        label: 'Tax is rounded',
        kind: choice(taxRoundings, { 'per-total': 'once, on the total', 'per-line': 'on every line' }),
        usual: 'per-total',
      },
      {
        path: 'locale',
        label: 'Money is written',
        kind: choice(['sv-SE', 'en-GB', 'de-DE', 'de-CH'], {
          'sv-SE': '1 234,50',
          'en-GB': '1,234.50',
          'de-DE': '1.234,50',
          'de-CH': '1’234.50',
        }),
        usual: 'sv-SE',
      },
      { path: 'budgetRange.below', label: 'Budget price, down to', unit: '− %', kind: percent, usual: '10' },
      { path: 'budgetRange.above', label: 'Budget price, up to', unit: '+ %', kind: surcharge, usual: '20' },
    ],
  },
  {
    heading: 'Terms',
    fields: [
      {
        path: 'validityDays',
        label: 'Offer holds for',
        unit: 'days',
        kind: { of: 'number', least: 1, most: 3650, whole: true },
        usual: '30',
      },
      { path: 'deposit', label: 'Deposit', unit: '%', kind: percent, usual: '0' },
      { path: 'retention', label: 'Held back', unit: '%', kind: percent, usual: '0' },
      { path: 'retentionUntil', label: 'Held back until', kind: text },
      {
        path: 'finish.level',
        label: 'Finish of filler',
        kind: choice(['', ...finishLevels], { '': 'not agreed' }),
        usual: '',
      },
      { path: 'finish.prices.Q2', label: 'Level Q2, 1 m²', kind: money, usual: '0.00' },
      { path: 'finish.prices.Q3', label: 'Level Q3, 1 m²', kind: money, usual: '0.00' },
      { path: 'finish.prices.Q4', label: 'Level Q4, 1 m²', kind: money, usual: '0.00' },
      { path: 'finish.rakingLight', label: 'Judged in raking light', kind: { of: 'yes-no' } },
      { path: 'finish.light', label: 'Which light, from where', kind: text },
    ],
  },
  {
    heading: 'Words',
    fields: [
      { path: 'offeredBy', label: 'Offered by: name and address', kind: lines },
      {
        path: 'exclusions',
        label: 'Not in the price; part by semicolons',
        kind: { of: 'texts' },
        usual: 'as usual',
      },
      {
        path: 'duties',
        label: 'What the client sees to; part by semicolons',
        kind: { of: 'texts' },
        usual: 'as usual',
      },
      { path: 'care.pens', label: 'Pens and chalks that were tried', kind: lines },
      { path: 'care.cleaning', label: 'How it is cleaned', kind: lines },
      { path: 'closingWords', label: 'Closing words', kind: lines },
    ],
  },
];
