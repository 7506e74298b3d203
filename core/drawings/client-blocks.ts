import type { Mm } from '../units';
import type { FlowBlock } from './flow-table';
import type { Colour, Item, Text, TextHeight, TextMeasure } from './page';
import { textBlock, wrapText } from './text';

/*
 * What the pages of an offer are made of: headings, paragraphs and lists that know their height and not yet their place.
 */

export interface ParagraphStyle {
  readonly height?: TextHeight;
  readonly weight?: 'regular' | 'semi-bold';
  readonly colour?: Colour;
  /** From the left edge. */
  readonly indent?: Mm;
  /** Space over it. */
  readonly above?: Mm;
  /** Space under it. */
  readonly below?: Mm;
  readonly keepWithNext?: boolean;
}

/** A heading of a section with a rule under it; it never ends a page. */
export function headingBlock(words: string, width: Mm, colour: Colour = 'ink'): FlowBlock {
  const above = 5;
  return {
    height: above + 3.5 + 4.2,
    keepWithNext: true,
    at: (left, top) => [
      {
        kind: 'text',
        text: words,
        at: { x: left, y: top - above - 3.5 },
        height: 3.5,
        weight: 'semi-bold',
        colour,
      },
      rule(left, width, top - above - 3.5 - 1.8, 0.35, colour === 'ink' ? 'ink' : colour),
    ],
  };
}

export function paragraphBlock(
  text: string,
  width: Mm,
  measure: TextMeasure,
  {
    height = 2.5,
    weight,
    colour = 'ink',
    indent = 0,
    above = 0,
    below = 1.2,
    keepWithNext,
  }: ParagraphStyle = {},
): FlowBlock {
  const style = { weight, colour };
  const block = (left: Mm, top: Mm) =>
    textBlock(text, { left: left + indent, top, width: width - indent }, height, style, measure);
  return {
    height: above + block(0, 0).height + below,
    ...(keepWithNext && { keepWithNext }),
    at: (left, top) => block(left, top - above).items,
  };
}

/** Words of any length, a block a line, so that they may run over pages. */
export function runningBlocks(text: string, width: Mm, measure: TextMeasure): FlowBlock[] {
  const lines = text.split('\n').flatMap((line) => wrapText(line, width, 2.5, {}, measure));
  return lines.map((line) => paragraphBlock(line || ' ', width, measure, { below: 0 }));
}

/** Sentences with a short rule before each: red lead for cautions, ink for the rest. */
export function listBlocks(
  sentences: readonly string[],
  width: Mm,
  measure: TextMeasure,
  colour: 'ink' | 'red-lead' = 'ink',
): FlowBlock[] {
  const indent = 5;
  return sentences.map((text) => {
    const words = paragraphBlock(text, width, measure, { indent, below: 0.5 });
    return {
      height: words.height,
      at: (left, top): Item[] => [
        {
          kind: 'stroke',
          points: [
            { x: left, y: top - 1.25 },
            { x: left + 2.5, y: top - 1.25 },
          ],
          width: 0.5,
          colour,
        },
        ...words.at(left, top),
      ],
    };
  });
}

/** Two blanks to sign, side by side, with who signs; they stay on one page. */
export function signatureBlock(names: readonly [string, string], width: Mm, measure: TextMeasure): FlowBlock {
  const gap = 12;
  const half = (width - gap) / 2;
  const name = (text: string, left: Mm, top: Mm) =>
    textBlock(text, { left, top, width: half }, 2.5, { weight: 'semi-bold', colour: 'ink' }, measure);
  const down = Math.max(...names.map((text) => name(text, 0, 0).height)) + 20;
  const column = (text: string, left: Mm, top: Mm): Item[] => {
    const under = (words: string, at: Mm): Text => ({
      kind: 'text',
      text: words,
      at: { x: at, y: top - down - 4 },
      height: 2.5,
      colour: 'soft',
    });
    const [short, long] = [half * 0.42, half * 0.52];
    return [
      ...name(text, left, top).items,
      rule(left, short, top - down, 0.25, 'ink'),
      under('Place and date', left),
      rule(left + half - long, long, top - down, 0.25, 'ink'),
      under('Signature', left + half - long),
    ];
  };
  return {
    height: down + 6,
    at: (left, top) => [...column(names[0], left, top), ...column(names[1], left + half + gap, top)],
  };
}

export function spaceBlock(height: Mm): FlowBlock {
  return { height, at: () => [] };
}

export function rule(left: Mm, width: Mm, y: Mm, weight: 0.18 | 0.25 | 0.35 | 0.5, colour: Colour): Item {
  return {
    kind: 'stroke',
    points: [
      { x: left, y },
      { x: left + width, y },
    ],
    width: weight,
    colour,
  };
}
