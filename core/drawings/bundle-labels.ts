import { chosenTitle } from '../job/alternatives';
import type { WorkedOut } from '../worked-out';
import { bundlesOf, fixingPlaces, mostLifted, type Bundle, type FixingPlace } from './bundles';
import { deliveryText } from './delivery-text';
import { countText, massText } from './figure-text';
import { exactMm, paperFigures, sizeText } from './paper-figures';
import type { Item, LodeplanDocument, Page, Text, TextMeasure } from './page';
import { cornersOf, type PaperBox } from './paper';
import { panelMeasures } from './panel-measures';
import type { PlacedPanel } from './placed-panels';
import { fitText, textBlock } from './text';
import { upright } from './trade-page';

/** mm. Twelve labels a page, two abreast, to be parted along the lines; a bundle's own label takes four places. */
const margin = 10;
const label = { width: 95, height: 46 };
const rows = 6;
const inset = 5;

/**
 * Labels to be cut apart and tied or stuck on: one for each bundle, after it one for each of its panels in the order of
 * fixing; every delivery begins on a new page. No pages if the job has no panels.
 */
export function bundleLabels(worked: WorkedOut, measure: TextMeasure): LodeplanDocument {
  const fixing = fixingPlaces(worked);
  const bundles = bundlesOf(worked);
  const pages: PageOfLabels[] = [];
  let delivery: string | undefined;
  for (const bundle of bundles) {
    if (bundle.delivery !== delivery) pages.push({ items: [], places: 0 });
    delivery = bundle.delivery;
    place(pages, 4, (box) => bundleLabel(bundle, bundles.length, worked, box, measure));
    for (const placed of bundle.panels) {
      place(pages, 1, (box) =>
        panelLabel(placed, bundle, fixing.get(placed.panel.mark), worked, box, measure),
      );
    }
  }
  return {
    name: 'bundle-labels',
    title: `${worked.job.name}: bundle labels`,
    pages: pages.map(({ items }): Page => upright(items)),
  };
}

interface PageOfLabels {
  readonly items: Item[];
  /** Taken so far, two a row. */
  places: number;
}

/** On the next free place; a bundle's label begins a row of its own and goes to a new page where it would not fit. */
function place(pages: PageOfLabels[], size: 1 | 4, draw: (box: PaperBox) => Item[]): void {
  let page = pages.at(-1)!;
  if (size === 4) page.places += page.places % 2;
  if (page.places + size > 2 * rows) {
    page = { items: [], places: 0 };
    pages.push(page);
  }
  const left = margin + (page.places % 2) * label.width;
  const top = 297 - margin - Math.floor(page.places / 2) * label.height;
  const [across, down] = size === 4 ? [2, 2] : [1, 1];
  const box = {
    left,
    top,
    right: left + across * label.width,
    bottom: top - down * label.height,
  };
  page.items.push(
    { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.18, colour: 'soft' },
    ...draw(box),
  );
  page.places += size;
}

function panelLabel(
  placed: PlacedPanel,
  bundle: Bundle,
  fixing: FixingPlace | undefined,
  worked: WorkedOut,
  box: PaperBox,
  measure: TextMeasure,
): Item[] {
  const { panel, wall, zone, sheet } = placed;
  const { width, height } = panelMeasures(panel, placed);
  const { left, right, top } = insideOf(box);
  const figures = paperFigures(worked.job.units);
  const exact = exactMm(width, height, figures.units);
  const size = `${sizeText(width, height, figures.cut)}${exact ? ` (${exact})` : ''}`;
  const order = fixing ? `fix ${fixing.place} of ${fixing.of}` : '';
  const orderWidth = order ? measure(order, 3.5) + 4 : 0;
  const source = sheet.fromRack === null ? `${sheet.id}, ${panel.stock}` : `rack ${sheet.fromRack}`;
  const line = (text: string, down: number, size: Text['height'], more: Partial<Text> = {}) =>
    fitText(
      { kind: 'text', text, at: { x: left, y: top - down }, height: size, ...more },
      right - left,
      measure,
    );
  return [
    fitText(
      { kind: 'text', text: panel.mark, at: { x: left, y: top - 10 }, height: 10, weight: 'semi-bold' },
      right - left - orderWidth,
      measure,
    ),
    ...(order
      ? [{ kind: 'text', text: order, at: { x: right, y: top - 3.5 }, height: 3.5, anchor: 'end' } as const]
      : []),
    line(`${size}${panel.full ? ', whole' : ''}`, 18.5, 5, { weight: 'semi-bold' }),
    line(wallText(wall.wall), 24.6, 3.5),
    panel.closing
      ? line('Closing panel: measure on the wall before cutting.', 29.8, 3.5, {
          weight: 'semi-bold',
          colour: 'red-lead',
        })
      : line(named('zone', zone.zone), 29.8, 3.5),
    line(`Bundle ${bundle.number}, ${deliveryText(bundle.delivery)}; from ${source}`, 34.6, 2.5, {
      colour: 'soft',
    }),
    line(jobText(worked), 38.4, 2.5, { colour: 'soft' }),
  ];
}

function bundleLabel(
  bundle: Bundle,
  of: number,
  worked: WorkedOut,
  box: PaperBox,
  measure: TextMeasure,
): Item[] {
  const { left, right, top } = insideOf(box);
  const line = (text: string, down: number, size: Text['height'], more: Partial<Text> = {}) =>
    fitText(
      { kind: 'text', text, at: { x: left, y: top - down }, height: size, ...more },
      right - left,
      measure,
    );
  const weight =
    bundle.mass === null ? 'weight not known: a stock sheet has no thickness' : massText(bundle.mass);
  const marks = bundle.panels.map(({ panel }) => panel.mark);
  const frame: PaperBox = {
    left: box.left + 1.5,
    right: box.right - 1.5,
    bottom: box.bottom + 1.5,
    top: box.top - 1.5,
  };
  return [
    { kind: 'stroke', points: cornersOf(frame), closed: true, width: 0.7 },
    line(`Bundle ${bundle.number} of ${of}`, 14, 14, { weight: 'semi-bold' }),
    line(`${deliveryText(bundle.delivery)}: ${bundle.place}`, 26.5, 7, { weight: 'semi-bold' }),
    line(`${countText(bundle.panels.length, 'panel')}, ${weight}`, 37, 5),
    ...marksLines(marks, { left, top: top - 42, width: right - left }, measure),
    ...(bundle.isHeavy
      ? [
          line(
            `Heavier than ${mostLifted} kg: two people or a lifting aid; the local rules for lifting decide.`,
            73,
            3.5,
            { weight: 'semi-bold', colour: 'red-lead' },
          ),
        ]
      : []),
    line(jobText(worked), 80, 3.5, { colour: 'soft' }),
  ];
}

/** As many marks in their order as there is room for, then how many more there are. */
function marksLines(
  marks: readonly string[],
  at: { left: number; top: number; width: number },
  measure: TextMeasure,
): Item[] {
  const most = 27;
  for (let shown = marks.length; shown > 0; shown--) {
    const rest = marks.length - shown;
    const words = marks.slice(0, shown).join('   ') + (rest > 0 ? `   and ${rest} more` : '');
    const block = textBlock(words, at, 3.5, {}, measure);
    if (block.height <= most) return block.items;
  }
  return [];
}

function insideOf({ left, right, top, bottom }: PaperBox): PaperBox {
  return { left: left + inset, right: right - inset, top: top - inset, bottom: bottom + inset };
}

function wallText(wall: { id: string; name: string; room?: string | undefined }): string {
  return [...(wall.room ? [wall.room] : []), named('wall', wall)].join(', ');
}

function named(word: string, { id, name }: { id: string; name: string }): string {
  return `${word} ${id}${name ? ` ${name}` : ''}`;
}

function jobText({ job }: WorkedOut): string {
  const revision = job.revision ? `Revision ${job.revision}` : '';
  return [job.name, chosenTitle(job), job.reference, revision].filter(Boolean).join(', ');
}
