import { describe, expect, it } from 'vitest';
import {
  parseCount,
  parseCurrency,
  parseDay,
  parseFraction,
  parsePrice,
  writeFraction,
  writePrice,
} from '../../../web/schedule/parse-entry';
import { parseAllowance, parsePlace, parseSize, writeLength } from '../../../web/schedule/parse-sizes';

describe('lengths in the schedule', () => {
  it.each([
    [parsePlace('-120'), -120],
    [parsePlace('1,2 m'), 1200],
    [parseSize('120 cm'), 1200],
    [parseSize('12,5'), 12.5],
    [parseAllowance('0'), 0],
  ])('%#', (entry, value) => {
    expect(entry).toEqual({ value });
  });

  it.each([parseSize('0'), parseSize('-5'), parseAllowance('-1'), parsePlace('wide'), parseSize('')])(
    'refuses with a sentence, %#',
    (entry) => {
      expect('fault' in entry && entry.fault).toMatch(/^Type a .*such as 1200, 1\.2 m or 120 cm\.$/);
    },
  );

  it('asks where a comma could part thousands or decimals', () => {
    expect(parseSize('1,200')).toEqual({
      fault: '1,200 could be 1200 or 1.2; leave the “,” out, or write m.',
    });
    expect(parseSize('1,200 m')).toEqual({ value: 1200 });
  });

  it('are written as the drawings write them', () => {
    expect([1200, 926.5, -0.25, 0].map(writeLength)).toEqual(['1200', '926.5', '−0.25', '0']);
  });

  it('can be typed again as they were written', () => {
    for (const length of [1200, 926.5, -0.25, 0]) {
      expect(parsePlace(writeLength(length))).toEqual({ value: length });
    }
  });
});

describe('stagger', () => {
  it.each([
    ['1/2', 0.5],
    ['50 %', 0.5],
    ['0,25', 0.25],
    ['0', 0],
    [' 1 / 3 ', 1 / 3],
  ])('%j', (text, value) => {
    expect(parseFraction(text)).toEqual({ value });
  });

  it.each(['1', '100 %', '3/2', '1/0', '-0.5', 'half', ''])('refuses %j', (text) => {
    expect(parseFraction(text)).toHaveProperty('fault');
  });

  it('is written as a plain fraction where it is one', () => {
    expect([0, 0.5, 1 / 3, 0.75, 0.37].map(writeFraction)).toEqual(['0', '1/2', '1/3', '3/4', '0.37']);
  });
});

describe('prices and counts', () => {
  it('take comma and point', () => {
    expect(parsePrice('6,40')).toEqual({ value: 6.4 });
    expect(parsePrice("1'200.50")).toEqual({ value: 1200.5 });
  });

  it('refuse what is below nothing or no number', () => {
    expect(parsePrice('-1')).toHaveProperty('fault');
    expect(parseCount('1.5')).toHaveProperty('fault');
    expect(parseCount('')).toHaveProperty('fault');
  });

  it('are written with at least two decimals', () => {
    expect([6.4, 0, 12.345].map(writePrice)).toEqual(['6.40', '0.00', '12.345']);
  });
});

describe('days and currencies', () => {
  it.each(['2026-05-31', '2028-02-29', ''])('takes %j', (text) => {
    expect(parseDay(text)).toEqual({ value: text });
  });

  it.each(['2026-02-29', '2026-13-01', '31.5.2026', '2026-5-1'])('refuses %j', (text) => {
    expect(parseDay(text)).toHaveProperty('fault');
  });

  it('takes ISO 4217 codes in either case', () => {
    expect(parseCurrency(' chf ')).toEqual({ value: 'CHF' });
    expect(parseCurrency('€')).toHaveProperty('fault');
  });
});
