import { plainFigure } from '../look/figures';

/** An amount of a material: two places, of large ones fewer. */
export function amountFigure(amount: number): string {
  return plainFigure(amount, amount >= 100 ? 0 : amount >= 10 ? 1 : 2);
}
