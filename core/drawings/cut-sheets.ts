import type { WorkedOut } from '../worked-out';
import { cautions, checkOnSite } from './cautions';
import { deliveryText } from './cut-list';
import { cutPatterns, type WholeSheets } from './cut-patterns';
import { patternBlocks } from './cut-sheet-blocks';
import { stockName } from './cut-sheet-lists';
import { formatMm } from './figures';
import { layHeading, layRows, type FlowColumn, type FlowRow } from './flow-table';
import type { LodeplanDocument, TextMeasure } from './page';
import { dealBlocks, drawDealt, ratioOfPage, wholeWidth, type PageBlock } from './page-blocks';
import { panelBlocks, panelShapes } from './panel-sheet';
import { placedPanels } from './placed-panels';
import { tradePage, upright, type TradeDocument } from './trade-page';

/**
 * What is cut from which stock sheet: whole sheets as a list, each cutting pattern once with all the sheets cut by it, then
 * each panel with notches or holes by itself. No pages if nothing is planned.
 */
export function cutSheets(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const name = 'cut-sheets';
  const title = `${worked.job.name}: cut sheets`;
  if (worked.cutting.sheets.length === 0) return { name, title, pages: [] };
  const document: TradeDocument = {
    job: worked.job,
    title: 'Cut sheets',
    documentType: 'Cut sheets',
    notes: notesFor(worked),
    cautions: [cautions.edges, checkOnSite],
  };
  const roomOf = ({ top, bottom }: { top: number; bottom: number }) => top - bottom;
  const first = roomOf(tradePage(document, 1, 2, measure).space);
  const room = roomOf(tradePage(document, 2, 2, measure).space);
  const { patterns, whole } = cutPatterns(worked);
  const shapes = panelShapes(placedPanels(worked));
  const blocks: PageBlock[] = [
    ...wholeBlocks(whole, worked, measure),
    // With no whole sheets before it the first pattern shares the first page with the notes.
    ...patterns.flatMap((pattern, i) =>
      patternBlocks(pattern, worked, (i === 0 && whole.length === 0 ? first : room) - 5, measure),
    ),
    ...(shapes.length > 0 ? [sectionBlock('Panels with notches, holes and slants')] : []),
    ...shapes.flatMap((shape) => panelBlocks(shape, room - 15, measure)),
  ];
  const pages = dealBlocks(blocks, first, room);
  return {
    name,
    title,
    pages: pages.map((page, i) => {
      const { items, space } = tradePage(document, i + 1, pages.length, measure, ratioOfPage(page));
      return upright([...items, ...drawDealt(page, space.left, space.top)]);
    }),
  };
}

function notesFor({ job }: WorkedOut): string[] {
  const { method, kerf } = job.cutting;
  const way =
    method === 'edge-to-edge'
      ? 'Every cut runs right across the piece in hand, in the order of the flags.'
      : 'Cuts need not run right across; follow the order of the flags.';
  const lost =
    kerf > 0
      ? `Each cut loses a kerf of ${formatMm(kerf)} mm to the right of its line or above it.`
      : 'No kerf is allowed for.';
  return [
    `All sketches are seen from the face. ${way}`,
    `Measure from the lower left corner of the stock sheet; “in hand” is the same cut from the left or the foot of the piece that is left by then. ${lost}`,
    'A black corner is the lower left of the panel as it hangs; turned: anticlockwise. Hatched: waste. Dashed: offcut to keep.',
  ];
}

function wholeBlocks(whole: readonly WholeSheets[], worked: WorkedOut, measure: TextMeasure): PageBlock[] {
  if (whole.length === 0) return [];
  const columns: FlowColumn[] = [
    { heading: 'Stock', align: 'left', width: 62 },
    { heading: 'Number', align: 'right', width: 16 },
    { heading: 'Stock sheet: panel', align: 'left', width: wholeWidth - 78 },
  ];
  const rows = whole.flatMap(({ stock, delivery, sheets }): FlowRow[] =>
    // Long lists in parts, so that they break over pages.
    partsOf(sheets, 60).map((part, i) => ({
      kind: 'row',
      cells: [
        i === 0 ? `${deliveryText(delivery)}: ${stockName(worked, stock)}` : '',
        i === 0 ? String(sheets.length) : '',
        part.map(({ id, placements }) => `${id}: ${placements[0]!.mark}`).join(', '),
      ],
    })),
  );
  const space = { height: 5, at: () => [] };
  const table = [layHeading(columns, measure), ...layRows(columns, rows, measure), space];
  return [
    sectionBlock('Whole stock sheets, not cut'),
    ...table.map((block): PageBlock => ({ width: 'whole', ...block })),
  ];
}

function sectionBlock(text: string): PageBlock {
  return {
    height: 9,
    keepWithNext: true,
    width: 'whole',
    at: (left, top) => [{ kind: 'text', text, at: { x: left, y: top - 5 }, height: 5, weight: 'semi-bold' }],
  };
}

function partsOf<T>(list: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(list.length / size) }, (_, i) =>
    list.slice(i * size, (i + 1) * size),
  );
}
