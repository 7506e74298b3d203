import type { PictureColour } from '../page';

/* Colours of finishes: sRGB as IEC 61966-2-1 has it. */

/** Relative luminance, 0 black to 1 white. Source: WCAG 2.2, definition of relative luminance. */
export function luminanceOf(colour: PictureColour): number {
  const [r, g, b] = channelsOf(colour).map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

/** Contrast ratio of two colours, 1 to 21. Source: WCAG 2.2, definition of contrast ratio. */
export function contrastOf(a: PictureColour, b: PictureColour): number {
  const [low, high] = [luminanceOf(a), luminanceOf(b)].sort((one, other) => one - other);
  return (high! + 0.05) / (low! + 0.05);
}

/** A colour on its way to another, as paints on a screen mix: share 0 is the first, 1 the second. */
export function blend(from: PictureColour, to: PictureColour, share: number): PictureColour {
  const [a, b] = [channelsOf(from), channelsOf(to)];
  const mixed = a.map((value, i) => Math.round(value + (b[i]! - value) * share));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

function channelsOf(colour: PictureColour): number[] {
  return [1, 3, 5].map((from) => parseInt(colour.slice(from, from + 2), 16));
}
