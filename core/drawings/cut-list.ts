import type { WorkedOut } from '../worked-out';
import { bundlesOf, mostLifted, type Bundle } from './bundles';
import { cautions } from './cautions';
import { summaryOf } from './cut-list-summary';
import { countText, massText } from './figure-text';
import { dealOut, heightOf, layHeading, layRows, stack, type FlowColumn, type FlowRow } from './flow-table';
import { deliveryText } from './delivery-text';
import type { LodeplanDocument, TextMeasure } from './page';
import { paperFigures, roundedNote, sizeWithMm, type PaperFigures } from './paper-figures';
import { panelMeasures, type PanelMeasures } from './panel-measures';
import { panelWords } from './panel-words';
import type { PlacedPanel } from './placed-panels';
import { tradePage, upright, type TradeDocument } from './trade-page';

/** Feet and inches take more room than mm. */
function columnsFor({ units, areaUnit }: PaperFigures): FlowColumn[] {
  const widths = units === 'ft-in' ? [24, 53, 35, 18, 14, 12, 14] : [26, 27, 54, 20, 15, 14, 14];
  const left = (heading: string, i: number): FlowColumn => ({ heading, align: 'left', width: widths[i]! });
  return [
    ...['Panel', 'Width × height', 'Cut for', 'Cut from', 'Turned', 'Stock'].map(left),
    { heading: `Area ${areaUnit}`, align: 'right', width: widths[6]! },
  ];
}

/**
 * Every panel of the job by delivery and bundle, in the order of fixing: size, what it is cut for, which stock sheet or rack
 * piece it comes from; before them the sums. No pages if the job has no panels.
 */
export function cutList(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const bundles = bundlesOf(worked);
  const title = 'Cut list';
  const figures = paperFigures(worked.job.units);
  const columns = columnsFor(figures);
  if (bundles.length === 0) return { name: 'cut-list', title: `${worked.job.name}: cut list`, pages: [] };
  const document: TradeDocument = {
    job: worked.job,
    title,
    documentType: 'Cut list',
    notes: [
      'Sizes are width × height as the panel hangs, seen from the face. Turned: anticlockwise from there to the stock sheet.',
      ...(figures.units === 'ft-in' ? [roundedNote] : []),
      `Bundles are made up by room and in the order of fixing, none heavier than ${mostLifted} kg unless one panel is.`,
      ...(bundles.some(({ panels }) => panels.some(({ panel }) => panel.closing))
        ? ['Closing panels are measured on the wall before they are cut: the size here is the drawing’s.']
        : []),
    ],
    cautions: [cautions.edges, ...(bundles.some(({ isHeavy }) => isHeavy) ? [cautions.lifting] : [])],
  };
  const summary = summaryOf(worked, measure);
  const heading = layHeading(columns, measure);
  const rows = layRows(columns, listRows(bundles, figures), measure);
  const first = tradePage(document, 1, 1, measure).space;
  const next = tradePage(document, 2, 2, measure).space;
  const roomOf = ({ top, bottom }: { top: number; bottom: number }) => top - bottom - heading.height;
  const pages = dealOut(rows, roomOf(next), roomOf(first) - heightOf(summary));
  return {
    name: 'cut-list',
    title: `${worked.job.name}: cut list`,
    pages: pages.map((blocks, i) => {
      const { items, space } = tradePage(document, i + 1, pages.length, measure);
      const table = blocks.length > 0 ? [heading, ...blocks] : [];
      const content = i === 0 ? [...summary, ...table] : table;
      return upright([...items, ...stack(content, space.left, space.top)]);
    }),
  };
}

function listRows(bundles: readonly Bundle[], figures: PaperFigures): FlowRow[] {
  return bundles.flatMap(({ number, delivery, place, panels, mass, isHeavy }): FlowRow[] => {
    const cut = panels.filter(({ panel }) => !panel.full).length;
    const aside = [
      countText(panels.length, 'panel'),
      `${cut} cut`,
      ...(mass === null ? [] : [`${massText(mass)}${isHeavy ? ', too heavy for one' : ''}`]),
    ];
    return [
      {
        kind: 'group',
        text: `${deliveryText(delivery)}, ${place}: bundle ${number}`,
        aside: aside.join(', '),
      },
      ...panels.map((panel) => rowOf(panel, figures)),
    ];
  });
}

function rowOf(placed: PlacedPanel, figures: PaperFigures): FlowRow {
  const { panel, sheet, placement } = placed;
  const measures = panelMeasures(panel, placed);
  const turned = placement.quarterTurns === 0 ? '–' : `${placement.quarterTurns * 90}°`;
  return {
    kind: 'row',
    cells: [
      panel.mark,
      sizeWithMm(measures.width, measures.height, figures),
      cutForText(placed, measures, figures),
      sheet.fromRack === null ? sheet.id : `rack ${sheet.fromRack}`,
      placement.turnedOver ? `over, ${turned}`.replace(', –', '') : turned,
      panel.stock,
      figures.area(measures.area),
    ],
  };
}

function cutForText(placed: PlacedPanel, measures: PanelMeasures, figures: PaperFigures): string {
  const { panel } = placed;
  if (panel.full) return 'whole stock sheet';
  const { cutFor } = panelWords(panel, placed, figures.cut, measures);
  return panel.closing ? `closing panel; ${cutFor}` : cutFor;
}
