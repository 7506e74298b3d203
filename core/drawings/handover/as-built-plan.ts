import { boxOfOutline } from '../../geometry/arc';
import { surveyLineNames } from '../../job/names';
import { isConcealed } from '../../survey/concealed-lines';
import type { WorkedOut, WorkedWall } from '../../worked-out';
import { cautions } from '../cautions';
import { dealTables, type Schedule } from '../deal-tables';
import { drawingKey } from '../drawing-key';
import { fixingSchedule } from '../fixing-table';
import { createLabelRoom } from '../label-room';
import type { Item, Page, TextMeasure } from '../page';
import { boxHeight, boxWidth, largestScale, onPaper, type PaperBox, type Scale } from '../paper';
import { paperFigures, type PaperFigures } from '../paper-figures';
import { drawElevation } from '../setting-out-elevation';
import type { View } from '../setting-out-view';
import { fieldsOfJob, frameAndTitleBlock, type SheetInfo } from '../title-block';
import { budgetField } from '../budget-words';

/** Room for names that stand beside the wall, mm on paper. */
const aroundWall = 8;
/** Smaller than 1:20, and the larger paper is taken. */
const leastOnA4 = 20;

const asBuiltNote =
  'Drawn from the plan. Whatever was built otherwise is drawn in by hand here, with date and signature, before this is handed over.';
const fromDatumNote =
  'Figures run from the datum: from the left end of the wall and from the finished floor.';

/**
 * Each wall with its panels, fixing points and the cables and pipes that were found in it, then tables of where these are:
 * what whoever drills into the wall in years to come has to know. Walls with none of them are left out.
 */
export function asBuiltPlans(worked: WorkedOut, measure: TextMeasure): Page[] {
  const figures = paperFigures(worked.job.units);
  const walls = worked.walls.filter((wall) => hasPanels(wall) || tablesOf(wall, figures).length > 0);
  const plans = walls.map((wall): Draft => {
    const paper = paperFor(worked, wall, measure);
    return { paper, draw: (space) => drawWall(wall, space, paper.scale, figures, measure) };
  });
  const tables = walls.flatMap((wall) => tablesOf(wall, figures));
  const paper = tablePaper(worked, walls);
  const listed = dealTables(tables, spaceOf(paper, measure), measure).map((items): Draft => ({
    paper,
    draw: () => items,
  }));
  const drafts = [...plans, ...listed];
  return drafts.map(({ paper, draw }, i) => {
    const info = { ...paper, sheet: i + 1, sheets: drafts.length };
    const { items, space } = frameAndTitleBlock(info, measure);
    return { format: info.format, landscape: true, items: [...items, ...draw(space)] };
  });
}

interface Draft {
  readonly paper: SheetInfo;
  readonly draw: (space: PaperBox) => Item[];
}

function hasPanels({ zones }: WorkedWall): boolean {
  return zones.some(({ layout }) => layout && layout.panels.length > 0);
}

function tablePaper({ job }: Pick<WorkedOut, 'job'>, walls: readonly WorkedWall[]): SheetInfo {
  return {
    ...fieldsOfJob(job),
    format: 'A4',
    landscape: true,
    title: 'Where things are',
    documentType: 'As-built plan',
    scale: null,
    sheet: 1,
    sheets: 1,
    notes: [asBuiltNote, fromDatumNote],
    cautions: [cautions.concealed, cautions.detectors],
    ...budgetField(walls.map(({ survey }) => survey.wall)),
  };
}

/** A4 if the wall is large enough there, else A3; with the scale that fits. */
function paperFor({ job }: WorkedOut, wall: WorkedWall, measure: TextMeasure): SheetInfo {
  const base: SheetInfo = {
    ...tablePaper({ job }, [wall]),
    title: `Wall ${nameOf(wall)}`,
    key: drawingKey(wall),
  };
  const [small, large] = (['A4', 'A3'] as const).map((format): SheetInfo => {
    const space = spaceOf({ ...base, format }, measure);
    const box = boxOfOutline(wall.survey.outline);
    const room = (length: number) => length - 2 * aroundWall;
    const [width, height] = [(box.right - box.left) / 100, (box.top - box.bottom) / 100];
    return {
      ...base,
      format,
      scale: largestScale(width, height, room(boxWidth(space)), room(boxHeight(space))) ?? null,
    };
  }) as [SheetInfo, SheetInfo];
  return small.scale && small.scale.real <= leastOnA4 ? small : large;
}

function spaceOf(info: SheetInfo, measure: TextMeasure): PaperBox {
  return frameAndTitleBlock(info, measure).space;
}

function drawWall(
  wall: WorkedWall,
  space: PaperBox,
  scale: Scale | null,
  { length }: PaperFigures,
  measure: TextMeasure,
): Item[] {
  // Walls beyond all scales are refused by the job file.
  if (!scale) return [];
  const box = boxOfOutline(wall.survey.outline);
  const middle = { x: (space.left + space.right) / 2, y: (space.bottom + space.top) / 2 };
  const view: View = {
    scale,
    datum: {
      x: middle.x - onPaper((box.left + box.right) / 200, scale),
      y: middle.y - onPaper((box.bottom + box.top) / 200, scale),
    },
    shown: box,
    write: length,
  };
  const room = createLabelRoom(space, measure);
  return [...drawElevation(wall, view, room, { extensionLines: [], brief: false, clipped: false }).items];
}

function tablesOf(wall: WorkedWall, figures: PaperFigures): Schedule[] {
  return [concealedSchedule(wall, figures), fixingSchedule(wall, figures)]
    .filter(({ rows }) => rows.length > 0)
    .map((table) => ({ ...table, heading: `Wall ${nameOf(wall)}: ${table.heading.toLowerCase()}` }));
}

function nameOf({ survey: { wall } }: WorkedWall): string {
  return [wall.id, wall.name].filter(Boolean).join(' ');
}

function concealedSchedule({ survey: { wall } }: WorkedWall, { length }: PaperFigures): Schedule {
  const figure = (mm: number) => length(Math.round(mm * 100));
  return {
    heading: 'Cables and pipes in the wall, as they were found',
    columns: [
      { heading: 'Mark', align: 'left' },
      { heading: 'What', align: 'left', most: 50 },
      { heading: 'begins, from left', align: 'right' },
      { heading: 'from floor', align: 'right' },
      { heading: 'ends, from left', align: 'right' },
      { heading: 'from floor', align: 'right' },
    ],
    rows: (wall.lines ?? []).filter(isConcealed).map(({ id, kind, from, to }) => ({
      kind: 'row',
      cells: [id, surveyLineNames[kind], ...[...from, ...to].map(figure)],
    })),
  };
}
