import type { WorkedOut } from '../worked-out';
import type { Mm } from '../units';
import { withGapBelow } from './arrange-block';
import { cautions, checkOnSite } from './cautions';
import { deliveryText } from './delivery-text';
import { cutPatterns, type CutPattern, type WholeSheets } from './cut-patterns';
import { patternGroup, sheetsText } from './cut-sheet-blocks';
import { patternIndex } from './cut-sheet-index';
import { stockName } from './cut-sheet-lists';
import { cutSteps } from './cut-steps';
import { layHeading, layRows, type FlowColumn, type FlowRow } from './flow-table';
import type { LodeplanDocument, TextMeasure } from './page';
import {
  dealBlocks,
  drawDealt,
  ratioOfPage,
  wholeWidth,
  type BlockGroup,
  type DealtPage,
  type PageBlock,
} from './page-blocks';
import { measurePanels, panelBlocks, panelShapes, type PanelShape } from './panel-sheet';
import { closingSign } from './panel-marks';
import { measureFirst } from './panel-words';
import { paperFigures, roundedNote, type WriteLength } from './paper-figures';
import { placedPanels } from './placed-panels';
import { proofText } from './proof-text';
import { tradePage, upright, type TradeDocument } from './trade-page';
import { panelSheetOf } from './whole-to-open';

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
  const content = contentOf(worked, first, room, measure);
  const pages = dealWithIndex(content, first, room, measure);
  return {
    name,
    title,
    pages: pages.map((page, i) => {
      const { items, space } = tradePage(document, i + 1, pages.length, measure, ratioOfPage(page));
      return upright([...items, ...drawDealt(page, space.left, space.top)]);
    }),
  };
}

interface Content {
  readonly whole: readonly BlockGroup[];
  readonly drawings: readonly BlockGroup[];
  /** The block that shows each pattern. */
  readonly shownBy: ReadonlyMap<CutPattern, PageBlock>;
}

function contentOf(worked: WorkedOut, first: Mm, room: Mm, measure: TextMeasure): Content {
  const { method, kerf } = worked.job.cutting;
  const figures = paperFigures(worked.job.units);
  const { patterns, whole } = cutPatterns(worked);
  const panels = measurePanels(placedPanels(worked));
  const cutouts = new Map(panels.map(({ placed, measures }) => [placed.panel.mark, measures.cutouts]));
  const shapes = panelShapes(panels);
  const shapeOf = new Map(shapes.flatMap((shape) => shape.marks.map((mark) => [mark, shape] as const)));
  const onPanelSheet = new Map<PanelShape, CutPattern[]>();
  const shownBy = new Map<CutPattern, PageBlock>();
  const patternGroups = patterns.flatMap((pattern, i): BlockGroup[] => {
    const steps = cutSteps(pattern.drawn, method, kerf * 100);
    const shape = panelSheetOf(pattern, steps, shapeOf);
    if (shape) {
      onPanelSheet.set(shape, [...(onPanelSheet.get(shape) ?? []), pattern]);
      return [];
    }
    // With no whole sheets before it the first pattern shares the first page with the notes.
    const most = i === 0 && whole.length === 0 ? first : room;
    const cutoutsOf = (mark: string) => cutouts.get(mark) ?? [];
    const group = patternGroup(pattern, steps, cutoutsOf, worked, most, measure);
    shownBy.set(pattern, group.blocks[0]!);
    return [group];
  });
  const heading = sectionBlock('Panels with notches, holes and slants');
  const panelGroups = shapes.map((shape, i): BlockGroup => {
    const own = onPanelSheet.get(shape) ?? [];
    const blocks = panelBlocks(
      shape,
      own.map((pattern) => patternText(pattern, figures.cut)),
      room - heading.height,
      figures,
      measure,
    );
    for (const pattern of own) shownBy.set(pattern, blocks[0]!);
    return { blocks: i === 0 ? [heading, ...blocks] : blocks };
  });
  return {
    whole: whole.length > 0 ? [wholeGroup(whole, worked, measure)] : [],
    drawings: [...patternGroups, ...panelGroups],
    shownBy,
  };
}

/** `Pattern 2: 1 stock sheet N13, whole but for this`. */
function patternText({ number, sheets }: CutPattern, write: WriteLength): string {
  return `Pattern ${number}: ${sheetsText(sheets, write).replace(/,$/, '')}, whole but for this`;
}

/** Patterns that run over several pages are listed on the first with the pages they are on. */
function dealWithIndex(
  { whole, drawings, shownBy }: Content,
  first: Mm,
  room: Mm,
  measure: TextMeasure,
): DealtPage[] {
  const plain = dealBlocks([...whole, ...drawings], first, room);
  if (plain.length === 1 || shownBy.size === 0) return plain;
  const patterns = [...shownBy.keys()].sort((a, b) => a.number - b.number);
  const deal = (pageOf: (pattern: CutPattern) => number) =>
    dealBlocks([patternIndex(patterns, pageOf, measure), ...whole, ...drawings], first, room);
  const pageOf = new Map(
    deal(() => 1).flatMap(({ blocks }, i) => blocks.map(({ block }) => [block, i + 1] as const)),
  );
  return deal((pattern) => pageOf.get(shownBy.get(pattern)!)!);
}

function notesFor(worked: WorkedOut): string[] {
  const { method, kerf } = worked.job.cutting;
  const figures = paperFigures(worked.job.units);
  const way =
    method === 'edge-to-edge'
      ? 'Every cut runs right across the piece in hand, in the order of the flags.'
      : 'Cuts need not run right across; follow the order of the flags.';
  const lost =
    kerf > 0
      ? `Each cut loses a kerf of ${figures.words(kerf)} to the right of its line or above it.`
      : 'No kerf is allowed for.';
  return [
    proofText(worked),
    `Seen from the face. ${way}`,
    `Measure from the lower left corner of the stock sheet; “in hand” is the same cut from the left or the foot of the piece left by then. ${lost}`,
    ...(hasClosing(worked)
      ? [`${closingSign}: closing panel, ${measureFirst}; the size here is the drawing’s.`]
      : []),
    ...(figures.units === 'ft-in' ? [roundedNote] : []),
    'A black corner is the lower left of the panel as it hangs; turned: anticlockwise. Hatched: waste. Dashed: offcut to keep.',
  ];
}

function hasClosing({ walls }: WorkedOut): boolean {
  return walls.some(({ zones }) => zones.some(({ layout }) => layout?.panels.some(({ closing }) => closing)));
}

function wholeGroup(whole: readonly WholeSheets[], worked: WorkedOut, measure: TextMeasure): BlockGroup {
  const columns: FlowColumn[] = [
    { heading: 'Stock', align: 'left', width: 65 },
    { heading: 'Number', align: 'right', width: 16 },
    { heading: 'Stock sheet or rack piece: panel', align: 'left', width: wholeWidth - 81 },
  ];
  const rows = whole.flatMap(({ stock, delivery, racked, sheets }): FlowRow[] =>
    // Long lists in parts, so that they break over pages.
    partsOf(sheets, 60).map((part, i) => ({
      kind: 'row',
      cells: [
        i === 0
          ? `${deliveryText(delivery)}: ${racked ? 'rack pieces of ' : ''}${stockName(worked, stock)}`
          : '',
        i === 0 ? String(sheets.length) : '',
        part.map(({ id, placements }) => `${id}: ${placements[0]!.mark}`).join(', '),
      ],
    })),
  );
  const table = [{ ...layHeading(columns, measure), keepWithNext: true }, ...layRows(columns, rows, measure)];
  return {
    blocks: [
      sectionBlock('Used whole, not cut'),
      ...withGapBelow(table.map((block): PageBlock => ({ width: 'whole', ...block }))),
    ],
  };
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
