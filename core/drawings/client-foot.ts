import type { Job } from '../job/schema';
import { reservationsOf } from '../survey/ground-blanks';
import type { WorkedWall } from '../worked-out';
import { clientMargin as margin, pageWords, peopleInWords, type PageNumber } from './client-header';
import { reservationBlock } from './client-reservations';
import type { ZoneNotice } from './client-view-zones';
import type { Item, Text, TextMeasure } from './page';
import { cornersOf, grownBox } from './paper';
import { finishOfZone, type Finish } from './picture/finish';
import { readableOn } from './picture/names';
import { fitText, textBlock } from './text';

/** Legend, reservations, cautions and page number, from the foot of a page of the client view upwards. */
export function clientFoot(
  wall: WorkedWall,
  notices: readonly ZoneNotice[],
  job: Job,
  pageNumber: PageNumber,
  width: number,
  measure: TextMeasure,
): { items: Item[]; top: number } {
  const { survey, zones } = wall;
  const reservations = reservationsOf(survey.wall);
  const right = width - margin;
  const end = pageWords(job, pageNumber);
  const textWidth = right - margin - 58;
  const notes = textBlock(
    clientNotes(wall, notices, job).join(' '),
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
  const legend = legendOf(
    legendRows(notices, zones, survey.wall),
    reserved.top + (reservations.length > 0 ? 4 : 0.5),
    width,
    measure,
  );
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

/** What a picture of a wall is and is not, and the cautions of what it shows. */
export function clientNotes({ survey }: WorkedWall, notices: readonly ZoneNotice[], job: Job): string[] {
  const magnetic = notices.some(({ kind }) => kind.magnetic !== 'none');
  return [
    'Visual only: colours and sizes may differ a little on the wall.',
    ...(magnetic ? ['Magnets hold within the broken line.'] : []),
    ...((survey.wall.hung ?? []).length > 0
      ? ['Things that hang are examples to size; whether they hold is checked apart.']
      : []),
    peopleInWords(job),
    ...(magnetic
      ? [
          'Strong magnets can pinch fingers. Keep them away from pacemakers and other implants, from cards and screens, ' +
            'and from small children: swallowed magnets are an emergency. Nothing heavy above beds, seats or walkways ' +
            'without a mechanical fixing.',
        ]
      : []),
  ];
}

interface LegendRow {
  readonly notice: ZoneNotice;
  readonly finish: Finish;
}

function legendRows(
  notices: readonly ZoneNotice[],
  zones: WorkedWall['zones'],
  wall: WorkedWall['survey']['wall'],
): LegendRow[] {
  return notices.map((notice) => {
    const { buildUp } = zones.find(({ area }) => area === notice.zone)!;
    return { notice, finish: finishOfZone(notice.zone.zone, buildUp.resolved, wall) };
  });
}

/** Colour, number, title and use of each zone, in columns, rows counted upwards from `bottom`. */
function legendOf(shown: readonly LegendRow[], bottom: number, width: number, measure: TextMeasure) {
  const columns = Math.min(3, Math.max(1, shown.length));
  const columnWidth = (width - 2 * margin) / columns;
  const rows = Math.ceil(shown.length / columns);
  const rowHeight = 12;
  const items = shown.flatMap(({ notice, finish }, i): Item[] => {
    const left = margin + (i % columns) * columnWidth;
    const y = bottom + (rows - 1 - Math.floor(i / columns)) * rowHeight;
    const swatch = { left, bottom: y, right: left + 10, top: y + 8 };
    const line = (words: string, at: number, weight: Text['weight'], colour: Text['colour']): Text =>
      fitText(
        { kind: 'text', text: words, at: { x: left + 13, y: at }, height: 2.5, weight, colour },
        columnWidth - 17,
        measure,
      );
    const colour = finish.chosen ? `, ${finish.chosen}` : '';
    return [
      {
        kind: 'art',
        chains: [{ points: cornersOf(swatch), closed: true }],
        fill: finish.colour,
        evenOdd: false,
        stroke: '#5d6870',
        width: 0.18,
      },
      ...(notice.kind.magnetic === 'none'
        ? []
        : ([
            {
              kind: 'stroke',
              points: cornersOf(grownBox(swatch, -0.9)),
              closed: true,
              width: 0.25,
              line: 'dashed',
              colour: readableOn(finish) === 'ink' ? 'red-lead' : 'wash',
            },
          ] as Item[])),
      line(`${notice.number}  ${notice.title}`, y + 5.2, 'semi-bold', 'ink'),
      line(`${notice.use}, ${notice.size}${colour}`, y + 0.6, 'regular', 'soft'),
    ];
  });
  return { items, top: bottom + rows * rowHeight - 4 };
}
