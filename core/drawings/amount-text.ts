import { formatMm } from './figures';

/** An amount with its unit in one word: `12,5 l`, `3,49 m²`, `2 pieces`. */
export function amountText(amount: number, unit: string): string {
  const words = unit === 'm2' ? 'm²' : unit === 'piece' && amount !== 1 ? 'pieces' : unit;
  return `${formatMm(amount, 2)}\u00A0${words}`;
}
