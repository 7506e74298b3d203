import {
  adhesionTests,
  exposures,
  groundMaterials,
  moistureUnits,
  reactionToFire,
  suctions,
  type Ground,
} from '../../core/job/ground-schema';
import type { Entry } from './parse-entry';

/*
 * The ground as one records it: what can be chosen, and what is read from a field. An empty choice is not recorded.
 */

const blank = { value: '', label: 'not recorded' } as const;
const spelt = (value: string) => value.replaceAll('-', ' ');

export const materialChoices = [
  blank,
  ...groundMaterials.map((value) => ({ value, label: spelt(value) })),
  { value: 'other', label: 'something else' },
];

export const suctionChoices = [blank, ...suctions.map((value) => ({ value, label: value }))];

export const exposureChoices = [
  blank,
  ...exposures.map((value) => ({ value, label: value === 'heated-behind' ? 'heated from behind' : value })),
];

export const moistureChoices = moistureUnits.map((value) => ({
  value,
  label: { 'CM-%': 'CM-% (carbide)', '%': '% by weight', digits: 'digits (electronic)' }[value],
}));

export const adhesionChoices = adhesionTests.map((value) => ({
  value,
  label: {
    'ISO 16276-2': 'tape test, ISO 16276-2 (0 best to 5)',
    'ASTM D3359': 'tape test, ASTM D3359 (5 best to 0)',
    'ISO 4624': 'pull-off N/mm², ISO 4624',
    'EN 1542': 'pull-off N/mm², EN 1542',
  }[value],
}));

export const escapeChoices = [blank, { value: 'yes', label: 'yes' }, { value: 'no', label: 'no' }] as const;

export const isListed = (material: string) => groundMaterials.some((value) => value === material);

/** A figure from 0 with decimal point or comma, or nothing. */
export function parseOptionalFigure(most: number, such: string) {
  return (text: string): Entry<number | undefined> => {
    const tidy = text.trim().replace(',', '.');
    if (tidy === '') return { value: undefined };
    const value = /^\d+(\.\d+)?$/.test(tidy) ? Number(tidy) : NaN;
    return value <= most ? { value } : { fault: `Type a figure from 0 to ${most}, such as ${such}.` };
  };
}

/** The highest result of a test: classes end at 5. */
export function highestResult(test: NonNullable<Ground['adhesion']>['test']): number {
  return test === 'ISO 16276-2' || test === 'ASTM D3359' ? 5 : 100;
}

/** A class of EN 13501-1 or "none", however it is spaced and spelt; or nothing. */
export function parseFire(text: string): Entry<string | undefined> {
  const tidy = text.replace(/\s/g, '').toUpperCase();
  if (tidy === '') return { value: undefined };
  const value = tidy
    .replace(/^NONE$/, 'none')
    .replace(/[-–]?S([123])/, '-s$1')
    .replace(/[,;.-]?D([012])$/, (_, d: string) => (tidy.startsWith('E') ? `-d${d}` : `,d${d}`));
  return reactionToFire.test(value)
    ? { value }
    : { fault: 'Type a class of EN 13501-1, such as B-s1,d0 or A1, or none.' };
}
