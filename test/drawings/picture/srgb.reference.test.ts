import { describe, expect, it } from 'vitest';
import { blend, contrastOf, luminanceOf } from '../../../core/drawings/picture/srgb';

describe('contrast of two colours, WCAG 2.2', () => {
  it.each([
    // Definition of contrast ratio: from 1:1 to 21:1.
    ['#000000', '#ffffff', 21],
    ['#8a8a8a', '#8a8a8a', 1],
    // Understanding success criterion 1.4.3: #777777 on white is 4.47:1 and is not rounded up to 4.5:1.
    ['#777777', '#ffffff', 4.478],
    // Green alone: 0.7152 by the definition of relative luminance, so (1.05) / (0.7652).
    ['#00ff00', '#ffffff', 1.05 / 0.7652],
  ] as const)('of %s and %s is %f, in either order', (a, b, ratio) => {
    expect(contrastOf(a, b)).toBeCloseTo(ratio, 3);
    expect(contrastOf(b, a)).toBeCloseTo(ratio, 3);
  });

  it('white has luminance 1, black 0', () => {
    expect(luminanceOf('#ffffff')).toBeCloseTo(1, 12);
    expect(luminanceOf('#000000')).toBe(0);
  });
});

describe('blend', () => {
  it('begins at the one colour, ends at the other and is half way between at a half', () => {
    expect(blend('#102030', '#305070', 0)).toBe('#102030');
    expect(blend('#102030', '#305070', 1)).toBe('#305070');
    expect(blend('#102030', '#305070', 0.5)).toBe('#203850');
  });
});
