import { describe, expect, it } from 'vitest';
import { minorUnitDigits, roundToMinorUnit } from '../../core/job/minor-unit';

describe('ISO 4217: digits of the minor unit', () => {
  it.each([
    ['EUR', 2],
    ['USD', 2],
    ['CHF', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['ISK', 0],
    ['BHD', 3],
    ['KWD', 3],
    ['IQD', 3],
    ['CLF', 4],
  ])('%s has %i', (currency, digits) => {
    expect(minorUnitDigits(currency)).toBe(digits);
  });

  it("agrees with the runtime's table, but for currencies whose coins the table of Unicode CLDR leaves out", () => {
    // CLDR gives these the digits in daily use; ISO 4217 gives two, or three for the Iraqi dinar.
    const inDailyUse =
      'AFN ALL COP CUC HUF IDR IQD IRR KPW LAK LBP MGA MMK MRO MUR PKR RSD SLE SLL SOS STD STN SYP TZS UZS YER ZMK';
    const differs = Intl.supportedValuesOf('currency')
      .filter((currency) => inCirculation.includes(currency))
      .filter((currency) => minorUnitDigits(currency) !== runtimeDigits(currency));
    expect(differs.filter((currency) => !inDailyUse.includes(currency))).toEqual([]);
    expect(
      inCirculation.filter((currency) => minorUnitDigits(currency) === runtimeDigits(currency)).length,
    ).toBeGreaterThan(100);
  });
});

describe('rounding to the minor unit', () => {
  it.each([
    [6.405, 'EUR', 6.41],
    [1.005, 'EUR', 1.01],
    [2.675, 'EUR', 2.68],
    [8.345, 'EUR', 8.35],
    [0.1 + 0.2, 'EUR', 0.3],
    [6.4, 'EUR', 6.4],
    [0, 'EUR', 0],
    [1e-9, 'EUR', 0],
    [0.5, 'JPY', 1],
    [99.49, 'JPY', 99],
    [1.0005, 'BHD', 1.001],
    [123456789.995, 'EUR', 123456790],
  ])('%d %s is %d', (amount, currency, rounded) => {
    expect(roundToMinorUnit(amount, currency)).toBe(rounded);
  });
});

function runtimeDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions()
    .maximumFractionDigits!;
}

/** Money that is paid with; the runtime also knows coins of the past and metals, which ISO gives no minor unit. */
const inCirculation = (
  'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY ' +
  'COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS ' +
  'INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP ' +
  'MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR ' +
  'SDG SEK SGD SHP SOS SRD SSP STN SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF ' +
  'XCD XOF XPF YER ZAR ZMW CLF'
).split(' ');
