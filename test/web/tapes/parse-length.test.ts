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
    '12 ft',
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
