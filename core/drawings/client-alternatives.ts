import type { Job } from '../job/schema';
import type { LengthUnits } from '../lengths';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { figureRowsOf, type ClientRow } from './alternative-rows';
import { clientHeader, clientMargin as margin } from './client-header';
import { clientWallPicture } from './client-wall-picture';
import type { Item, LodeplanDocument, Page, PaperFormat, Text, TextMeasure } from './page';
import { pageSize, type PaperBox } from './paper';
import { fitText } from './text';

/** An alternative of a job with all that follows from it. */
export interface DrawnAlternative {
  readonly title: string;
  readonly worked: WorkedOut;
}

const mostOnAPage = 4;
const gap = 12;
const rowHeight = 5;

/**
 * Alternatives side by side for the client, wall by wall: two on A4, three or four on A3, more on further pages; every
 * picture of a wall to one scale, under it what the whole job then has. No shop dimension and no price. No pages for
 * fewer than two alternatives.
 *
 * @param alternatives in their order, of one job: their walls are the same
 */
export function clientAlternatives(
  job: Job,
  alternatives: readonly DrawnAlternative[],
  measure: TextMeasure,
): LodeplanDocument {
  const parts = evenParts(alternatives, mostOnAPage);
  const walls = (alternatives[0]?.worked.walls ?? []).map(({ survey }) => survey.wall.id);
  const shown = walls.filter((id) =>
    alternatives.some(({ worked }) => (find(worked, id)?.zones.length ?? 0) > 0),
  );
  const rows = figureRowsOf(
    alternatives.map(({ worked }) => worked),
    job.units,
  );
  const format: PaperFormat = parts.some((part) => part.length > 2) ? 'A3' : 'A4';
  const pages = alternatives.length < 2 ? [] : shown.flatMap((id) => parts.map((part) => ({ id, part })));
  return {
    name: 'client-alternatives',
    title: `${job.name}: alternatives for the client`,
    pages: pages.map(({ id, part }, i) =>
      alternativesPage(
        { job, id, part, rows, all: alternatives, format },
        `page ${i + 1} of ${pages.length}`,
        measure,
      ),
    ),
  };
}

interface Draft {
  readonly job: Job;
  readonly id: string;
  readonly part: readonly DrawnAlternative[];
  readonly rows: readonly ClientRow[];
  readonly all: readonly DrawnAlternative[];
  readonly format: PaperFormat;
}

function alternativesPage(
  { job, id, part, rows, all, format }: Draft,
  number: string,
  measure: TextMeasure,
): Page {
  const { width, height } = pageSize({ format, landscape: true });
  const wall = find(part[0]!.worked, id)!;
  const { alternatives: _, ...withoutTitle } = job;
  const room: PaperBox = {
    left: margin,
    right: width - margin,
    bottom: margin + 6,
    top: height - margin - 26,
  };
  const lines = format === 'A3' ? 2 : 1;
  const cellWidth = (room.right - room.left - gap) / 2;
  const cellHeight = (room.top - room.bottom - (lines - 1) * gap) / lines;
  const items = part.flatMap((alternative, i): Item[] => {
    const left = room.left + (i % 2) * (cellWidth + gap);
    const top = room.top - Math.floor(i / 2) * (cellHeight + gap);
    const cell: PaperBox = { left, right: left + cellWidth, top, bottom: top - cellHeight };
    return drawCell(
      alternative,
      all.indexOf(alternative),
      find(alternative.worked, id),
      rows,
      cell,
      job.units,
      measure,
    );
  });
  return {
    format,
    landscape: true,
    items: [
      ...clientHeader(wall.survey.wall, withoutTitle as Job, width, height, measure),
      ...items,
      ...foot(job, all[0]!.worked.walls.length > 1, number, width, measure),
    ],
  };
}

/** Name, picture, figures, one under the other. */
function drawCell(
  { title }: DrawnAlternative,
  place: number,
  wall: WorkedWall | undefined,
  rows: readonly ClientRow[],
  cell: PaperBox,
  units: LengthUnits | undefined,
  measure: TextMeasure,
): Item[] {
  const wide = cell.right - cell.left;
  const name: Text = {
    kind: 'text',
    text: title,
    at: { x: cell.left, y: cell.top - 5 },
    height: 5,
    weight: 'semi-bold',
    colour: 'ink',
  };
  const most: PaperBox = {
    left: cell.left,
    right: cell.right,
    bottom: cell.bottom + rows.length * rowHeight + 4,
    top: cell.top - 9,
  };
  // Cells are alike and so is the wall, therefore all pictures are to one scale.
  const picture = wall && clientWallPicture(wall, most, measure, { ...(units && { units }) });
  const tableTop = (picture?.bottom ?? most.bottom) - 4;
  return [
    fitText(name, wide, measure),
    ...(picture?.items ?? []),
    ...rows.flatMap(({ label, values, differs }, i): Item[] => {
      const y = tableTop - (i + 1) * rowHeight;
      const style = {
        kind: 'text',
        height: 2.5,
        weight: differs ? 'semi-bold' : 'regular',
        colour: 'ink',
      } as const;
      const value: Text = fitText(
        { ...style, text: values[place]!, at: { x: cell.right, y: y + 1.4 }, anchor: 'end' },
        wide * 0.45,
        measure,
      );
      return [
        fitText({ ...style, text: label, at: { x: cell.left, y: y + 1.4 } }, wide * 0.52, measure),
        value,
        {
          kind: 'stroke',
          points: [
            { x: cell.left, y },
            { x: cell.right, y },
          ],
          width: 0.18,
          colour: 'hairline',
        },
      ];
    }),
  ];
}

function foot(job: Job, isOfAll: boolean, number: string, width: number, measure: TextMeasure): Item[] {
  const revision = job.revision ? `Revision ${job.revision}` : 'No revision issued';
  const words = [
    'Visual only; all pictures of this wall are to one scale.',
    isOfAll
      ? 'Figures are of the whole job, all its walls; those in bold differ.'
      : 'Figures in bold differ.',
  ].join(' ');
  const style = { kind: 'text', height: 2.5, colour: 'soft' } as const;
  const end = `${revision}, ${number}`;
  const room = width - 2 * margin - measure(end, 2.5) - 6;
  return [
    fitText({ ...style, text: words, at: { x: margin, y: 14 } }, room, measure),
    { ...style, text: end, at: { x: width - margin, y: 14 }, anchor: 'end' },
  ];
}

function find({ walls }: WorkedOut, id: string): WorkedWall | undefined {
  return walls.find(({ survey }) => survey.wall.id === id);
}

/** Parts of at most so many, as even as they can be: five are three and two. */
function evenParts<T>(list: readonly T[], most: number): T[][] {
  const parts = Math.ceil(list.length / most);
  const size = Math.ceil(list.length / Math.max(1, parts));
  return Array.from({ length: parts }, (_, i) => list.slice(i * size, (i + 1) * size));
}
