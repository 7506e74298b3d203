import type { Job } from '../job/schema';
import type { Mm } from '../units';
import type { Item, LineType, LineWidth, Page, PaperPoint, Stroke, Text, TextMeasure } from './page';
import { cornersOf, pageSize } from './paper';
import { paperFigures } from './paper-figures';
import type { Template } from './template-shapes';
import type { TileGrid } from './template-tiles';
import { fitText } from './text';

/** What a page of a template says under it, mm. */
export const footHeight: Mm = 34;
/** mm. Whoever measures it knows whether the page is true. */
export const checkBar: Mm = 100;
const left: Mm = 10;
const keySize = { width: 34, height: 22 };

/** Which template and page this is, for which panels, the bar to measure, the key of lines and of pages. */
export function templateFoot(
  template: Template,
  number: number,
  job: Job,
  grid: TileGrid,
  index: number,
  page: Pick<Page, 'format' | 'landscape'>,
  measure: TextMeasure,
): Item[] {
  const right = pageSize(page).width - 10;
  const { length } = paperFigures(job.units);
  const keyLeft = right - keySize.width;
  const write = (text: string, y: Mm, height: Text['height'], room: Mm, more: Partial<Text> = {}) =>
    fitText({ kind: 'text', text, at: { x: left, y }, height, ...more }, room, measure);
  const pages = grid.tiles.length;
  const marks = template.uses.map(({ panel }) => panel.mark);
  const [only] = template.uses;
  const place =
    template.uses.length === 1
      ? `${only!.panel.mark}: setting lines ${length(only!.x)} from left edge, ${length(only!.y)} from foot edge`
      : `for ${marks.slice(0, 4).join(', ')}${marks.length > 4 ? ` and ${marks.length - 4} more` : ''}; where on each panel: see the table`;
  const words = [job.name, job.reference, job.revision && `revision ${job.revision}`].filter(Boolean);
  return [
    write(`T${number}: ${template.words(length)}`, 38, 5, keyLeft - 6 - left, { weight: 'semi-bold' }),
    write(place, 31.5, 3.5, keyLeft - 22 - left),
    write(pages === 1 ? 'on one page' : `page ${index + 1} of ${pages}`, 25, 3.5, checkBar, {
      weight: 'semi-bold',
    }),
    write('This bar is 100 mm long, or the page must not be used.', 19, 2.5, checkBar),
    ...bar(16),
    write(words.join(', '), 10.6, 2.5, checkBar + 40, { colour: 'soft' }),
    ...lineKey(checkBar + left + 6, measure),
    ...upArrow(keyLeft - 9),
    ...(pages > 1 ? pageKey(grid, index, keyLeft, measure) : []),
  ];
}

function bar(y: Mm): Item[] {
  const ticks = Array.from({ length: 11 }, (_, i) => left + i * 10);
  return [
    { kind: 'stroke', points: [point(left, y), point(left + checkBar, y)], width: 0.7 },
    ...ticks.map((x, i): Item => {
      const reach = i % 10 === 0 ? 2 : i % 5 === 0 ? 1.4 : 0.9;
      return { kind: 'stroke', points: [point(x, y - reach), point(x, y + reach)], width: 0.25 };
    }),
  ];
}

function lineKey(x: Mm, measure: TextMeasure): Item[] {
  const entry = (y: Mm, text: string, width: LineWidth, line?: LineType): Item[] => [
    { kind: 'stroke', points: [point(x, y + 1.2), point(x + 10, y + 1.2)], width, ...(line && { line }) },
    fitText({ kind: 'text', text, at: point(x + 12, y), height: 2.5 }, 26, measure),
  ];
  return [
    ...entry(25, 'cut here', 0.5),
    ...entry(20.5, 'setting line', 0.25, 'long-dashed-dotted'),
    ...entry(16, 'panel edge', 0.35),
  ];
}

function upArrow(x: Mm): Item[] {
  return [
    {
      kind: 'fill',
      rings: [
        [
          point(x - 0.8, 15),
          point(x + 0.8, 15),
          point(x + 0.8, 24),
          point(x + 2.4, 24),
          point(x, 29),
          point(x - 2.4, 24),
          point(x - 0.8, 24),
        ],
      ],
      colour: 'ink',
    },
    { kind: 'text', text: 'up', at: point(x, 11.4), height: 2.5, anchor: 'middle' },
  ];
}

/** How the pages lie beside one another; where nothing is cut there is none. */
function pageKey(
  { columns, rows, tiles }: TileGrid,
  index: number,
  keyLeft: Mm,
  measure: TextMeasure,
): Item[] {
  const cell = Math.min(7, keySize.width / columns, keySize.height / rows);
  const top = 10 + keySize.height;
  return tiles.flatMap(({ column, row }, i): Item[] => {
    const box = {
      left: keyLeft + column * cell,
      right: keyLeft + (column + 1) * cell,
      top: top - row * cell,
      bottom: top - (row + 1) * cell,
    };
    const isThis = i === index;
    const text: Text = {
      kind: 'text',
      text: String(i + 1),
      at: point((box.left + box.right) / 2, (box.top + box.bottom) / 2 - 1.25),
      height: 2.5,
      anchor: 'middle',
      ...(isThis && { weight: 'semi-bold', colour: 'paper' }),
    };
    const isRoomy = cell >= 4.5 && measure(text.text, 2.5, text) < cell - 0.6;
    const outline: Stroke = { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.25 };
    return [
      ...(isThis ? [{ kind: 'fill', rings: [cornersOf(box)], colour: 'ink' } as const] : []),
      outline,
      ...(isRoomy ? [text] : []),
    ];
  });
}

function point(x: Mm, y: Mm): PaperPoint {
  return { x, y };
}
