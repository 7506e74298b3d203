import type { JobSheet, WorkedOut } from '../worked-out';
import { arrangeBlock, titledHead, withGapBelow } from './arrange-block';
import { listWidthFor } from './cut-sheet-lists';
import type { CutPattern } from './cut-patterns';
import { patternLists, sheetRows, stockName, type CutoutsOf } from './cut-sheet-lists';
import { sketchStockSheet } from './cut-sheet-sketch';
import type { CutStep } from './cut-steps';
import { countText } from './figure-text';
import { paperFigures, sizeText, type WriteLength } from './paper-figures';
import type { BlockGroup } from './page-blocks';
import type { TextMeasure } from './page';
import type { Mm } from '../units';

/** A cutting pattern: its sketch, what is cut, in which order, and what is kept; then the marks of all its sheets. */
export function patternGroup(
  pattern: CutPattern,
  steps: readonly CutStep[],
  cutoutsOf: CutoutsOf,
  worked: WorkedOut,
  room: Mm,
  measure: TextMeasure,
): BlockGroup {
  const { method } = worked.job.cutting;
  const figures = paperFigures(worked.job.units);
  const { drawn, number, sheets } = pattern;
  const alike = sheets.length > 1 ? `Cut ${sheets.length} alike: ` : '';
  const lines = [`${alike}${sheetsText(sheets, figures.cut)} of ${stockName(worked, drawn.stock)}`];
  const blocks = arrangeBlock({
    size: [drawn.width / 100, drawn.height / 100],
    room,
    ...listWidthFor(figures),
    sketchAt: (scale) => sketchStockSheet(pattern, steps, scale, figures.cut, measure),
    head: (width, scale) => titledHead(`Pattern ${number}`, lines, scale, width, measure),
    lists: (width, sketch) =>
      patternLists(pattern, steps, cutoutsOf, method, sketch.isComplete, figures, width, measure),
  });
  return { blocks: [...blocks, ...withGapBelow(sheetRows(pattern, measure))], mayFillGaps: true };
}

/** `4 stock sheets N12 to N15`; `1 rack piece R7, 300 × 300,`. */
export function sheetsText(sheets: readonly JobSheet[], write: WriteLength): string {
  const { fromRack, width, height } = sheets[0]!;
  const ids = rangesText(sheets.map(({ id }) => id));
  return fromRack === null
    ? `${countText(sheets.length, 'stock sheet')} ${ids}`
    : `${countText(sheets.length, 'rack piece')} ${ids}, ${sizeText(width, height, write)},`;
}

/** Runs of three or more numbered alike are drawn together: `N3, N12 to N15`. */
export function rangesText(ids: readonly string[]): string {
  const parts: string[] = [];
  for (let i = 0; i < ids.length;) {
    let end = i;
    while (end + 1 < ids.length && isNext(ids[end]!, ids[end + 1]!)) end++;
    if (end - i >= 2) parts.push(`${ids[i]!} to ${ids[end]!}`);
    else parts.push(...ids.slice(i, end + 1));
    i = end + 1;
  }
  return parts.join(', ');
}

function isNext(id: string, next: string): boolean {
  const [, name, number] = /^(.*?)(\d+)$/.exec(id) ?? [];
  return number !== undefined && next === `${name}${Number(number) + 1}`;
}
