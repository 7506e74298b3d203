/*
 * The sums that stand on cut lists and on the screen, in words. Decimal comma as in `figures.ts`.
 */

/** A share of one in per cent with one decimal: `2,1 %`. */
export function percentText(share: number): string {
  return `${oneDecimal(share * 100)} %`;
}

/** Kilograms with one decimal: `13,7 kg`. */
export function massText(kilograms: number): string {
  return `${oneDecimal(kilograms)} kg`;
}

/** `1 panel`, `2 panels`. */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function oneDecimal(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1).replace('.', ',');
}
