import type { Job } from '../job/schema';
import type { Programme } from '../programme/programme';
import { cautions } from './cautions';
import type { Item, LodeplanDocument, Page, TextMeasure } from './page';
import { boxHeight, boxWidth } from './paper';
import { chartAxis, chartHeight, drawChart, rowsThatFit } from './programme-chart';
import { programmeKey } from './programme-marks';
import { chartRows, type ChartRow } from './programme-rows';
import { itemsToSvg } from './svg';
import { fieldsOfJob, frameAndTitleBlock } from './title-block';

const format = { format: 'A3', landscape: true } as const;
const svgMargin = 5;
const svgWidth = 400;

/**
 * The dated plan of the work as a bar chart on A3 pages: visits, supply, every zone's tasks with their dates, floats and waits,
 * ready dates and handover. Every page has the same days. No pages if there is nothing to do.
 */
export function programmeSheet(job: Job, programme: Programme, measure: TextMeasure): LodeplanDocument {
  const document = { name: 'programme', title: `${job.name}: programme` };
  const rows = chartRows(job, programme);
  if (rows.length === 0) return { ...document, pages: [] };
  const first = framed(job, programme, 1, 1, measure).space;
  const next = framed(job, programme, 2, 2, measure).space;
  const parts = partRows(rows, rowsThatFit(boxHeight(first)), rowsThatFit(boxHeight(next)));
  const pages = parts.map((part, i): Page => {
    const { items, space } = framed(job, programme, i + 1, parts.length, measure);
    const axis = chartAxis(rows, programme.settings, space.left, boxWidth(space));
    return { ...format, items: [...items, ...drawChart(part, axis, space.left, space.top, measure)] };
  });
  return { ...document, pages };
}

/** The whole chart in one picture, for the screen; null if there is nothing to do. */
export function programmeSvg(job: Job, programme: Programme, measure: TextMeasure): string | null {
  const rows = chartRows(job, programme);
  if (rows.length === 0) return null;
  const axis = chartAxis(rows, programme.settings, svgMargin, svgWidth - 2 * svgMargin);
  const height = chartHeight(rows.length) + 2 * svgMargin;
  return itemsToSvg(drawChart(rows, axis, svgMargin, height - svgMargin, measure), svgWidth, height);
}

/** Rows by page; a group that goes on says its name again, and none begins at the foot of a page. */
function partRows(rows: readonly ChartRow[], firstRoom: number, room: number): ChartRow[][] {
  const pages: ChartRow[][] = [];
  let page: ChartRow[] = [];
  let group = '';
  for (const row of rows) {
    const most = pages.length === 0 ? firstRoom : room;
    const needed = row.kind === 'group' ? 2 : 1;
    if (page.length + needed > most && page.length > 1) {
      pages.push(page);
      page = row.kind === 'group' ? [] : [{ kind: 'group', text: `${group}, continued` }];
    }
    if (row.kind === 'group') group = row.text;
    page.push(row);
  }
  return [...pages, page];
}

function framed(
  job: Job,
  programme: Programme,
  sheet: number,
  sheets: number,
  measure: TextMeasure,
): { items: Item[]; space: ReturnType<typeof frameAndTitleBlock>['space'] } {
  const isFirst = sheet === 1;
  return frameAndTitleBlock(
    {
      ...fieldsOfJob(job),
      ...format,
      title: 'Programme',
      documentType: 'Programme',
      scale: null,
      sheet,
      sheets,
      notes: isFirst ? notesOf(programme) : [],
      cautions: isFirst ? cautionsOf(programme) : [],
      key: isFirst ? programmeKey : [],
    },
    measure,
  );
}

function notesOf({ settings, supply }: Programme): string[] {
  const { crew, dayOne } = settings;
  return [
    'Drying, hardening and curing run in elapsed hours, work in working hours. The data sheets of the products decide.',
    `One crew of ${crew} ${crew === 1 ? 'person' : 'people'} goes from task to task. Float: working hours by which a task may move.`,
    ...(dayOne === null
      ? []
      : ['Day 1 is the first day of work, taken to be the first working day of a week without holidays.']),
    ...(supply.decides
      ? []
      : ['Order and delivery: the latest days with which the work can begin as planned.']),
  ];
}

function cautionsOf({ tasks }: Programme): string[] {
  const kinds = new Set(tasks.map(({ kind }) => kind));
  return [
    ...(kinds.has('sand') || kinds.has('key') ? [cautions.dust] : []),
    ...(kinds.has('coat') || kinds.has('bond')
      ? ['Coatings and adhesives: ventilate, protect skin and eyes, follow the maker’s safety data sheet.']
      : []),
    ...(kinds.has('magnets')
      ? ['No magnets and no load before the day on which the zone is ready for them.']
      : []),
  ];
}
