import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { sampleWidth, type KeyEntry } from './drawing-key';
import type { Item, Text, TextMeasure } from './page';
import type { Scale } from './paper';
import { scaleBar, scaleBarHeight } from './scale-bar';
import { lineSpacing, textBlock } from './text';

/** Items that do not know yet where they stand. */
export interface Block {
  readonly height: Mm;
  readonly at: (left: Mm, top: Mm) => Item[];
}

export interface NotesContent {
  readonly scale: Scale | null;
  readonly units: LengthUnits;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  readonly key?: readonly KeyEntry[];
}

const textHeight = 2.5;
const betweenColumns = 6;

/**
 * Scale bar and notes, then the cautions: side by side where `width` allows, else one under the other.
 * A block with nothing to say has height 0.
 */
export function notesBlock(content: NotesContent, width: Mm, measure: TextMeasure): Block {
  const twoColumns = width >= 150;
  // Cautions are the longer text: with the wider column both end at about the same height.
  const column = twoColumns ? (width - betweenColumns) * 0.46 : width;
  const wide = twoColumns ? width - betweenColumns - column : width;
  const reading = stacked([
    ...(content.scale ? [scaleBarBlock(content.scale, content.units, column, measure)] : []),
    ...(content.key ?? []).map((entry) => keyRow(entry, column, measure)),
    ...content.notes.map((note, i) => paragraph(note, column, i === 0 ? 'semi-bold' : 'regular', measure)),
  ]);
  const warning = stacked(
    content.cautions.length === 0
      ? []
      : [heading('Cautions'), ...content.cautions.map((text) => bulleted(text, wide, measure))],
  );
  if (reading.height === 0) return warning;
  if (warning.height === 0) return reading;
  if (!twoColumns) return stacked([reading, warning]);
  return {
    height: Math.max(reading.height, warning.height),
    at: (left, top) => [...reading.at(left, top), ...warning.at(left + column + betweenColumns, top)],
  };
}

function scaleBarBlock(scale: Scale, units: LengthUnits, width: Mm, measure: TextMeasure): Block {
  return {
    height: scaleBarHeight,
    at: (left, top) => scaleBar(scale, units, { left, top, width: Math.min(width, 110) }, measure),
  };
}

function keyRow({ words, sample }: KeyEntry, width: Mm, measure: TextMeasure): Block {
  const indent = sampleWidth + 2.5;
  const text = paragraph(words, width - indent, 'regular', measure);
  return {
    height: text.height + 0.6,
    at: (left, top) => [
      ...sample({ left, right: left + sampleWidth, top, bottom: top - textHeight }),
      ...text.at(left + indent, top),
    ],
  };
}

function heading(text: string): Block {
  const at = (left: Mm, top: Mm): Text[] => [
    {
      kind: 'text',
      text,
      at: { x: left, y: top - textHeight },
      height: textHeight,
      weight: 'semi-bold',
      colour: 'red-lead',
    },
  ];
  return { height: lineSpacing * textHeight, at };
}

function paragraph(text: string, width: Mm, weight: 'regular' | 'semi-bold', measure: TextMeasure): Block {
  const style = { face: 'condensed', weight } as const;
  const block = (left: Mm, top: Mm) => textBlock(text, { left, top, width }, textHeight, style, measure);
  return { height: block(0, 0).height, at: (left, top) => block(left, top).items };
}

/** A short rule in red lead before each caution: said by a bar and words, not by colour alone. */
function bulleted(text: string, width: Mm, measure: TextMeasure): Block {
  const indent = 4;
  const words = paragraph(text, width - indent, 'regular', measure);
  return {
    height: words.height,
    at: (left, top) => [
      {
        kind: 'stroke',
        points: [
          { x: left, y: top - textHeight / 2 },
          { x: left + 2.5, y: top - textHeight / 2 },
        ],
        width: 0.5,
        colour: 'red-lead',
      },
      ...words.at(left + indent, top),
    ],
  };
}

function stacked(blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, { height }) => sum + height, 0),
    at: (left, top) => {
      let y = top;
      return blocks.flatMap((block) => {
        const items = block.at(left, y);
        y -= block.height;
        return items;
      });
    },
  };
}
