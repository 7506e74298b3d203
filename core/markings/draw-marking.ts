import type { Box, Point } from '../geometry/polygon';
import type { Marking } from '../job/marking-schema';
import { sizeOfMarking, usualLetterHeight, usualLineWidth } from '../job/markings';
import { toHundredth, type Hundredth } from '../units';
import type { MarkedLine, MarkedText, MarkingDrawing } from './marking-drawing';

/**
 * The lines, squares and words of a marking.
 *
 * Promised: all of them lie within the box; a grid's lines are a spacing apart from the left and from the foot, the last
 * one at the other edge; columns and rows without sizes of their own differ by a hundredth at most and add up exactly.
 *
 * @param zone the lower left corner of the zone's bounding box, hundredths, wall frame
 */
export function drawMarking(marking: Marking, zone: Point): MarkingDrawing {
  const size = sizeOfMarking(marking);
  const left = zone.x + toHundredth(marking.x);
  const bottom = zone.y + toHundredth(marking.y);
  const box: Box = {
    left,
    bottom,
    right: left + toHundredth(size.width),
    top: bottom + toHundredth(size.height),
  };
  return {
    box,
    lines: linesOf(marking, box),
    filled: marking.kind === 'board' && marking.tones === 'two' ? everyOtherSquare(marking, box) : [],
    texts: marking.kind === 'table' ? headingsOf(marking, box) : [],
    picture: marking.kind === 'picture' ? (marking.photo ?? null) : null,
    lineWidth: toHundredth(marking.lineWidth ?? usualLineWidth),
  };
}

function linesOf(marking: Marking, box: Box): MarkedLine[] {
  const { kind, spacingAcross = 0, spacingUp = 0 } = marking;
  switch (kind) {
    case 'ruled-grid':
      return [
        ...uprights(withEnd(steps(box.left, box.right, toHundredth(spacingAcross)), box.right), box),
        ...levels(withEnd(steps(box.bottom, box.top, toHundredth(spacingUp)), box.top), box),
      ];
    case 'ruled-lines':
      return levels(steps(box.bottom, box.top, toHundredth(spacingUp)), box);
    case 'table':
      return tableLines(marking, box);
    case 'board':
      return [
        ...uprights(edgesOfShares(box.left, box.right, marking.across ?? 1), box),
        ...levels(edgesOfShares(box.bottom, box.top, marking.up ?? 1), box),
      ];
    case 'picture':
      return [];
  }
}

/** Edges of the columns from the left and of the rows from the top, headings with them. */
export function edgesOfTable(
  table: Marking,
  box: Box,
): { readonly xs: readonly Hundredth[]; readonly ys: readonly Hundredth[] } {
  const { columns = [], rows = [], columnWidths, rowHeights } = table;
  const firstX = box.left + toHundredth(table.headingWidth ?? 0);
  const firstY = box.top - toHundredth(table.headingHeight ?? 0);
  const xs = columnWidths
    ? withEnd(stepsOf(firstX, columnWidths), box.right, true)
    : edgesOfShares(firstX, box.right, columns.length);
  const ys = rowHeights
    ? withEnd(stepsOf(-firstY, rowHeights), -box.bottom, true).map((y) => -y)
    : edgesOfShares(-firstY, -box.bottom, rows.length).map((y) => -y);
  return {
    xs: firstX > box.left ? [box.left, ...xs] : xs,
    ys: (firstY < box.top ? [box.top, ...ys] : ys).map((y) => y + 0),
  };
}

function tableLines(table: Marking, box: Box): MarkedLine[] {
  const { xs, ys } = edgesOfTable(table, box);
  return [...uprights(xs, box), ...levels([...ys].reverse(), box)];
}

function headingsOf(table: Marking, box: Box): MarkedText[] {
  const { columns = [], rows = [], headingHeight, headingWidth } = table;
  const { xs, ys } = edgesOfTable(table, box);
  const height = toHundredth(table.letterHeight ?? usualLetterHeight);
  const inRow = headingHeight ? columns : [];
  const inColumn = headingWidth ? rows : [];
  const [firstColumn, firstRow] = [headingWidth ? 1 : 0, headingHeight ? 1 : 0];
  const cell = (column: number, row: number): Box => ({
    left: xs[column]!,
    right: xs[column + 1]!,
    top: ys[row]!,
    bottom: ys[row + 1]!,
  });
  return [
    ...inRow.map((text, i) => ({ text, cell: cell(firstColumn + i, 0), height })),
    ...inColumn.map((text, i) => ({ text, cell: cell(0, firstRow + i), height })),
  ].filter(({ text }) => text.trim() !== '');
}

/** The square at the lower left is filled. */
function everyOtherSquare({ across = 1, up = 1 }: Marking, box: Box): Box[] {
  const xs = edgesOfShares(box.left, box.right, across);
  const ys = edgesOfShares(box.bottom, box.top, up);
  return ys.slice(1).flatMap((top, row) =>
    xs.slice(1).flatMap((right, column): Box[] => {
      if ((row + column) % 2 !== 0) return [];
      return [{ left: xs[column]!, right, bottom: ys[row]!, top }];
    }),
  );
}

/** `from`, `from` + step, … up to `to`. */
function steps(from: Hundredth, to: Hundredth, step: Hundredth): Hundredth[] {
  if (step <= 0) return [from];
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
}

function stepsOf(from: Hundredth, sizes: readonly number[]): Hundredth[] {
  let at = from;
  return [from, ...sizes.map((size) => (at += toHundredth(size)))];
}

/** @param instead the last of them may be off by rounding, and gives way */
function withEnd(places: readonly Hundredth[], end: Hundredth, instead = false): Hundredth[] {
  const last = places.at(-1);
  if (last === end) return [...places];
  return instead ? [...places.slice(0, -1), end] : [...places, end];
}

/** Edges of equal parts, each to the nearest hundredth, so that the whole is met exactly. */
function edgesOfShares(from: Hundredth, to: Hundredth, count: number): Hundredth[] {
  return Array.from({ length: count + 1 }, (_, i) => from + Math.round(((to - from) * i) / count));
}

function uprights(xs: readonly Hundredth[], { bottom, top }: Box): MarkedLine[] {
  return xs.map((x) => ({ from: { x, y: bottom }, to: { x, y: top } }));
}

function levels(ys: readonly Hundredth[], { left, right }: Box): MarkedLine[] {
  return ys.map((y) => ({ from: { x: left, y }, to: { x: right, y } }));
}
