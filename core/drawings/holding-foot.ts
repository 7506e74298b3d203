import { holdingCautions } from '../holding/safety';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import { heightOf, stack, type FlowBlock } from './flow-table';
import type { TextMeasure } from './page';
import { runInParagraph, tightParagraph } from './holding-lists';
import { sentenceOnPaper } from './paper-figures';

/*
 * What stands at the foot of every page that says whether something holds: that it is a calculation, and all cautions, in two
 * columns, so that a page has room for an item whole.
 */

const height = 2.5;
const betweenColumns: Mm = 5;
const indent: Mm = 3.4;
const reservation =
  'Calculated, not tested: no page of this takes the place of a test on the wall as built. Local codes, and whoever is licensed to answer for fixings, go before it.';

export function holdingFoot(width: Mm, units: LengthUnits | undefined, measure: TextMeasure): FlowBlock {
  const column = (width - betweenColumns) / 2;
  const said = runInParagraph('Cautions', [reservation], width, measure, 'red-lead');
  const columns: FlowBlock[][] = [[], []];
  for (const { text } of holdingCautions) {
    const block = caution(sentenceOnPaper(text, units), column, measure);
    const isLeft = heightOf(columns[0]!) <= heightOf(columns[1]!);
    columns[isLeft ? 0 : 1]!.push(block);
  }
  const above = 2 + heightOf(said);
  return {
    height: above + Math.max(...columns.map(heightOf)),
    at: (left, top) => [
      rule(left, width, top, 0.35, 'ink'),
      ...stack(said, left, top - 2),
      ...columns.flatMap((blocks, i) => stack(blocks, left + i * (column + betweenColumns), top - above)),
    ],
  };
}

/** A short rule in red lead before each: said by a bar and words, not by colour alone. */
function caution(text: string, width: Mm, measure: TextMeasure): FlowBlock {
  const words = tightParagraph(text, width - indent, measure);
  return {
    height: words.height,
    at: (left, top) => [rule(left, 2.5, top - height / 2, 0.5, 'red-lead'), ...words.at(left + indent, top)],
  };
}
