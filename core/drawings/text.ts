import type { Mm } from '../units';
import type { Item, Page, Text, TextHeight, TextMeasure, TextStyle } from './page';
import type { PaperBox } from './paper';

/*
 * Placing text. Every width is measured with the font that prints it; `height` is the height of a capital.
 */

/** From one baseline to the next, as a multiple of the capital height. */
export const lineSpacing = 1.65;

/** Heights that may carry a figure or a word, largest first; nothing for the trade is smaller than 2.5 mm. */
const readableHeights: readonly TextHeight[] = [14, 10, 7, 5, 3.5, 2.5];

const faceOf = ({ face, weight }: TextStyle): TextStyle => ({ face, weight });

/** Characters that stand on the baseline; any other is given room below it. */
const flat = /^[A-PR-Zabcdefhiklmnorstuvwxz0-9 \u00A0.:+×−=–'"!?%*~-]*$/;

/** The box that the ink of a text takes, with room for descenders and accents where it has any. */
export function textBox(text: Text, measure: TextMeasure): PaperBox {
  const width = measure(text.text, text.height, faceOf(text));
  const start = text.anchor === 'middle' ? -width / 2 : text.anchor === 'end' ? -width : 0;
  const below = flat.test(text.text) ? 0.02 : 0.3;
  const above = /[\p{Lu}]/u.test(text.text) && /[^\p{ASCII}]/u.test(text.text) ? 1.3 : 1.08;
  const { x, y } = text.at;
  return text.turned === 90
    ? {
        left: x - above * text.height,
        right: x + below * text.height,
        bottom: y + start,
        top: y + start + width,
      }
    : {
        left: x + start,
        right: x + start + width,
        bottom: y - below * text.height,
        top: y + above * text.height,
      };
}

/** Boxes of all texts of a page, in their order; blank texts have none. */
export function textBoxes(page: Pick<Page, 'items'>, measure: TextMeasure): { text: Text; box: PaperBox }[] {
  return page.items
    .filter((item: Item): item is Text => item.kind === 'text' && item.text.trim() !== '')
    .map((text) => ({ text, box: textBox(text, measure) }));
}

/**
 * The text at `height`, made to fit `width`: first in the condensed face, then at lower heights of the
 * series down to 2.5 mm, at last shortened by an ellipsis.
 *
 * @param text in the style it would have if there were room
 */
export function fitText(text: Text, width: Mm, measure: TextMeasure): Text {
  const fits = (candidate: Text) => measure(candidate.text, candidate.height, faceOf(candidate)) <= width;
  if (fits(text)) return text;
  const heights = readableHeights.filter((height) => height <= text.height);
  for (const height of heights) {
    const condensed: Text = { ...text, height, face: 'condensed' };
    if (fits(condensed)) return condensed;
  }
  const least: Text = { ...text, height: heights.at(-1) ?? text.height, face: 'condensed' };
  const characters = [...text.text];
  for (let kept = characters.length - 1; kept > 0; kept--) {
    const shortened = { ...least, text: `${characters.slice(0, kept).join('').trimEnd()}…` };
    if (fits(shortened)) return shortened;
  }
  return { ...least, text: fits({ ...least, text: '…' }) ? '…' : '' };
}

/**
 * Lines of at most `width`, broken at spaces (but no-break ones) and line feeds; a single word that is too long is broken
 * between letters.
 */
export function wrapText(
  text: string,
  width: Mm,
  height: TextHeight,
  style: TextStyle,
  measure: TextMeasure,
): string[] {
  const fits = (line: string) => measure(line, height, style) <= width;
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(/[^\S\u00A0]+/).filter(Boolean)) {
      if (line !== '' && fits(`${line} ${word}`)) {
        line = `${line} ${word}`;
        continue;
      }
      if (line !== '') lines.push(line);
      line = word;
      while (!fits(line) && [...line].length > 1) {
        const head = longestFitting(line, fits);
        lines.push(head);
        line = line.slice(head.length);
      }
    }
    lines.push(line);
  }
  return lines;
}

/** Wrapped text as items, the first line's capitals touching `top`; and the height it took. */
export function textBlock(
  text: string,
  at: { readonly left: Mm; readonly top: Mm; readonly width: Mm },
  height: TextHeight,
  style: TextStyle & Pick<Text, 'colour'>,
  measure: TextMeasure,
): { items: Text[]; height: Mm } {
  const lines = wrapText(text, at.width, height, faceOf(style), measure);
  const items = lines.map((line, i): Text => ({
    kind: 'text',
    text: line,
    at: { x: at.left, y: at.top - height - i * lineSpacing * height },
    height,
    ...style,
  }));
  return { items, height: lines.length * lineSpacing * height };
}

function longestFitting(word: string, fits: (line: string) => boolean): string {
  const characters = [...word];
  let kept = characters.length - 1;
  while (kept > 1 && !fits(characters.slice(0, kept).join(''))) kept--;
  return characters.slice(0, Math.max(1, kept)).join('');
}
