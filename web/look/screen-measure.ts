import type { TextMeasure } from '../../core/drawings/page';

/** Height of the look's capitals over the size of its fonts. */
const capitalPerSize = 0.689;

let context: CanvasRenderingContext2D | null | undefined;

/** Widths of texts by the browser's own fonts, for pictures that stay on the screen. */
export const screenMeasure: TextMeasure = (text, height, { face, weight } = {}) => {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return text.length * height;
  const family = face === 'condensed' ? 'Fira Sans Condensed' : 'Fira Sans';
  context.font = `${weight === 'semi-bold' ? 600 : 400} 100px "${family}", sans-serif`;
  return (context.measureText(text).width / 100) * (height / capitalPerSize);
};
