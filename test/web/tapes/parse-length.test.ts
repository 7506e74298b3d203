import { describe, expect, it } from 'vitest';
import { parseLength } from '../../../web/tapes/parse-length';

describe('a typed length', () => {
  it.each([
    ['1200', 1200],
    [' 1200 mm ', 1200],
    ['1 200', 1200],
    ['1.2 m', 1200],
    ['1,2 m', 1200],
    ['120 cm', 1200],
    ['120CM', 1200],
    ['.5m', 500],
    ['12.', 12],
    ['0', 0],
    ['-50', -50],
    ['−5 cm', -50],
    ['+3', 3],
    ['340.25', 340.25],
    ['340.254', 340.25],
  ])('%j is %d mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it('minus zero is zero', () => {
    expect(Object.is(parseLength('-0'), 0)).toBe(true);
  });

  it.each([
    '',
    ' ',
    'm',
    '1.200.000',
    '1,2,3',
    '12 fathoms',
    '1e3',
    'twelve',
    '12 m 5',
    '0x10',
    'Infinity',
    '--3',
    '.',
  ])('%j is refused', (text) => {
    expect(parseLength(text)).toBeNull();
  });
});

/* 1 inch is 25.4 mm exactly: international yard and pound agreement, 1959 (from memory); products worked by hand. */
describe('a typed length in feet and inches', () => {
  it.each([
    [`3' 11 1/4"`, 1200.15],
    [`3'-11 1/4"`, 1200.15],
    [`3' 11¼"`, 1200.15],
    [`3’ 11 ¼”`, 1200.15],
    ['3 ft 11.25 in', 1200.15],
    [`3'11`, 1193.8],
    [`3'`, 914.4],
    ['12 ft', 3657.6],
    ['1.5 ft', 457.2],
    [`47 1/4"`, 1200.15],
    [`1/16"`, 1.59],
    [`½"`, 12.7],
    ['10in', 254],
    [`0' 6"`, 152.4],
    [`-2' 6"`, -762],
    [`2' 1/2"`, 622.3],
    [`39,37"`, 1000],
  ])('%j is %d mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it.each([
    `'`,
    `"`,
    `3' 12"`,
    `3' 14`,
    '1/4',
    '11 1/4',
    `5/4"`,
    `1/0"`,
    `3" 4'`,
    `3' 4' 5"`,
    `3' "`,
    'ft',
    `1 2 3"`,
  ])('%j is refused', (text) => {
    expect(parseLength(text)).toBeNull();
  });
});
