import { describe, expect, it } from 'vitest';
import { parsePercent } from '../../../web/arrange/fields';
import { parseAngle, parseTemperature, plainFigure } from '../../../web/schedule/parse-sizes';

describe('a plain figure', () => {
  it('is read with a point or a comma, and either minus', () => {
    expect(['12', ' 1,5 ', '-0.25', '−3', '.5', '7.'].map(plainFigure)).toEqual([12, 1.5, -0.25, -3, 0.5, 7]);
  });

  it('is nothing that only a program takes for one', () => {
    for (const text of ['', ' ', '0x10', '1e3', '1e400', 'Infinity', '12o3', '1 2', '--1'])
      expect(plainFigure(text)).toBeNaN();
  });

  it('stands behind degrees and per cent', () => {
    expect(parseAngle('90 °')).toEqual({ value: 90 });
    expect(parseTemperature('−5')).toEqual({ value: -5 });
    expect(parsePercent('50 %')).toEqual({ value: 50 });
    for (const parse of [parseAngle, parseTemperature, parsePercent])
      expect(parse('0x10')).toHaveProperty('fault');
  });
});
