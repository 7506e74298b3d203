import type { Mm } from '../units';
import { rule } from './client-blocks';
import type { FlowBlock } from './flow-table';
import type { Text, TextMeasure } from './page';
import { fitText, wrapText } from './text';

/* Headings, lists, tables and paragraphs of a check sheet, tighter than those of an offer: an item is to stand on one page. */

const height = 2.5;
const lineHeight: Mm = 4;
const condensed = { face: 'condensed' } as const;

/** Never the last of a page; `aside` at the end of its line. */
export function smallHeading(
  words: string,
  aside?: { readonly words: string; readonly width: Mm; readonly measure: TextMeasure },
): FlowBlock {
  return {
    height: 6.4,
    keepWithNext: true,
    at: (left, top) => {
      const y = top - 4.9;
      const heading: Text = { kind: 'text', text: words, at: { x: left, y }, height, weight: 'semi-bold' };
      if (!aside) return [heading];
      const { width, measure } = aside;
      const room = width - measure(words, height, heading) - 3;
      return [
        heading,
        fitText(
          {
            kind: 'text',
            text: aside.words,
            at: { x: left + width, y },
            height,
            ...condensed,
            anchor: 'end',
            colour: 'soft',
          },
          room,
          measure,
        ),
      ];
    },
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
      at: (left, top) => [rule(left, 2.5, top - height / 2, 0.5, 'ink'), ...words.at(left + indent, top)],
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
  colour: 'ink' | 'red-lead' = 'ink',
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
        { kind: 'text', text: lead, at: { x: left, y: top - height }, height, ...strong, colour },
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

export interface TightColumn {
  readonly heading: string;
  /** Figures stand at the right. */
  readonly align: 'left' | 'right';
  /** Of the table's width. */
  readonly share: number;
}

export interface TightRow {
  readonly cells: readonly string[];
  readonly strong?: boolean;
}

/** A table in condensed letters; its heading keeps with the first row. */
export function tightTable(
  columns: readonly TightColumn[],
  rows: readonly TightRow[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const head = layTight(
    columns,
    columns.map(({ heading }) => heading),
    { ...condensed, weight: 'semi-bold', colour: 'soft' },
    0.35,
    width,
    measure,
  );
  return [
    { ...head, keepWithNext: true },
    ...rows.map(({ cells, strong }) =>
      layTight(
        columns,
        cells,
        { ...condensed, ...(strong && { weight: 'semi-bold' as const }) },
        0.18,
        width,
        measure,
      ),
    ),
  ];
}

const betweenCells: Mm = 1.5;

function layTight(
  columns: readonly TightColumn[],
  cells: readonly string[],
  style: Pick<Text, 'face' | 'weight' | 'colour'>,
  ruleWidth: 0.18 | 0.35,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const wrapped = columns.map(({ share }, c) =>
    wrapText(
      cells[c] ?? '',
      share * width - (c === columns.length - 1 ? 0 : betweenCells),
      height,
      style,
      measure,
    ),
  );
  const lines = Math.max(...wrapped.map((cell) => cell.length));
  const total = lines * lineHeight + 0.9;
  return {
    height: total,
    at: (left, top) => {
      let x = left;
      const texts = columns.flatMap(({ align, share }, c): Text[] => {
        const isLast = c === columns.length - 1;
        const at = align === 'left' ? x : x + share * width - (isLast ? 0 : betweenCells);
        x += share * width;
        return wrapped[c]!.filter(Boolean).map((text, i) => ({
          kind: 'text',
          text,
          at: { x: at, y: top - 0.8 - height - i * lineHeight },
          height,
          anchor: align === 'left' ? 'start' : 'end',
          ...style,
        }));
      });
      return [...texts, rule(left, width, top - total, ruleWidth, ruleWidth === 0.18 ? 'soft' : 'ink')];
    },
  };
}
