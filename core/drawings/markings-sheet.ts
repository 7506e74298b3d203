import type { Marking } from '../job/marking-schema';
import { drawMarking } from '../markings/draw-marking';
import type { MarkingDrawing } from '../markings/marking-drawing';
import { makeOfMarking, markingKindWords, titleOfMarking } from '../markings/marking-words';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { budgetField } from './budget-words';
import { checkOnSite, doNotScale } from './cautions';
import { dealTables, type Schedule } from './deal-tables';
import { linesAlong, linesUp, markingView, type MarkingView } from './markings-view';
import type { LodeplanDocument, Page, TextMeasure } from './page';
import { scales, type Scale } from './paper';
import { paperFigures, sizeText, type PaperFigures } from './paper-figures';
import type { Pictures } from './pictures';
import { fieldsOfJob, frameAndTitleBlock, type SheetInfo } from './title-block';

/**
 * The sheet of a wall's markings: for each a page with its zone, running dimensions of every line from the zone's left
 * edge and from the floor, and what is lettered; then a table of the lines whose figures found no room. No pages where
 * nothing is marked.
 *
 * @param wallIndex of `worked.walls`
 */
export function markingsSheet(
  worked: WorkedOut,
  wallIndex: number,
  measure: TextMeasure,
  pictures: Pictures,
): LodeplanDocument {
  const wall = worked.walls[wallIndex]!;
  const { id, name } = wall.survey.wall;
  const figures = paperFigures(worked.job.units);
  const drafts = wall.zones.flatMap((zone) =>
    (zone.area.zone.markings ?? []).flatMap((marking) => {
      const { left, bottom } = zone.area.box;
      const draft = {
        worked,
        wall,
        zone,
        marking,
        drawn: drawMarking(marking, { x: left, y: bottom }),
        figures,
        measure,
      };
      return pagesOf(draft, pictures);
    }),
  );
  return {
    name: `markings-${id}`,
    title: `${worked.job.name}: markings, wall ${[id, name].filter(Boolean).join(' ')}`,
    pages: drafts.map(({ draft, format, scale, items, notes }, i): Page => {
      const info = infoOf(draft, format, scale, notes, i + 1, drafts.length);
      return { format, landscape: true, items: [...frameAndTitleBlock(info, measure).items, ...items] };
    }),
  };
}

interface Draft {
  readonly worked: WorkedOut;
  readonly wall: WorkedWall;
  readonly zone: WorkedWall['zones'][number];
  readonly marking: Marking;
  readonly drawn: MarkingDrawing;
  readonly figures: PaperFigures;
  readonly measure: TextMeasure;
}

interface DraftPage {
  readonly draft: Draft;
  readonly format: Page['format'];
  readonly scale: Scale | null;
  readonly items: Page['items'];
  readonly notes: readonly string[];
}

/** With every figure and heading on A4 or else A3, else with every figure, else only with those of the edges and a table. */
function pagesOf(draft: Draft, pictures: Pictures): DraftPage[] {
  const whole = (['A4', 'A3'] as const).flatMap((format) => {
    const view = viewOn(draft, format, true, pictures);
    return view ? [{ format, view }] : [];
  });
  const best = whole.find(({ view }) => view.unlettered.length === 0) ?? whole.at(-1);
  if (best) return [drawingPage(draft, best.format, best.view)];
  const view = viewOn(draft, 'A3', false, pictures);
  const table = tablesOf(draft, 'A3');
  return view ? [drawingPage(draft, 'A3', view, 'Lines: see the table on the next sheet.'), ...table] : table;
}

interface ScaledView extends MarkingView {
  readonly scale: Scale;
}

/** At the largest scale at which the zone fits; on A4 no smaller than is read from a ladder. */
function viewOn(
  draft: Draft,
  format: Page['format'],
  everyLine: boolean,
  pictures: Pictures,
): ScaledView | undefined {
  const { wall, zone, drawn, figures, measure } = draft;
  for (const scale of scales.filter(({ real }) => format === 'A3' || real <= 20)) {
    const { space } = frameAndTitleBlock(infoOf(draft, format, scale, notesOf(draft, [' ']), 1, 1), measure);
    const view = markingView({
      wall,
      zone,
      drawn,
      scale,
      space,
      everyLine,
      pictures,
      write: figures.length,
      measure,
    });
    if (view === 'too large') continue;
    return view && { ...view, scale };
  }
  return undefined;
}

function drawingPage(draft: Draft, format: Page['format'], view: ScaledView, more?: string): DraftPage {
  const left =
    view.unlettered.length > 0 ? [`Too small to be written here: ${view.unlettered.join(', ')}.`] : [];
  const notes = notesOf(draft, [...left, ...(more ? [more] : [])]);
  return { draft, format, scale: view.scale, items: view.items, notes };
}

function tablesOf(draft: Draft, format: Page['format']): DraftPage[] {
  const { drawn, zone, figures, measure } = draft;
  const { space } = frameAndTitleBlock(infoOf(draft, format, null, notesOf(draft, []), 1, 1), measure);
  const xs = linesAlong(drawn).map((x) => figures.length(x - zone.area.box.left));
  const ys = linesUp(drawn).map(figures.length);
  const lines: Schedule = {
    heading: 'Lines',
    columns: [
      { heading: 'No.', align: 'left' },
      { heading: 'upright, from zone’s left', align: 'right' },
      { heading: 'level, from floor', align: 'right' },
    ],
    rows: Array.from({ length: Math.max(xs.length, ys.length) }, (_, i) => ({
      kind: 'row',
      cells: [String(i + 1), xs[i] ?? '', ys[i] ?? ''],
    })),
  };
  return dealTables([lines], space, measure).map((items) => ({
    draft,
    format,
    scale: null,
    items,
    notes: notesOf(draft, []),
  }));
}

function notesOf({ wall, zone, marking, drawn, figures }: Draft, more: readonly string[]): string[] {
  const { box } = drawn;
  const { kind, name, colour } = marking;
  const words = (hundredths: number) => figures.words(hundredths / 100);
  const make = kind === 'picture' ? '' : `: ${makeOfMarking(marking, figures.words)}`;
  const size = sizeText(box.right - box.left, box.top - box.bottom, words);
  const [first] = drawn.texts;
  return [
    `${checkOnSite} ${doNotScale}`,
    [
      `${capital(markingKindWords[kind])} ${titleOfMarking({ id: marking.id, name })}${make}.`,
      `Whole size ${size}.`,
      ...(drawn.lines.length > 0
        ? [`Lines ${words(drawn.lineWidth)} wide, half on either side of the figure.`]
        : []),
      ...(first ? [`Capitals ${words(first.height)} high, in the middle of their cells.`] : []),
      ...(colour ? [`Colour: ${colour}.`] : []),
    ].join(' '),
    `Figures along the foot run from the left edge of the zone, the open circle, which is ${words(zone.area.box.left)} from the datum of wall ${wall.survey.wall.id}; those up the side from the finished floor.`,
    'Mark only when the surface has cured as its maker says.',
    ...more.filter((note) => note.trim() !== ''),
  ];
}

function infoOf(
  { worked, wall, zone, marking }: Draft,
  format: Page['format'],
  scale: Scale | null,
  notes: readonly string[],
  sheet: number,
  sheets: number,
): SheetInfo {
  const { id } = wall.survey.wall;
  return {
    ...fieldsOfJob(worked.job),
    ...budgetField([wall.survey.wall]),
    format,
    landscape: true,
    title: `Wall ${id}, zone ${zone.area.zone.id}, marking ${titleOfMarking(marking)}`,
    documentType: 'Markings sheet',
    scale,
    sheet,
    sheets,
    notes,
    cautions: [],
  };
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
