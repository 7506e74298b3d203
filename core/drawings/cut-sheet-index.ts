import { withGapBelow } from './arrange-block';
import type { CutPattern } from './cut-patterns';
import { rangesText } from './cut-sheet-blocks';
import { columnGap, layHeading, layRows, type FlowColumn, type FlowRow } from './flow-table';
import type { TextMeasure } from './page';
import { wholeWidth, type BlockGroup } from './page-blocks';

const widths = { pattern: 14.5, page: 10.5 };

/**
 * On which page each pattern is, four a row, or three where lists of stock sheets are long.
 *
 * @param pageOf numbers from 1; the height of the table does not depend on them, so that it may be laid before they are known
 */
export function patternIndex(
  patterns: readonly CutPattern[],
  pageOf: (pattern: CutPattern) => number,
  measure: TextMeasure,
): BlockGroup {
  const idsOf = ({ sheets }: CutPattern) => rangesText(sheets.map(({ id }) => id));
  const widest = Math.max(...patterns.map((pattern) => measure(idsOf(pattern), 2.5)));
  const roomIn = (abreast: number) => wholeWidth / abreast - widths.pattern - widths.page;
  const abreast = widest + columnGap <= roomIn(4) ? 4 : 3;
  const columns = Array.from({ length: abreast }, (): FlowColumn[] => [
    { heading: 'Pattern', align: 'right', width: widths.pattern },
    { heading: 'Cut from', align: 'left', width: roomIn(abreast) },
    { heading: 'Page', align: 'right', width: widths.page },
  ]).flat();
  const rows = Array.from({ length: Math.ceil(patterns.length / abreast) }, (_, r): FlowRow => ({
    kind: 'row',
    cells: patterns
      .slice(r * abreast, (r + 1) * abreast)
      .flatMap((pattern) => [String(pattern.number), idsOf(pattern), String(pageOf(pattern))]),
  }));
  const heading = { ...layHeading(columns, measure), keepWithNext: true };
  return {
    blocks: withGapBelow(
      [heading, ...layRows(columns, rows, measure)].map((block) => ({ width: 'whole', ...block })),
    ),
  };
}
