import { boxOfOutline } from '../geometry/arc';
import { holdingMap, type MapQuestion } from '../holding/holding-map';
import { mapQuestionOf } from '../holding/map-question';
import { holdingCautions } from '../holding/safety';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { budgetField } from './budget-words';
import { dealOut, stack } from './flow-table';
import { drawBands } from './holding-map-elevation';
import { howToRead, tablesOfMap } from './holding-map-words';
import { mapKey } from './holding-map-key';
import { keyPlan } from './key-plan';
import type { Item, LodeplanDocument, Page, TextMeasure } from './page';
import { boxHeight, boxWidth, scales, type PaperBox, type Scale } from './paper';
import { paperFigures, sentenceOnPaper, type PaperFigures } from './paper-figures';
import { printedBands, type PrintedBand } from './printed-bands';
import { refuseWithoutCautions } from './refuse-without-cautions';
import { elevationPage, type ElevationPage } from './setting-out-page';
import { datumNote } from './setting-out-notes';
import { objectStops, type ObjectStops } from './setting-out-stops';
import type { WallPart } from './setting-out-view';
import { fieldsOfJob, frameAndTitleBlock, type SheetInfo } from './title-block';
import { wallParts } from './wall-parts';

/**
 * The holding map of one wall on paper: the elevation at the largest standard scale that fits A3, over several pages where
 * 1:50 is too large, its bands hatched, with what a hook there carries and what the magnet pulls; then a table of the bands,
 * what is taken for granted and the sources. The cautions stand on every page. No pages for a wall that holds no magnets.
 *
 * @param wallIndex of `worked.walls`
 * @throws Error if a page would be without its cautions
 */
export function holdingMapSheet(
  worked: WorkedOut,
  wallIndex: number,
  measure: TextMeasure,
): LodeplanDocument {
  const wall = worked.walls[wallIndex]!;
  const { id, name } = wall.survey.wall;
  const document = {
    name: `holding-map-${id}`,
    title: `${worked.job.name}: holding map, wall ${[id, name].filter(Boolean).join(' ')}`,
  };
  const question = mapQuestionOf(worked.job);
  const mapped = holdingMap(worked.job, wall.survey.wall, wall.zones, question);
  const bands = printedBands(mapped, wall.survey.wall, worked.job.units);
  if (bands.length === 0) return { ...document, pages: [] };
  const draft: Draft = {
    worked,
    wall,
    question,
    bands,
    stops: mainStops(objectStops(wall)),
    figures: paperFigures(worked.job.units),
    measure,
  };
  const drawn = onOnePage(draft) ?? overSeveralPages(draft);
  const table = { scale: null, landscape: drawn[0]!.landscape, notes: [] };
  const { space } = frameAndTitleBlock(infoOf(draft, table, 1, 1), measure);
  const blocks = tablesOfMap(worked.job, wall, question, mapped, bands, boxWidth(space), measure);
  const tables = dealOut(blocks, boxHeight(space)).map((own): DraftPage => ({
    ...table,
    items: stack(own, space.left, space.top),
  }));
  const drafts = [...drawn, ...tables];
  const pages = drafts.map((page, i): Page => {
    const { items } = frameAndTitleBlock(infoOf(draft, page, i + 1, drafts.length), measure);
    return { format: 'A3', landscape: page.landscape, items: [...items, ...page.items] };
  });
  return { ...document, pages: refuseWithoutCautions(pages, 'all') };
}

interface Draft {
  readonly worked: WorkedOut;
  readonly wall: WorkedWall;
  readonly question: MapQuestion;
  readonly bands: readonly PrintedBand[];
  readonly stops: ObjectStops;
  readonly figures: PaperFigures;
  readonly measure: TextMeasure;
}

interface DraftPage {
  readonly landscape: boolean;
  readonly scale: Scale | null;
  readonly items: Page['items'];
  readonly notes: readonly string[];
}

/** Whoever hangs something finds the zone and measures within it: fittings and panel lines are on the setting-out sheet. */
function mainStops({ x, y }: ObjectStops): ObjectStops {
  const main = (stops: ObjectStops['x']) =>
    stops.filter(({ classes }) => classes.includes('wall') || classes.includes('zone'));
  return { x: main(x), y: main(y) };
}

/** Narrower, a band near an edge is no more than a line. */
const leastScale = 50;

function onOnePage(draft: Draft): DraftPage[] | undefined {
  const whole: WallPart = { shown: boxOfOutline(draft.wall.survey.outline), beyond: {} };
  for (const scale of scales.filter(({ real }) => real <= leastScale)) {
    for (const landscape of [true, false]) {
      const page = pageOf(draft, whole, scale, landscape);
      if (page) return [page];
    }
  }
  return undefined;
}

/** Room that dimension lines, figures and overall sizes take beside and below a part of a wall, mm on paper. */
const besidePart = 62;
const belowPart = 62;

function overSeveralPages(draft: Draft): DraftPage[] {
  const { wall, measure, figures } = draft;
  const box = boxOfOutline(wall.survey.outline);
  const scale: Scale = { paper: 1, real: leastScale };
  const { space } = roomFor(draft, scale, true);
  const toWall = (paper: number) => Math.floor((paper * scale.real) / scale.paper) * 100;
  const room = [toWall(boxWidth(space) - besidePart), toWall(boxHeight(space) - belowPart)] as const;
  const parts = wallParts(wall, box, ...room, 2);
  const pages = parts.map((part) => pageOf(draft, part, scale, true));
  const drawn = pages.filter((page) => page !== undefined);
  if (drawn.length < pages.length) throw new Error(`Wall ${wall.survey.wall.id} fits on no page.`);
  const forPlan = roomFor(draft, { paper: 1, real: 100 }, true);
  const plan = keyPlan(wall, box, parts, forPlan.space, measure, figures.length);
  return [{ ...plan, landscape: true, notes: [] }, ...drawn];
}

function pageOf(draft: Draft, part: WallPart, scale: Scale, landscape: boolean): DraftPage | undefined {
  const { wall, stops, bands, measure, figures } = draft;
  const { space, key } = roomFor(draft, scale, landscape);
  const page = ([3.5, 2.5] as const).reduce<ElevationPage | undefined>((best, height) => {
    if (best?.leftOut.length === 0) return best;
    const draw = drawBands(bands);
    const next = elevationPage(wall, stops, part, scale, space, height, measure, figures.length, [], draw);
    return next ?? best;
  }, undefined);
  if (!page) return undefined;
  const { items, unmarked } = page;
  const notes = unmarked.length > 0 ? [`Too narrow to be marked here: ${unmarked.join(', ')}.`] : [];
  return { landscape, scale, items: [...items, ...key], notes };
}

/** The key stands over the title block where there is room, else under the drawing; the drawing has what is left. */
function roomFor(
  draft: Draft,
  scale: Scale,
  landscape: boolean,
): { readonly space: PaperBox; readonly key: readonly Item[] } {
  // A note more or less must not move the drawing: room is kept for one.
  const info = infoOf(draft, { scale, landscape, notes: [' '] }, 1, 1);
  const { space, corner } = frameAndTitleBlock(info, draft.measure);
  const place = corner ?? { ...space, top: space.bottom };
  const key = mapKey(draft.bands, boxWidth(place), draft.measure);
  const top = Math.max(place.top, place.bottom + key.height + betweenKeyAndDrawing);
  return {
    space: { ...space, bottom: Math.max(space.bottom, top) },
    key: key.at(place.left, place.bottom + key.height),
  };
}

const betweenKeyAndDrawing = 4;

function infoOf(
  { worked, wall, question, figures }: Draft,
  { scale, landscape, notes }: Omit<DraftPage, 'items'>,
  sheet: number,
  sheets: number,
): SheetInfo {
  const { job } = worked;
  const { id } = wall.survey.wall;
  const drawing = scale !== null;
  return {
    ...fieldsOfJob(job),
    ...budgetField([wall.survey.wall]),
    format: 'A3',
    landscape,
    title: `Wall ${id}, ${question.magnet.name}`,
    documentType: 'Holding map',
    scale,
    sheet,
    sheets,
    notes: [
      ...howToRead(question, figures.words),
      ...(drawing ? [`Seen square-on. ${datumNote(wall, figures.length)}`] : []),
      ...notes,
    ],
    cautions: holdingCautions.map(({ text }) => sentenceOnPaper(text, job.units)),
  };
}
