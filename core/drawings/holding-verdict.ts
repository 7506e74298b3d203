import { sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { paragraphBlock } from './client-blocks';
import { heightOf, stack, type FlowBlock } from './flow-table';
import type { ItemOnSheet } from './holding-item';
import { governing, markedNames, safeWeight, stateOfCheck, timesOver, whatToDo } from './holding-words';
import type { Text, TextMeasure } from './page';
import { cornersOf } from './paper';
import { sentenceOnPaper } from './paper-figures';
import { stateMark } from './state-mark';
import { fitText, wrapText } from './text';

const padding: Mm = 3;
const markWidth: Mm = 12;
const stateHeight: Mm = 10;

/** The item by its name, then in a box whether it holds, in letters that are read from a ladder, and what to do. */
export function verdictBlocks(
  { wall, on, check, others }: ItemOnSheet,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const { item } = check;
  const magnet = on.magnets.get(item.magnets?.magnet ?? '');
  const count = item.magnets?.places.length ?? 0;
  const by = magnet && count > 0 ? sentenceOnPaper(`${count} × ${magnet.name}`, units) : 'no magnets';
  const name: FlowBlock = {
    height: 9,
    keepWithNext: true,
    at: (left, top) => {
      const aside = measure(by, 2.5, {});
      return [
        fitText(
          {
            kind: 'text',
            text: markedNames(wall.survey.wall, [item, ...others.map((one) => one.item)]),
            at: { x: left, y: top - 6 },
            height: 5,
            weight: 'semi-bold',
          },
          width - aside - 5,
          measure,
        ),
        { kind: 'text', text: by, at: { x: left + width, y: top - 6 }, height: 2.5, anchor: 'end' },
      ];
    },
  };
  return [name, verdictBox({ check }, units, width, measure)];
}

function verdictBox(
  { check }: Pick<ItemOnSheet, 'check'>,
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const state = stateOfCheck(check);
  const weight = safeWeight(check, units);
  const room = width - 2 * padding - markWidth;
  const times = timesOver(check);
  const governs = governing(check);
  const line = (text: string, weight: 'regular' | 'semi-bold') =>
    paragraphBlock(text, room, measure, { height: 3.5, weight, below: 0 });
  const words = [
    ...(times === undefined
      ? []
      : [line(`${capital(times)}${governs ? `; ${governs} governs` : ''}.`, 'regular')]),
    line(whatToDo(check), 'semi-bold'),
  ];
  const box = stateHeight + heightOf(words) + 2 * padding - 2;
  return {
    height: box + 2,
    keepWithNext: true,
    at: (left, top) => [
      {
        kind: 'stroke',
        points: cornersOf({ left, right: left + width, top, bottom: top - box }),
        closed: true,
        width: 0.7,
      },
      ...stateMark(state, { x: left + padding + 4.5, y: top - padding - 3.6 }, 4),
      {
        kind: 'text',
        text: capital(state),
        at: { x: left + padding + markWidth, y: top - padding - 7 },
        height: 7,
        weight: 'semi-bold',
      },
      ...(weight === undefined
        ? []
        : weightItems(
            weight,
            `largest safe weight of ${check.item.load ? 'what it carries' : 'the whole item'}`,
            {
              left: left + padding + markWidth + measure(capital(state), 7, { weight: 'semi-bold' }) + 3,
              right: left + width - padding,
              baseline: top - padding - 7,
            },
            measure,
          )),
      ...stack(words, left + padding + markWidth, top - padding - stateHeight),
    ],
  };
}

/** In large letters at the right, what it is before it on two lines. */
function weightItems(
  weight: string,
  words: string,
  { left, right, baseline }: { readonly left: Mm; readonly right: Mm; readonly baseline: Mm },
  measure: TextMeasure,
): Text[] {
  const figure = fitText(
    {
      kind: 'text',
      text: weight,
      at: { x: right, y: baseline },
      height: 7,
      weight: 'semi-bold',
      anchor: 'end',
    },
    36,
    measure,
  );
  const before = right - measure(figure.text, figure.height, figure) - 3;
  const lines = wrapText(words, Math.min(36, before - left), 2.5, { face: 'condensed' }, measure);
  return [
    figure,
    ...lines.map((text, i): Text => ({
      kind: 'text',
      text,
      at: { x: before, y: baseline + 0.3 + (lines.length - 1 - i) * 4 },
      height: 2.5,
      face: 'condensed',
      anchor: 'end',
      colour: 'soft',
    })),
  ];
}
