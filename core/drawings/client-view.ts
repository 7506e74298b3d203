import { boxOf, type Box, type Ring } from '../geometry/polygon';
import type { Job } from '../job/schema';
import { reservationsOf } from '../survey/ground-blanks';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { drawBareWall, drawOpeningsAndFittings, type ToPaper } from './client-view-wall';
import {
  fillZone,
  isMagneticUnderSurface,
  labelZone,
  swatch,
  zoneNotices,
  type ZoneNotice,
} from './client-view-zones';
import { clientHeader, clientMargin as margin, stature } from './client-header';
import { reservationBlock } from './client-reservations';
import { drawMarking } from '../markings/draw-marking';
import { inkOf } from '../markings/ink';
import { lookOfMarking } from './marking-items';
import type { Item, LodeplanDocument, Page, PaperFormat, Text, TextMeasure } from './page';
import { cornersOf, pageSize, type PaperBox } from './paper';
import type { Pictures } from './pictures';
import { figureHeight, figureWidth, standingFigure } from './standing-figure';
import { fitText, textBlock } from './text';

/**
 * The picture for the client: a page a wall with its openings and zones in colour, somebody standing by for scale, no
 * shop dimensions and no panel lines. Walls without a zone have no page; without any there are no pages.
 */
export function clientView(
  worked: WorkedOut,
  measure: TextMeasure,
  pictures: Pictures = new Map(),
): LodeplanDocument {
  const walls = worked.walls.filter(({ zones }) => zoneNotices(zones.map(({ area }) => area)).length > 0);
  const pages = walls.map((wall, i) =>
    viewPage(wall, worked.job, { number: i + 1, of: walls.length }, measure, pictures),
  );
  return { name: 'client-view', title: `${worked.job.name}: client view`, pages };
}

function viewPage(
  { survey, zones }: WorkedWall,
  job: Job,
  pageNumber: { readonly number: number; readonly of: number },
  measure: TextMeasure,
  pictures: Pictures,
): Page {
  const box = boxOf(survey.outline.ring);
  const aspect = (box.right - box.left) / (box.top - box.bottom);
  const format: PaperFormat = aspect > 3.2 ? 'A3' : 'A4';
  const { width, height } = pageSize({ format, landscape: true });
  const notices = zoneNotices(
    zones.map(({ area }) => area),
    job.units,
  );
  const foot = footer(notices, reservationsOf(survey.wall), job, pageNumber, width, measure);
  const room: PaperBox = {
    left: margin,
    right: width - margin,
    bottom: foot.top + 9,
    top: height - margin - (survey.wall.surveyed === false ? 28 : 24),
  };
  const { toPaper, mmPerPaperMm, figureFoot, floor } = placeWall(survey.outline.ring, box, room);
  const standing = drawOpeningsAndFittings(survey, toPaper);
  const marked = zones.flatMap(({ area: { zone, box: of } }) =>
    (zone.markings ?? []).map((marking) => ({
      ink: inkOf(marking, zone),
      drawn: drawMarking(marking, { x: of.left, y: of.bottom }),
    })),
  );
  // Words about a zone keep off what will be read on it.
  const obstacles = [
    ...survey.keepOuts.map(({ bare }) => boxOf(bare.ring)),
    ...marked.map(({ drawn }) => drawn.box),
  ].map((taken) => paperBoxOf(taken, toPaper));
  const onPaper = { toPaper, perMm: 1 / mmPerPaperMm };
  const items: Item[] = [
    { kind: 'fill', rings: [cornersOf({ left: 0, bottom: 0, right: width, top: height })], colour: 'white' },
    ...clientHeader(survey.wall, job, width, height, measure),
    ...drawBareWall(survey, toPaper),
    ...notices.flatMap((notice) => fillZone(notice, toPaper)),
    ...marked.flatMap(({ ink, drawn }) => lookOfMarking(drawn, ink, onPaper, pictures)),
    ...standing,
    ...notices.flatMap((notice) => labelZone(notice, toPaper, obstacles, measure)),
    ...standingFigure(figureFoot, mmPerPaperMm, 'hairline'),
    {
      kind: 'stroke',
      points: [
        { x: room.left, y: floor },
        { x: room.right, y: floor },
      ],
      width: 1,
      colour: 'ink',
    },
    ...foot.items,
  ];
  return { format, landscape: true, items };
}

/** The wall and the figure beside it, together in the middle of the room, on one floor. */
function placeWall(ring: Ring, box: Box, room: PaperBox) {
  const besideWall = (figureWidth + 260) * 100;
  const wide = box.right - box.left + besideWall;
  const high = Math.max(box.top - box.bottom, (figureHeight + 100) * 100);
  const scale = Math.min((room.right - room.left) / wide, (room.top - room.bottom) / high);
  // Whoever stands beside a stair wall stands at its foot.
  const footAt = (x: number) => Math.min(...ring.filter((point) => point.x === x).map(({ y }) => y));
  const standsLeft = footAt(box.right) > footAt(box.left);
  const left = (room.left + room.right - wide * scale) / 2 + (standsLeft ? besideWall * scale : 0);
  // A low wide wall sits a little under the middle of its room, so that the floor carries the picture.
  const floor = room.bottom + (room.top - room.bottom - high * scale) * 0.42;
  const toPaper: ToPaper = ({ x, y }) => ({
    x: left + (x - box.left) * scale,
    y: floor + (y - box.bottom) * scale,
  });
  const away = besideWall - (figureWidth / 2) * 100;
  const figureFoot = toPaper({ x: standsLeft ? box.left - away : box.right + away, y: box.bottom });
  return { toPaper, mmPerPaperMm: 1 / (scale * 100), figureFoot, floor };
}

function footer(
  notices: readonly ZoneNotice[],
  reservations: readonly string[],
  job: Job,
  pageNumber: { readonly number: number; readonly of: number },
  width: number,
  measure: TextMeasure,
): { items: Item[]; top: number } {
  const magnetic = notices.some(({ kind }) => kind.magnetic !== 'none');
  const cautions = magnetic
    ? 'Strong magnets can pinch fingers. Keep them away from pacemakers and other implants, from cards and screens, and from ' +
      'small children: swallowed magnets are an emergency. Nothing heavy above beds, seats or walkways without a ' +
      'mechanical fixing.'
    : '';
  const visual = `Visual only: colours and sizes may differ a little on the wall. The person is ${stature(job)} tall.`;
  const revision = job.revision ? `Revision ${job.revision}` : 'No revision issued';
  const right = width - margin;
  const end = `${revision}, page ${pageNumber.number} of ${pageNumber.of}`;
  const textWidth = right - margin - 58;
  const notes = textBlock(
    [visual, cautions].filter(Boolean).join(' '),
    { left: margin, top: 0, width: textWidth },
    2.5,
    { colour: 'soft' },
    measure,
  );
  const bottom = 12;
  const notesTop = bottom + notes.height;
  const reserved = reservationBlock(
    reservations,
    { left: margin, bottom: notesTop + 6.5, width: width - 2 * margin },
    measure,
  );
  const legend = legendOf(notices, reserved.top + (reservations.length > 0 ? 4 : 0.5), width, measure);
  const items: Item[] = [
    ...notes.items.map((line): Text => ({ ...line, at: { x: line.at.x, y: line.at.y + notesTop } })),
    {
      kind: 'text',
      text: end,
      at: { x: right, y: notesTop - 2.5 },
      height: 2.5,
      anchor: 'end',
      colour: 'soft',
    },
    {
      kind: 'stroke',
      points: [
        { x: margin, y: notesTop + 3 },
        { x: right, y: notesTop + 3 },
      ],
      width: 0.18,
      colour: 'hairline',
    },
    ...reserved.items,
    ...legend.items,
  ];
  return { items, top: legend.top };
}

/** Swatch, number, title and use of each zone, in columns, rows counted upwards from `bottom`. */
function legendOf(notices: readonly ZoneNotice[], bottom: number, width: number, measure: TextMeasure) {
  const columns = Math.min(3, Math.max(1, notices.length));
  const columnWidth = (width - 2 * margin) / columns;
  const rows = Math.ceil(notices.length / columns);
  const rowHeight = 12;
  const items = notices.flatMap((notice, i): Item[] => {
    const left = margin + (i % columns) * columnWidth;
    const y = bottom + (rows - 1 - Math.floor(i / columns)) * rowHeight;
    const ring = cornersOf({ left, bottom: y, right: left + 10, top: y + 8 });
    const inner = cornersOf({ left: left + 0.9, bottom: y + 0.9, right: left + 9.1, top: y + 7.1 });
    const line = (words: string, at: number, weight: Text['weight'], colour: Text['colour']): Text =>
      fitText(
        { kind: 'text', text: words, at: { x: left + 13, y: at }, height: 2.5, weight, colour },
        columnWidth - 17,
        measure,
      );
    return [
      ...swatch([ring], notice.kind),
      ...(isMagneticUnderSurface(notice.kind)
        ? ([{ kind: 'stroke', points: inner, closed: true, width: 0.7, colour: 'red-lead' }] as Item[])
        : []),
      line(`${notice.number}  ${notice.title}`, y + 5.2, 'semi-bold', 'ink'),
      line(`${notice.use}, ${notice.size}`, y + 0.6, 'regular', 'soft'),
    ];
  });
  return { items, top: bottom + rows * rowHeight - 4 };
}

function paperBoxOf({ left, bottom, right, top }: Box, toPaper: ToPaper): PaperBox {
  const low = toPaper({ x: left, y: bottom });
  const high = toPaper({ x: right, y: top });
  return { left: low.x, bottom: low.y, right: high.x, top: high.y };
}
