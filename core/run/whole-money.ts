import { minorUnitDigits } from '../job/minor-unit';

/** A price of the job (already rounded to the minor unit) as a whole number of minor units, so that sums are exact. */
export function toMinorUnits(amount: number, currency: string): number {
  return Math.round(amount * 10 ** minorUnitDigits(currency));
}

export function fromMinorUnits(amount: number, currency: string): number {
  const digits = minorUnitDigits(currency);
  return Number((amount / 10 ** digits).toFixed(digits));
}

/** `12.80 EUR`, from whole minor units. */
export function moneyInWords(amount: number, currency: string): string {
  return `${fromMinorUnits(amount, currency).toFixed(minorUnitDigits(currency))} ${currency}`;
}
