import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { letteringWidth } from '../../core/markings/lettering';
import { fontFiles } from '../drawings/font-files';

describe('widths of letters: Fira Sans Regular, its advance widths over the height of its capitals', () => {
  const measure = measureWith(fontFiles);

  it('each letter is as wide as the font has it, to a hundredth of a capital', () => {
    for (let code = 33; code < 127; code++) {
      const letter = String.fromCharCode(code);
      expect(Math.abs(letteringWidth(letter, 100) - measure(letter, 100)), letter).toBeLessThan(1.05);
    }
  });

  it.each(['Wednesday', 'Sorts to order', 'Überstunden', '8 to 12 h'])('%s', (text) => {
    expect(letteringWidth(text, 40) / measure(text, 40)).toBeCloseTo(1, 2);
  });
});
