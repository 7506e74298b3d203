import type { WorkedOut } from '../worked-out';
import { cautions } from './cautions';
import { summaryOf } from './cut-list-summary';
import { areaText, countText, massText, sizeText } from './figure-text';
import { dealOut, heightOf, layHeading, layRows, stack, type FlowColumn, type FlowRow } from './flow-table';
import { massOf } from './job-figures';
import type { LodeplanDocument, TextMeasure } from './page';
import { panelMeasures } from './panel-measures';
import { panelWords } from './panel-words';
import { placedPanels, type PlacedPanel } from './placed-panels';
import { tradePage, upright, type TradeDocument } from './trade-page';

const columns: readonly FlowColumn[] = [
  { heading: 'Panel', align: 'left', width: 26 },
  { heading: 'Width × height', align: 'left', width: 27 },
  { heading: 'Cut for', align: 'left', width: 54 },
  { heading: 'Cut from', align: 'left', width: 20 },
  { heading: 'Turned', align: 'left', width: 15 },
  { heading: 'Stock', align: 'left', width: 14 },
  { heading: 'Area m²', align: 'right', width: 14 },
];

/**
 * Every panel of the job by delivery and wall: size, what it is cut for, which stock sheet or rack piece it comes from;
 * before them the sums. No pages if the job has no panels.
 */
export function cutList(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const placed = placedPanels(worked);
  const title = 'Cut list';
  if (placed.length === 0) return { name: 'cut-list', title: `${worked.job.name}: cut list`, pages: [] };
  const document: TradeDocument = {
    job: worked.job,
    title,
    documentType: 'Cut list',
    notes: [
      'Sizes are width × height as the panel hangs, seen from the face. Turned: anticlockwise from there to the stock sheet.',
    ],
    cautions: [cautions.edges],
  };
  const summary = summaryOf(worked, measure);
  const heading = layHeading(columns, measure);
  const rows = layRows(columns, listRows(placed, worked), measure);
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

function listRows(placed: readonly PlacedPanel[], worked: WorkedOut): FlowRow[] {
  const deliveries = [...new Set(worked.cutting.sheets.map(({ delivery }) => delivery))];
  return deliveries.flatMap((delivery) =>
    worked.walls.flatMap(({ survey }): FlowRow[] => {
      const own = placed.filter(({ wall, sheet }) => wall === survey && sheet.delivery === delivery);
      if (own.length === 0) return [];
      const { id, name } = survey.wall;
      const cut = own.filter(({ panel }) => !panel.full).length;
      const mass = massOf(
        own.map(({ panel }) => panel),
        worked,
      );
      const aside = [
        countText(own.length, 'panel'),
        `${cut} cut`,
        ...(mass === null ? [] : [massText(mass)]),
      ];
      return [
        {
          kind: 'group',
          text: `${deliveryText(delivery)}, wall ${id}${name ? ` ${name}` : ''}`,
          aside: aside.join(', '),
        },
        ...own.map(rowOf),
      ];
    }),
  );
}

function rowOf(placed: PlacedPanel): FlowRow {
  const { panel, sheet, placement } = placed;
  const measures = panelMeasures(panel, placed);
  const turned = placement.quarterTurns === 0 ? '–' : `${placement.quarterTurns * 90}°`;
  return {
    kind: 'row',
    cells: [
      panel.mark,
      sizeText(measures.width, measures.height),
      panel.full ? 'whole stock sheet' : panelWords(panel, placed, measures).cutFor,
      sheet.fromRack === null ? sheet.id : `rack ${sheet.fromRack}`,
      placement.turnedOver ? `over, ${turned}`.replace(', –', '') : turned,
      panel.stock,
      areaText(measures.area),
    ],
  };
}

/** `Delivery 1`; the walls without one go together as the last. */
export function deliveryText(delivery: string): string {
  return delivery ? `Delivery ${delivery}` : 'Last delivery';
}
