import { holdingCautions } from '../holding/safety';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import { heightOf, stack, type FlowBlock } from './flow-table';
import type { TextMeasure } from './page';
import { tightParagraph } from './holding-lists';
import { sentenceOnPaper } from './paper-figures';

/*
 * What stands at the foot of every page that says whether something holds: that it is a calculation, and all cautions, in two
 * columns, so that a page has room for an item whole.
 */

const height = 2.5;
const betweenColumns: Mm = 6;
const indent: Mm = 4;
const reservation =
  'Calculated, not tested: no page of this takes the place of a test on the wall as built. Local codes, and whoever is licensed to answer for fixings, go before it.';

export function holdingFoot(width: Mm, units: LengthUnits | undefined, measure: TextMeasure): FlowBlock {
  const column = (width - betweenColumns) / 2;
  const said = tightParagraph(reservation, width, measure, 'semi-bold');
  const columns: FlowBlock[][] = [[], []];
  for (const { text } of holdingCautions) {
    const block = caution(sentenceOnPaper(text, units), column, measure);
    const isLeft = heightOf(columns[0]!) <= heightOf(columns[1]!);
    columns[isLeft ? 0 : 1]!.push(block);
  }
  const title = heading('Cautions');
  const above = 2 + said.height + 1;
  return {
    height: above + title.height + Math.max(...columns.map(heightOf)),
    at: (left, top) => [
      rule(left, width, top, 0.35, 'ink'),
      ...said.at(left, top - 2),
      ...title.at(left, top - above),
      ...columns.flatMap((blocks, i) =>
        stack(blocks, left + i * (column + betweenColumns), top - above - title.height),
      ),
    ],
  };
}

function heading(text: string): FlowBlock {
  return {
    height: 4.2,
    at: (left, top) => [
      {
        kind: 'text',
        text,
        at: { x: left, y: top - height },
        height,
        weight: 'semi-bold',
        colour: 'red-lead',
      },
    ],
  };
}

/** A short rule in red lead before each: said by a bar and words, not by colour alone. */
function caution(text: string, width: Mm, measure: TextMeasure): FlowBlock {
  const words = tightParagraph(text, width - indent, measure);
  return {
    height: words.height,
    at: (left, top) => [
      rule(left, 2.5, top - height / 2, 0.5, 'red-lead'),
      ...words.at(left + indent, top),
    ],
  };
}
