import { describe, expect, it } from 'vitest';
import { readLength } from '../../../web/tapes/read-length';

const read = (text: string) => readLength(text, 0.01, 'Type the width of the wall');

describe('a length typed into a field', () => {
  it.each(['1,200', '1.200', ' 12,500 mm', '-1,200'])(
    '%j could be thousands or decimals: asked back',
    (text) => {
      expect(read(text)).toHaveProperty('fault', expect.stringMatching(/could be \d+ or \d+\.\d/));
    },
  );

  it.each([
    ['1200', 1200],
    ['1,2 m', 1200],
    ['1,200 m', 1200],
    ['1,25', 1.25],
    ['0,125', 0.13],
    ['1200,5', 1200.5],
  ])('%j is %d mm', (text, mm) => {
    expect(read(text)).toEqual({ value: mm });
  });

  it('says what is wanted where nothing can be read, or what is read is too little', () => {
    const fault = 'Type the width of the wall, such as 1200, 1.2 m or 120 cm.';
    expect(read('wide')).toEqual({ fault });
    expect(read('0')).toEqual({ fault });
    expect(readLength('-5', -Infinity, 'Type a distance')).toEqual({ value: -5 });
  });
});
