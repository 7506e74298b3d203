import { describe, expect, it } from 'vitest';
import { changeInWords, savingInWords } from '../../../web/schedule/zone-sizes';

describe('a zone size in words', () => {
  it.each([
    [{ right: -240 }, '240 mm narrower on the right'],
    [{ left: 12.5 }, '12.5 mm wider on the left'],
    [{ left: -120, right: -120 }, '120 mm narrower on the left, 120 mm narrower on the right'],
    [
      { right: 60, top: -40, bottom: 5 },
      '60 mm wider on the right, 5 mm taller at the foot, 40 mm shorter at the top',
    ],
  ])('%o', (edges, words) => expect(changeInWords({ edges })).toBe(words));
});

describe('what a zone size saves, in words', () => {
  it.each([
    [
      { stockSheets: 2, cutPanels: 0, cost: 1280, area: 0.004, money: '12.80 EUR' },
      'saves 2 stock sheets, 12.80 EUR',
    ],
    [
      { stockSheets: 0, cutPanels: 1, cost: 0, area: -0.3, money: null },
      'saves 1 cut panel, with 0.30 m² more steel',
    ],
    [
      { stockSheets: 1, cutPanels: -3, cost: 0, area: 1.2, money: null },
      'saves 1 stock sheet, with 3 cut panels more and 1.20 m² less steel',
    ],
  ])('%o', (saves, words) => expect(savingInWords({ saves })).toBe(words));
});
