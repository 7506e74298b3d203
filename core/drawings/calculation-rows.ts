import type { CalculationLine } from '../holding/calculation';
import { calculationFigure } from '../holding/calculation-words';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import type { FlowBlock } from './flow-table';
import { comma } from './holding-words';
import type { Text, TextMeasure } from './page';
import { wrapText } from './text';

/*
 * Lines of a calculation, dense: symbol, what it is and how it is worked out, value, unit, number of the source. The lettering
 * of dense tables is the smallest of ISO 3098.
 */

const height = 1.8;
const symbolWidth: Mm = 10;
const unitWidth: Mm = 8;
const sourceWidth: Mm = 6;
const valueWidth: Mm = 10;
const condensed = { face: 'condensed' } as const;
const strong = { face: 'condensed', weight: 'semi-bold' } as const;

/** How a line of a calculation is set. */
interface Setting {
  /** Capitals: 1.8 mm in dense tables only. */
  readonly height: 1.8 | 2.5;
  /** Absent: no number of a source. */
  readonly sources?: readonly string[];
  /** In place of the value, where the values of several stand in a table of their own. */
  readonly valueText?: string;
}

/** One line of a calculation; its value stands where its formula ends. */
export function calculationRow(
  { symbol, words, formula, value, unit, source }: CalculationLine,
  width: Mm,
  { height, sources, valueText = comma(calculationFigure(value)) }: Setting,
  measure: TextMeasure,
): FlowBlock {
  const per = height / 1.8;
  const lineHeight = 2.6 * per;
  const below = sources ? 0.55 : 0.8;
  const afterValue = width - (sources ? sourceWidth : 0) - unitWidth * per;
  const isLong = measure(symbol, height, strong) + 1 > symbolWidth * per;
  const start = isLong ? measure(symbol, height, strong) + 1.5 : symbolWidth * per;
  const room = afterValue - 1 - valueWidth * per - start;
  const wrap = (text: string) => wrapText(text, room, height, condensed, measure);
  const together = wrap(formula === undefined ? comma(words) : `${comma(words)} = ${comma(formula)}`);
  const lines =
    formula === undefined || together.length === 1
      ? together
      : [...wrap(comma(words)), ...wrap(`= ${comma(formula)}`)];
  const total = lines.length * lineHeight + below;
  return {
    height: total,
    at: (left, top) => {
      const text = (words: string, x: Mm, line: number, rest: Partial<Text> = {}): Text => ({
        kind: 'text',
        text: words,
        at: { x: left + x, y: top - below / 2 - height - line * lineHeight },
        height,
        ...condensed,
        ...rest,
      });
      const last = lines.length - 1;
      return [
        text(symbol, 0, 0, strong),
        ...lines.map((line, i) => text(line, start, i)),
        text(valueText, afterValue - 1, last, { anchor: 'end' }),
        ...(unit ? [text(unit, afterValue, last)] : []),
        ...(sources
          ? [text(`[${sources.indexOf(source) + 1}]`, width, last, { anchor: 'end', colour: 'soft' })]
          : []),
      ];
    },
  };
}

/** What the lines under it are about. */
export function partRow(words: string, width: Mm): FlowBlock {
  return {
    height: 4,
    keepWithNext: true,
    at: (left, top) => [
      { kind: 'text', text: words, at: { x: left, y: top - 1.2 - height }, height, ...strong, colour: 'soft' },
      rule(left, width, top - 3.7, 0.18, 'soft'),
    ],
  };
}

/** Figures of several things in columns of equal width, under the symbols of what they are. */
export function figuresRow(
  cells: readonly string[],
  width: Mm,
  kind: 'heading' | 'row',
): FlowBlock {
  const first = 14;
  const each = (width - first) / Math.max(1, cells.length - 1);
  const style = kind === 'heading' ? { ...strong, colour: 'soft' as const } : condensed;
  const total = 3.3;
  return {
    height: total,
    ...(kind === 'heading' && { keepWithNext: true }),
    at: (left, top) => [
      ...cells.map(
        (words, i): Text => ({
          kind: 'text',
          text: words,
          at: { x: left + (i === 0 ? 0 : first + i * each), y: top - 0.5 - height },
          height,
          ...(i > 0 && { anchor: 'end' as const }),
          ...style,
        }),
      ),
      ...(kind === 'heading' ? [rule(left, width, top - total, 0.18, 'soft')] : []),
    ],
  };
}
