import { minorUnitDigits } from '../../core/job/minor-unit';
import { plainFigure } from '../look/figures';

/** Whole minor units as the screen writes money, with a decimal point: `1234.50`; spaces between thousands. */
export function moneyFigure(amount: number, currency: string): string {
  const digits = minorUnitDigits(currency);
  const [whole = '0', part] = (Math.abs(amount) / 10 ** digits).toFixed(digits).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  return `${amount < 0 ? '−' : ''}${grouped}${part === undefined ? '' : `.${part}`}`;
}

/** An amount of a material: two places, of large ones fewer. */
export function amountFigure(amount: number): string {
  return plainFigure(amount, amount >= 100 ? 0 : amount >= 10 ? 1 : 2);
}
