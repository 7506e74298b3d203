import type { Difference } from '../job/differences/difference';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { budgetField } from './budget-words';
import { drawClouds } from './change-clouds';
import { groupChanges, type ChangeGroup } from './change-groups';
import { dealOut, layHeading, layRows, stack, type FlowBlock, type FlowColumn } from './flow-table';
import type { Item, LodeplanDocument, Page, PaperFormat, TextMeasure } from './page';
import { boxHeight, boxWidth, type PaperBox } from './paper';
import { sentenceOnPaper } from './paper-figures';
import { fieldsOfJob, frameAndTitleBlock, type SheetInfo } from './title-block';
import { wallPicture } from './wall-picture';

/** What a plan is held against: a revision as it was issued, and in what the plan differs from it. */
export interface Since {
  readonly revision: string;
  /** ISO 8601. */
  readonly date: string;
  readonly before: WorkedOut;
  readonly differences: readonly Difference[];
}

interface Draft {
  readonly worked: WorkedOut;
  readonly since: Since;
  readonly measure: TextMeasure;
}

interface DraftPage {
  readonly format: PaperFormat;
  readonly title: string;
  readonly notes: readonly string[];
  readonly walls: readonly WorkedWall[];
  readonly draw: (space: PaperBox) => Item[];
}

/** More than these on one wall ask for the larger paper. */
const mostOnA4 = 8;
const gap = 8;
const heading = 'What has changed';

/**
 * What has changed since a revision was issued: a page a changed wall with clouds round what differs and the words to
 * their numbers, then what is changed elsewhere in the job. No pages if nothing differs.
 */
export function changesSince(worked: WorkedOut, since: Since, measure: TextMeasure): LodeplanDocument {
  const groups = groupChanges(since.differences);
  const draft: Draft = { worked, since, measure };
  const walls = [...new Set(groups.flatMap(({ wall }) => wall ?? []))];
  const ofJob = groups.filter(({ wall }) => wall === null);
  const pages = [
    ...walls.flatMap((id) =>
      wallPages(
        draft,
        id,
        groups.filter(({ wall }) => wall === id),
      ),
    ),
    ...(ofJob.length > 0 ? listPages(draft, 'The job', ofJob, 'A4', []) : []),
  ];
  return {
    name: 'changes-since',
    title: `${worked.job.name}: changes since revision ${since.revision}`,
    pages: pages.map((page, i): Page => {
      const { items, space } = frameAndTitleBlock(infoOf(draft, page, i + 1, pages.length), measure);
      return { format: page.format, landscape: true, items: [...items, ...page.draw(space)] };
    }),
  };
}

function infoOf({ worked, since }: Draft, page: DraftPage, sheet: number, sheets: number): SheetInfo {
  const issued = since.date ? ` of ${since.date}` : '';
  return {
    ...fieldsOfJob(worked.job),
    format: page.format,
    landscape: true,
    title: page.title,
    documentType: `Changes since ${since.revision}`,
    scale: null,
    sheet,
    sheets,
    notes: [`Against revision ${since.revision}${issued}, as it was issued.`, ...page.notes],
    cautions: [],
    ...budgetField(page.walls.map(({ survey }) => survey.wall)),
  };
}

/** The picture at the left, the words at its right, what finds no room there on further pages. */
function wallPages(draft: Draft, id: string, groups: readonly ChangeGroup[]): DraftPage[] {
  const { worked, since, measure } = draft;
  const of = ({ walls }: WorkedOut) => walls.find(({ survey }) => survey.wall.id === id);
  const wall = of(worked) ?? of(since.before);
  const title = titleOf(worked, since.before, id);
  const format: PaperFormat = groups.length > mostOnA4 ? 'A3' : 'A4';
  if (!wall) return listPages(draft, title, groups, format, []);
  const notes = [
    of(worked) ? 'The wall as it is now; clouds round what has changed.' : 'The wall as it was: it is gone.',
  ];
  const first: DraftPage = { format, title, notes, walls: [wall], draw: () => [] };
  const { space } = frameAndTitleBlock(infoOf(draft, first, 1, 1), measure);
  const wordsWidth = Math.max(84, boxWidth(space) * 0.36);
  const columns = columnsOf(wordsWidth);
  const head = layHeading(columns, measure);
  const rows = rowsOf(draft, groups, columns);
  const [beside = [], ...rest] = dealOut(rows, boxHeight(space) - head.height);
  const left = rest.flat().length;
  return [
    {
      ...first,
      draw: (page) => [
        ...pictured(wall, groups, { ...page, right: page.right - wordsWidth - gap }, measure),
        ...stack([head, ...beside], page.right - wordsWidth, page.top),
      ],
    },
    ...(left > 0 ? listPages(draft, title, groups.slice(groups.length - left), format, [wall]) : []),
  ];
}

function pictured(
  wall: WorkedWall,
  groups: readonly ChangeGroup[],
  room: PaperBox,
  measure: TextMeasure,
): Item[] {
  // Clouds and their numbers stand out past the wall.
  const around = 7;
  const size = { width: boxWidth(room) - 2 * around, height: boxHeight(room) - 2 * around };
  const small = wallPicture(wall, size, measure);
  const corner = {
    x: room.left + around + (size.width - small.width) / 2,
    y: room.bottom + around + (size.height - small.height) / 2,
  };
  const picture = wallPicture(wall, size, measure, corner);
  const clouds = drawClouds(groups, picture.toPaper, picture.taken, room, measure);
  return [...picture.items, ...clouds.items];
}

function listPages(
  draft: Draft,
  title: string,
  groups: readonly ChangeGroup[],
  format: PaperFormat,
  walls: readonly WorkedWall[],
): DraftPage[] {
  const page: DraftPage = { format, title, notes: [], walls, draw: () => [] };
  const { space } = frameAndTitleBlock(infoOf(draft, page, 1, 1), draft.measure);
  const columns = columnsOf(Math.min(boxWidth(space), 200));
  const head = layHeading(columns, draft.measure);
  const dealt = dealOut(rowsOf(draft, groups, columns), boxHeight(space) - head.height);
  return dealt.map((rows) => ({ ...page, draw: ({ left, top }) => stack([head, ...rows], left, top) }));
}

function columnsOf(width: number): FlowColumn[] {
  return [
    { heading: 'No.', align: 'left', width: 11 },
    { heading, align: 'left', width: width - 11 },
  ];
}

function rowsOf(
  { worked, measure }: Draft,
  groups: readonly ChangeGroup[],
  columns: FlowColumn[],
): FlowBlock[] {
  const rows = groups.map(({ number, texts, places, wall }) => {
    const words = sentenceOnPaper(texts.join(' '), worked.job.units);
    const unmarked = places.length === 0 && wall !== null ? ' Not marked on the drawing.' : '';
    return { kind: 'row', cells: [String(number), `${words}${unmarked}`] } as const;
  });
  return layRows(columns, rows, measure);
}

function titleOf(is: WorkedOut, was: WorkedOut, id: string): string {
  const wall = [...is.job.walls, ...was.job.walls].find((one) => one.id === id);
  return ['Wall', id, wall?.name].filter(Boolean).join(' ');
}
