import { formatAmount, formatFigure, formatMoney, type Minor } from '../offer/money';
import type { ClientLine, ClientPrices, ClientTax } from '../offer/views';
import type { Mm } from '../units';
import type { ClientBlock } from './client-pages';
import type { FlowBlock } from './flow-table';
import { paragraphBlock, rule, spaceBlock } from './client-blocks';
import type { Item, Text, TextMeasure } from './page';
import { fitText, wrapText } from './text';

/*
 * The lines of an offer with quantity, unit price and amount, and the sums under them.
 */

const amountWidth = 27;
const unitPriceWidth = 24;
const quantityWidth = 23;
const taxWidth = 9;
const numberWidth = 8;
const gap = 3;
const lineHeight = 4;

interface Column {
  readonly right: Mm;
  readonly width: Mm;
}

export function priceBlocks(prices: ClientPrices, width: Mm, measure: TextMeasure): ClientBlock[] {
  const showsTax = prices.taxes.length > 1;
  const right = width;
  const tax: Column = { right, width: showsTax ? taxWidth : 0 };
  const amount: Column = { right: right - tax.width, width: amountWidth };
  const unitPrice: Column = { right: amount.right - amountWidth, width: unitPriceWidth };
  const quantity: Column = { right: unitPrice.right - unitPriceWidth, width: quantityWidth };
  const words: Column = {
    right: quantity.right - quantityWidth,
    width: quantity.right - quantityWidth - numberWidth,
  };
  const cell = (text: string, column: Column, left: Mm, y: Mm, style: Partial<Text> = {}): Text =>
    fitText(
      {
        kind: 'text',
        text,
        at: { x: left + column.right, y },
        height: 2.5,
        anchor: 'end',
        colour: 'ink',
        ...style,
      },
      column.width - gap,
      measure,
    );
  const soft = { colour: 'soft', weight: 'semi-bold', face: 'condensed' } as const;
  const heading: FlowBlock = {
    height: 6,
    keepWithNext: true,
    at: (left, top) => [
      {
        kind: 'text',
        text: 'Description',
        at: { x: left + numberWidth, y: top - 3.6 },
        height: 2.5,
        ...soft,
      },
      cell('Quantity', quantity, left, top - 3.6, soft),
      cell('Unit price', unitPrice, left, top - 3.6, soft),
      cell(`Amount ${prices.currency}`, amount, left, top - 3.6, soft),
      ...(showsTax ? [cell('Tax', tax, left, top - 3.6, soft)] : []),
      rule(left, width, top - 5.6, 0.35, 'ink'),
    ],
  };
  const rowOf = (line: ClientLine, i: number, isLast: boolean): ClientBlock => {
    const titleLines = wrapText(line.title, words.width - gap, 2.5, {}, measure);
    const basisLines = line.basis
      ? wrapText(line.basis, words.width - gap, 2.5, { face: 'condensed' }, measure)
      : [];
    const total = (titleLines.length + basisLines.length) * lineHeight + 2.6;
    return {
      height: total,
      heading,
      // The last line stays with the sums.
      keepWithNext: isLast && total < 60,
      at: (left, top): Item[] => {
        const y = top - 4;
        const text = (words: string, n: number, style: Partial<Text>): Text => ({
          kind: 'text',
          text: words,
          at: { x: left + numberWidth, y: y - n * lineHeight },
          height: 2.5,
          colour: 'ink',
          ...style,
        });
        return [
          { kind: 'text', text: String(i + 1), at: { x: left, y }, height: 2.5, colour: 'soft' },
          ...titleLines.map((words, n) => text(words, n, {})),
          ...basisLines.map((words, n) =>
            text(words, titleLines.length + n, { face: 'condensed', colour: 'soft' }),
          ),
          ...figuresOf(line, prices).flatMap((words, c): Item[] =>
            words ? [cell(words, [quantity, unitPrice, amount][c]!, left, y)] : [],
          ),
          ...(showsTax && line.tax !== null ? [cell(String(line.tax), tax, left, y)] : []),
          rule(left, width, top - total, 0.18, 'hairline'),
        ];
      },
    };
  };
  const { lines, options } = prices;
  return [
    heading,
    ...lines.map((line, i) => rowOf(line, i, i === lines.length - 1)),
    ...sumBlocks(prices, width, amount, showsTax, measure),
    ...(options.length === 0
      ? []
      : [
          paragraphBlock(
            `Optional, not in the total; prices ${prices.taxes.length > 0 ? 'before tax' : 'without tax'}`,
            width,
            measure,
            { weight: 'semi-bold', above: 3, keepWithNext: true },
          ),
          heading,
          ...options.map((line, i) => rowOf(line, lines.length + i, false)),
          spaceBlock(2),
        ]),
  ];
}

/** Quantity, unit price, amount; a lump sum has the amount alone. */
function figuresOf({ quantity, unit, unitPrice, amount }: ClientLine, prices: ClientPrices): string[] {
  const written = formatAmount(amount, prices.currency, prices.locale);
  if (unit === '')
    return quantity === 1 ? ['', '', written] : [String(quantity), bare(unitPrice, prices), written];
  const counted = formatFigure(quantity, prices.locale, unit === 'm²' || unit === 'ft²' ? 2 : 0, 3);
  return [`${counted} ${unit}`, bare(unitPrice, prices), written];
}

function bare(amount: Minor, { currency, locale }: ClientPrices): string {
  return formatAmount(amount, currency, locale);
}

/** Rows of sums that stay with the total. */
const keptWithTotal = 3;

/** Net price, taxes, total: the total large, with its currency. */
function sumBlocks(
  prices: ClientPrices,
  width: Mm,
  amount: Column,
  showsTax: boolean,
  measure: TextMeasure,
): FlowBlock[] {
  const { net, taxes, currency, locale } = prices;
  const from = width * 0.3;
  const labelWidth = amount.right - amountWidth - from;
  const label = ({ words, base }: ClientTax, i: number) =>
    `${showsTax ? `${i + 1}  ` : ''}${words.replace(/\.$/, '')}${showsTax ? `, on ${bare(base, prices)}` : ''}`;
  const rows =
    taxes.length === 0
      ? []
      : [['Net price', net] as const, ...taxes.map((tax, i) => [label(tax, i), tax.amount] as const)];
  const laid = rows.map(([words, of], i): FlowBlock => {
    const lines = wrapText(words, labelWidth, 2.5, {}, measure);
    const style = { kind: 'text', height: 2.5, colour: 'ink' } as const;
    return {
      height: lines.length * lineHeight + 1.6,
      keepWithNext: i >= rows.length - keptWithTotal,
      at: (left, top): Item[] => [
        ...lines.map((text, n): Text => ({
          ...style,
          text,
          at: { x: left + from, y: top - 4.6 - n * lineHeight },
        })),
        { ...style, text: bare(of, prices), at: { x: left + amount.right, y: top - 4.6 }, anchor: 'end' },
      ],
    };
  });
  return [...laid, totalBlock(formatMoney(prices.gross, currency, locale, 'code'), taxes.length > 0)];

  function totalBlock(total: string, isTaxed: boolean): FlowBlock {
    const wide = amount.right - from;
    return {
      height: 16,
      at: (left, top): Item[] => [
        rule(left + from, wide, top - 2.4, 0.35, 'ink'),
        {
          kind: 'text',
          text: isTaxed ? 'Total' : 'Total, before tax',
          at: { x: left + from, y: top - 9.2 },
          height: 3.5,
          weight: 'semi-bold',
          colour: 'ink',
        },
        fitText(
          {
            kind: 'text',
            text: total,
            at: { x: left + amount.right, y: top - 9.2 },
            height: 5,
            anchor: 'end',
            weight: 'semi-bold',
            colour: 'ink',
          },
          wide - 36,
          measure,
        ),
        rule(left + from, wide, top - 12, 0.5, 'ink'),
      ],
    };
  }
}
