/** What was typed: a value, or what is wrong with it in words. */
export type Entry<T> = { readonly value: T } | { readonly fault: string };

export function parseText(text: string): Entry<string> {
  return { value: text.trim() };
}

/** A text that may not be empty. */
export function parseName(text: string): Entry<string> {
  const value = text.trim();
  return value ? { value } : { fault: 'Give it a name.' };
}

/** A whole number from 0. */
export function parseCount(text: string): Entry<number> {
  const value = numberOf(text);
  return value !== null && Number.isInteger(value) && value >= 0
    ? { value }
    : { fault: 'Type a whole number, such as 2.' };
}

/** An amount of money from 0, with decimal point or comma. */
export function parsePrice(text: string): Entry<number> {
  const value = numberOf(text);
  return value !== null && value >= 0 ? { value } : { fault: 'Type an amount, such as 6.40.' };
}

/** A part of the stock sheet's width: "1/2", "0.5", "50 %"; from 0, below 1. */
export function parseFraction(text: string): Entry<number> {
  const fault = 'Type a part of the width, such as 1/2 or 33 %.';
  const parts = /^\s*(\d+)\s*\/\s*(\d+)\s*$/.exec(text);
  const percent = /^(.*)%\s*$/.exec(text);
  const value = parts
    ? Number(parts[1]) / Number(parts[2])
    : percent
      ? (numberOf(percent[1]!) ?? NaN) / 100
      : (numberOf(text) ?? NaN);
  return value >= 0 && value < 1 ? { value } : { fault };
}

/** "0", "1/2", "1/3" and the like where it is one; else a decimal fraction. */
export function writeFraction(value: number): string {
  for (const below of [2, 3, 4, 5, 6]) {
    const above = value * below;
    if (Math.round(above) > 0 && Math.abs(above - Math.round(above)) < 1e-6) {
      return `${Math.round(above)}/${below}`;
    }
  }
  return String(Math.round(value * 1000) / 1000);
}

function numberOf(text: string): number | null {
  const tidy = text.trim().replace(/[\s']/g, '').replace(',', '.');
  return /^\d+(\.\d+)?$/.test(tidy) ? Number(tidy) : null;
}

/** A day as ISO 8601 writes it, or nothing. */
export function parseDay(text: string): Entry<string> {
  const value = text.trim();
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(value);
  const month = Number(parts?.[2]);
  const day = Number(parts?.[3]);
  const good =
    value === '' || (month >= 1 && month <= 12 && day >= 1 && day <= daysOf(Number(parts![1]), month));
  return good ? { value } : { fault: 'Type the day as year-month-day, such as 2026-05-31.' };
}

/** A code of ISO 4217. */
export function parseCurrency(text: string): Entry<string> {
  const value = text.trim().toUpperCase();
  return /^[A-Z]{3}$/.test(value)
    ? { value }
    : { fault: 'Type the three letters of the currency, such as EUR.' };
}

function daysOf(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** "6.40"; more decimals only where a price has them. */
export function writePrice(price: number): string {
  const text = String(price);
  return /\.\d{3,}$/.test(text) ? text : price.toFixed(2);
}
