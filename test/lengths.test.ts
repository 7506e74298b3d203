import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthInWords, lengthUnits, sentenceInUnits, writeLength } from '../core/lengths';
import { parseLength } from '../web/tapes/parse-length';

describe('NIST SP 811 (2008), B.8: 1 foot = 0.3048 m, 1 inch = 25.4 mm, both exactly', () => {
  it.each([
    [304.8, `1'-0"`],
    [25.4, `1"`],
    [1219.2, `4'-0"`],
    [2438.4, `8'-0"`],
    [914.4, `3'-0"`],
  ])('%f mm is %s', (mm, text) => expect(writeLength(mm, 'ft-in')).toBe(text));
});

describe('a length in the unit of the job', () => {
  it.each([
    [1926.5, 'mm', '1926.5'],
    [1926.5, 'cm', '192.65'],
    [1926.5, 'm', '1.9265'],
    [1200, 'm', '1.20'],
    [0, 'm', '0.00'],
    [0, 'ft-in', '0"'],
    [-1200, 'm', '−1.20'],
    [-31.75, 'ft-in', '−1 1/4"'],
    [1196.975, 'ft-in', `3'-11 1/8"`],
    [1200, 'ft-in', `3'-11 1/4"`],
    [12.7, 'ft-in', '1/2"'],
    [317.5, 'ft-in', `1'-0 1/2"`],
    [304.7, 'ft-in', `1'-0"`],
    [3.175, 'ft-in', '1/8"'],
  ] as const)('%f in %s: %s', (mm, units, text) => expect(writeLength(mm, units)).toBe(text));

  it('stays in mm where it is too fine for a tape of that unit', () => {
    expect(writeLength(0.5, 'm')).toBe('0.5 mm');
    expect(writeLength(0.5, 'cm')).toBe('0.5 mm');
    expect(writeLength(5, 'ft-in')).toBe('5 mm');
    expect(lengthInWords(0.5, 'm')).toBe('0.5 mm');
    expect(writeLength(0.5, 'mm')).toBe('0.5');
  });

  it('has its unit in a sentence', () => {
    expect(lengthUnits.map((units) => lengthInWords(1200, units))).toEqual([
      '1200 mm',
      '120 cm',
      '1.20 m',
      `3'-11 1/4"`,
    ]);
  });

  it('typed back in mm, cm or m is the same length; in feet and inches within half a sixteenth', () => {
    const length = fc.integer({ min: -4e7, max: 4e7 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(length, fc.constantFrom(...lengthUnits), (mm, units) => {
        const read = parseLength(writeLength(mm, units), units)!;
        expect(Math.abs(read - mm)).toBeLessThanOrEqual(units === 'ft-in' ? 25.4 / 32 + 0.006 : 1e-9);
        expect(writeLength(read, units)).toBe(writeLength(mm, units));
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe('a sentence in the unit of the job', () => {
  it.each([
    [
      'The tape says 1926.5 mm from corner 1 to corner 2.',
      'm',
      'The tape says 1.9265 m from corner 1 to corner 2.',
    ],
    ['Rack piece R1 is 300 × 200 mm.', 'cm', 'Rack piece R1 is 30 cm × 20 cm.'],
    ['instead of 508 and 254 mm, which', 'ft-in', `instead of 1'-8" and 10", which`],
    ['passes door D1 at (508, −254) by 25.4 mm', 'ft-in', `passes door D1 at (1'-8", −10") by 1"`],
    ['is now from (508, -254) to (0, 254)', 'ft-in', `is now from (1'-8", −10") to (0", 10")`],
    ['Steel of 0.5 mm, 12 mm² left', 'm', 'Steel of 0.5 mm, 12 mm² left'],
    ['Zone Z1 has 3 panels and S2 has 4.', 'ft-in', 'Zone Z1 has 3 panels and S2 has 4.'],
  ] as const)('%s in %s', (text, units, wanted) => expect(sentenceInUnits(text, units)).toBe(wanted));

  it('rounds up what is asked for at least', () => {
    expect(sentenceInUnits('move it by 13 mm or more', 'ft-in')).toBe('move it by 9/16" or more');
    expect(sentenceInUnits('wants at least 13 mm', 'ft-in')).toBe('wants at least 9/16"');
    expect(sentenceInUnits('is 13 mm', 'ft-in')).toBe('is 1/2"');
  });

  it('is left as it is in mm', () => {
    expect(sentenceInUnits('It is 0.1 mm at (1, 2).', 'mm')).toBe('It is 0.1 mm at (1, 2).');
  });
});
