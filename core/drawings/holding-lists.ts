import type { Mm } from '../units';
import { rule } from './client-blocks';
import type { FlowBlock } from './flow-table';
import type { Text, TextMeasure } from './page';
import { wrapText } from './text';

/* Headings, lists and paragraphs of a check sheet, tighter than those of an offer: an item is to stand on one page. */

const height = 2.5;
const lineHeight: Mm = 3.8;
const condensed = { face: 'condensed' } as const;

/** Never the last of a page. */
export function smallHeading(words: string): FlowBlock {
  return {
    height: 6.4,
    keepWithNext: true,
    at: (left, top) => [
      { kind: 'text', text: words, at: { x: left, y: top - 4.9 }, height, weight: 'semi-bold' },
    ],
  };
}

/** Sentences with a short rule before each under a heading; [] where there is nothing to list. */
export function listUnder(
  heading: string,
  sentences: readonly string[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const indent = 4;
  const bullets = sentences.map((sentence): FlowBlock => {
    const words = tightParagraph(sentence, width - indent, measure);
    return {
      height: words.height + 0.4,
      at: (left, top) => [
        rule(left, 2.5, top - height / 2, 0.5, 'ink'),
        ...words.at(left + indent, top),
      ],
    };
  });
  return bullets.length === 0 ? [] : [smallHeading(heading), ...bullets];
}

/** `Taken for granted: …`, its first words in semi-bold on a line with the rest; [] where nothing is said. */
export function runInParagraph(
  first: string,
  sentences: readonly string[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  if (sentences.length === 0) return [];
  const lead = `${first}:`;
  const strong = { ...condensed, weight: 'semi-bold' } as const;
  const indent = measure(lead, height, strong) + 1.2;
  const whole = sentences.join(' ');
  // Set in from the left on its first line, by as many words as fit beside the lead.
  const [beside = ''] = wrapText(whole, width - indent, height, condensed, measure);
  const rest = whole.slice(beside.length).trimStart();
  const words = rest === '' ? undefined : tightParagraph(rest, width, measure);
  return [
    {
      height: lineHeight + (words?.height ?? 0) + 1,
      at: (left, top) => [
        { kind: 'text', text: lead, at: { x: left, y: top - height }, height, ...strong },
        { kind: 'text', text: beside, at: { x: left + indent, y: top - height }, height, ...condensed },
        ...(words ? words.at(left, top - lineHeight) : []),
      ],
    },
  ];
}

export function tightParagraph(
  text: string,
  width: Mm,
  measure: TextMeasure,
  weight: 'regular' | 'semi-bold' = 'regular',
): FlowBlock {
  const style = { ...condensed, weight };
  const lines = wrapText(text, width, height, style, measure);
  return {
    height: lines.length * lineHeight,
    at: (left, top) =>
      lines.map((line, i): Text => ({
        kind: 'text',
        text: line,
        at: { x: left, y: top - height - i * lineHeight },
        height,
        ...style,
      })),
  };
}
