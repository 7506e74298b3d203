import { boxOfOutline } from '../geometry/arc';
import type { Box } from '../geometry/polygon';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { checkOnSite, doNotScale } from './cautions';
import { budgetField } from './budget-words';
import { drawingKey } from './drawing-key';
import { dealTables } from './deal-tables';
import { keyPlan } from './key-plan';
import type { Item, LodeplanDocument, Page, TextHeight, TextMeasure } from './page';
import { boxHeight, boxWidth, scales, type PaperBox, type Scale } from './paper';
import { paperFigures, type PaperFigures } from './paper-figures';
import { ownKindsOf } from '../job/fitting-kinds';
import { cautionsFor, readingNote } from './setting-out-notes';
import { elevationPage, type ElevationPage } from './setting-out-page';
import { objectStops, type ObjectStops } from './setting-out-stops';
import { wallSchedules } from './setting-out-tables';
import type { WallPart } from './setting-out-view';
import { cornerNotes, wallEnds, type WallEnd } from './wall-ends';
import { fieldsOfJob, frameAndTitleBlock, type SheetInfo } from './title-block';
import { wallParts } from './wall-parts';

/**
 * The setting-out sheet of one wall: the dimensioned elevation at the largest standard scale that fits A4 (to
 * 1:20) or A3, over several pages with a key plan where its figures or panel marks would not be legible on
 * one, then the tables of everything on it.
 *
 * @param wallIndex of `worked.walls`
 * @throws Error if there is no such wall
 */
export function settingOutSheet(
  worked: WorkedOut,
  wallIndex: number,
  measure: TextMeasure,
): LodeplanDocument {
  const wall = worked.walls[wallIndex];
  if (!wall) throw new Error(`There is no wall number ${wallIndex}.`);
  const draft: Draft = {
    worked,
    wall,
    box: boxOfOutline(wall.survey.outline),
    stops: objectStops(wall),
    ends: wallEnds(worked, wall),
    figures: paperFigures(worked.job.units),
    measure,
  };
  const drawn = onOnePage(draft) ?? overSeveralPages(draft);
  const tables = tablePages(draft, drawn);
  const all = [...drawn.pages, ...tables];
  const { id, name } = wall.survey.wall;
  return {
    name: `setting-out-${id}`,
    title: `${worked.job.name}: setting-out sheet, wall ${[id, name].filter(Boolean).join(' ')}`,
    pages: all.map(({ format, scale, items, notes }, i): Page => {
      const info = sheetInfo(draft, format, scale, notes, i + 1, all.length);
      return { format, landscape: true, items: [...frameAndTitleBlock(info, measure).items, ...items] };
    }),
  };
}

interface Draft {
  readonly worked: WorkedOut;
  readonly wall: WorkedWall;
  readonly box: Box;
  readonly stops: ObjectStops;
  readonly ends: readonly WallEnd[];
  readonly figures: PaperFigures;
  readonly measure: TextMeasure;
}

interface DraftPage {
  readonly format: Page['format'];
  readonly scale: Scale | null;
  readonly items: readonly Item[];
  readonly notes: readonly string[];
}

interface Drawn {
  readonly pages: readonly DraftPage[];
}

/** A panel of half a metre is a centimetre here; smaller, and a ladder's distance is too far. */
const leastScale = 50;
const figureHeights: readonly TextHeight[] = [3.5, 2.5];

function onOnePage(draft: Draft): Drawn | undefined {
  const whole: WallPart = { shown: draft.box, beyond: {} };
  for (const [format, least] of [
    ['A4', 20],
    ['A3', leastScale],
  ] as const) {
    for (const scale of scales.filter(({ real }) => real <= least)) {
      const page = bestPage(draft, whole, format, scale);
      if (!page) continue;
      // The largest scale that fits decides: a smaller one would only be less legible.
      if (isLegible(page)) return { pages: [toDraftPage(page, format, scale)] };
      break;
    }
  }
  return undefined;
}

/** The tallest figures with which everything finds its place, else the page that leaves out least. */
function bestPage(
  draft: Draft,
  part: WallPart,
  format: Page['format'],
  scale: Scale,
): ElevationPage | undefined {
  const space = spaceFor(draft, format, scale);
  let best: ElevationPage | undefined;
  for (const height of figureHeights) {
    const page = elevationPage(
      draft.wall,
      draft.stops,
      part,
      scale,
      space,
      height,
      draft.measure,
      draft.figures.length,
      draft.ends,
    );
    if (page && isComplete(page)) return page;
    if (page && (!best || !isLegible(best))) best = page;
  }
  return best;
}

function isComplete({ leftOut, unmarked }: ElevationPage): boolean {
  return leftOut.length === 0 && unmarked.length === 0;
}

/** Figures of fittings and fixing points may go to the table; panel lines and marks must be on the drawing. */
function isLegible({ leftOut, unmarked }: ElevationPage): boolean {
  return leftOut.every((one) => one === 'fitting' || one === 'fixing') && unmarked.length === 0;
}

function overSeveralPages(draft: Draft): Drawn {
  let best: InParts | undefined;
  for (const real of [20, 10, 5]) {
    const attempt = inParts(draft, { paper: 1, real });
    best ??= attempt;
    if (attempt?.parts.every(isLegible)) {
      best = attempt;
      break;
    }
    // Of a very long wall one does not want hundreds of sheets for the sake of one crowded spot.
    if (attempt && attempt.parts.length > 12) break;
  }
  if (!best) throw new Error(`Wall ${draft.wall.survey.wall.id} fits on no page.`);
  const { scale, parts, windows } = best;
  const space = spaceFor(draft, 'A3', { paper: 1, real: 100 });
  const overview = keyPlan(draft.wall, draft.box, windows, space, draft.measure, draft.figures.length);
  return {
    pages: [
      { format: 'A3', scale: overview.scale, items: overview.items, notes: [] },
      ...parts.map((part) => toDraftPage(part, 'A3', scale)),
    ],
  };
}

interface InParts {
  readonly scale: Scale;
  readonly parts: readonly ElevationPage[];
  readonly windows: readonly WallPart[];
}

/** Room that dimension lines, figures and overall sizes take beside and below a part of a wall, mm on paper. */
const besidePart = 62;
const belowPart = 62;

function inParts(draft: Draft, scale: Scale): InParts | undefined {
  const space = spaceFor(draft, 'A3', scale);
  const toWall = (paper: number) => Math.floor((paper * scale.real) / scale.paper) * 100;
  const windows = wallParts(
    draft.wall,
    draft.box,
    toWall(boxWidth(space) - besidePart),
    toWall(boxHeight(space) - belowPart),
    2,
  );
  const parts = windows.map((part) => bestPage(draft, part, 'A3', scale));
  const drawn = parts.filter((part) => part !== undefined);
  return drawn.length === parts.length ? { scale, parts: drawn, windows } : undefined;
}

function toDraftPage(
  { items, leftOut, unmarked }: ElevationPage,
  format: Page['format'],
  scale: Scale,
): DraftPage {
  const words = {
    wall: 'wall corners',
    zone: 'zones',
    opening: 'openings',
    panel: 'panel lines',
    fitting: 'fittings',
    fixing: 'fixing points',
  };
  const inTables = leftOut.map((one) => words[one]);
  return {
    format,
    scale,
    items,
    notes: [
      ...(inTables.length > 0
        ? [`Figures of ${inTables.join(', ')}: see the tables on the last sheets.`]
        : []),
      ...(unmarked.length > 0 ? [`Too small to be marked here, see the table: ${unmarked.join(', ')}.`] : []),
    ],
  };
}

function tablePages(draft: Draft, drawn: Drawn): DraftPage[] {
  const format = drawn.pages[0]?.format ?? 'A3';
  const space = spaceFor(draft, format, null);
  const schedules = wallSchedules(draft.worked, draft.wall, draft.figures);
  return dealTables(schedules, space, draft.measure).map((items) => ({
    format,
    scale: null,
    items,
    notes: [],
  }));
}

function spaceFor(draft: Draft, format: Page['format'], scale: Scale | null): PaperBox {
  // A note more or less must not move the drawing: room is kept for one.
  return frameAndTitleBlock(sheetInfo(draft, format, scale, [' '], 1, 1), draft.measure).space;
}

function sheetInfo(
  { worked, wall, ends, figures }: Draft,
  format: Page['format'],
  scale: Scale | null,
  notes: readonly string[],
  sheet: number,
  sheets: number,
): SheetInfo {
  const { id, name } = wall.survey.wall;
  const drawing = scale !== null;
  return {
    ...fieldsOfJob(worked.job),
    format,
    landscape: true,
    title: `Wall ${[id, name].filter(Boolean).join(' ')}`,
    documentType: 'Setting-out sheet',
    scale,
    sheet,
    sheets,
    notes: drawing
      ? [
          `${checkOnSite} ${doNotScale}`,
          readingNote(wall, figures, worked.job.offer),
          ...cornerNotes(ends, figures.length),
          ...notes,
        ]
      : [checkOnSite, 'Measured from the datum to the lower left corner of each piece, seen square-on.'],
    cautions: drawing ? cautionsFor(wall, ownKindsOf(worked.job)) : [],
    ...(drawing && { key: drawingKey(wall) }),
    ...budgetField([wall.survey.wall]),
  };
}
