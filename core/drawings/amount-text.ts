import { formatMm } from './figures';

/** An amount with its unit in one word: `12,5 l`, `3,49 m²`. */
export function amountText(amount: number, unit: string): string {
  return `${formatMm(amount, 2)}\u00A0${unit === 'm2' ? 'm²' : unit}`;
}
