/*
 * Digits after the decimal point of a currency's minor unit, where they are not two. Source: ISO 4217:2015,
 * list one (from memory; the test compares it with the runtime's own table). A table, because the runtimes'
 * tables are not ISO's: some round the Iraqi dinar to whole dinars as shops do.
 */
const digitsOfMinorUnit: Readonly<Record<string, number>> = {
  ...eachWith(0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'),
  ...eachWith(3, 'BHD IQD JOD KWD LYD OMR TND'),
  ...eachWith(4, 'CLF UYW'),
};

/** 2 for EUR, 0 for JPY, 3 for BHD; 2 for a code that is not listed. */
export function minorUnitDigits(currency: string): number {
  return Object.hasOwn(digitsOfMinorUnit, currency) ? digitsOfMinorUnit[currency]! : 2;
}

/**
 * An amount of money rounded to the currency's minor unit, a half away from zero, as it is written in decimals
 * (1.005 EUR is 1.01, though its binary value lies just below).
 *
 * @example roundToMinorUnit(6.405, 'EUR') // 6.41
 */
export function roundToMinorUnit(amount: number, currency: string): number {
  const digits = minorUnitDigits(currency);
  const rounded = Math.round(shiftPoint(Math.abs(amount), digits));
  return Math.sign(amount) * shiftPoint(rounded, -digits) + 0;
}

/** Moves the decimal point in the written number, so that no binary rounding enters. */
function shiftPoint(amount: number, places: number): number {
  const [digits, exponent = '0'] = String(amount).split('e');
  return Number(`${digits}e${Number(exponent) + places}`);
}

function eachWith(digits: number, codes: string): Record<string, number> {
  return Object.fromEntries(codes.split(' ').map((code) => [code, digits]));
}
