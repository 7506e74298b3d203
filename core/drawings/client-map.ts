import { boxOf, type Polygon } from '../geometry/polygon';
import { holdingMap } from '../holding/holding-map';
import { mapQuestionOf } from '../holding/map-question';
import { holdingCautions } from '../holding/safety';
import { withUsual } from '../job/holding-map';
import type { Job } from '../job/schema';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { clientHeader, clientMargin as margin, pageWords, type PageNumber } from './client-header';
import { clientBands, clientMapIntro, type ClientBand } from './client-map-words';
import { placeWall } from './client-place-wall';
import { drawBareWall, drawOpeningsAndFittings, type ToPaper } from './client-view-wall';
import { hatch } from './hatch';
import { labelWithin } from './label-within';
import type { Item, Page, PaperFormat, PaperPoint, Text, TextMeasure } from './page';
import { cornersOf, pageSize, type PaperBox } from './paper';
import { sentenceOnPaper } from './paper-figures';
import { bandHatch } from './printed-bands';
import { refuseWithoutCautions } from './refuse-without-cautions';
import { standingFigure } from './standing-figure';
import { fitText, textBlock } from './text';

/**
 * The page for the client that shows where the job's magnet holds on a wall, in words without the trade's; none unless the job
 * wants it, or where no magnet could hold. All cautions stand on it.
 *
 * @throws Error, when it is drawn, if it would be without them
 */
export function mapForClient(
  job: Job,
  wall: WorkedWall,
  measure: TextMeasure,
): ((pageNumber: PageNumber) => Page)[] {
  const map = clientMapOf(job, wall);
  if (!map) return [];
  return [
    (pageNumber) => {
      const page = mapPage(job, wall, map.bands, map.intro, pageNumber, measure);
      return refuseWithoutCautions([page], 'all')[0]!;
    },
  ];
}

/** Where the job's magnet holds on a wall, as a client is told. */
export interface ClientMap {
  readonly bands: readonly ClientBand[];
  /** What the figures are for. */
  readonly intro: string;
  /** All of them belong beside every figure. */
  readonly cautions: readonly string[];
}

/** null unless the job wants the client to see it, and where no magnet could hold. */
export function clientMapOf(job: Job, { survey, zones }: WorkedWall): ClientMap | null {
  if (!withUsual(job.holdingMap).forClient) return null;
  const question = mapQuestionOf(job);
  const bands = clientBands(holdingMap(job, survey.wall, zones, question), job.units);
  if (bands.length === 0) return null;
  return {
    bands,
    intro: sentenceOnPaper(clientMapIntro(question, job.units), job.units),
    cautions: holdingCautions.map(({ text }) => sentenceOnPaper(text, job.units)),
  };
}

/** The bands of a map with their figures, to be laid over the faces of a wall. */
export function drawClientMap(
  { bands }: ClientMap,
  { survey }: WorkedWall,
  toPaper: ToPaper,
  measure: TextMeasure,
): Item[] {
  const obstacles = survey.keepOuts.map(({ bare }) => paperBoxOf(bare.ring, toPaper));
  return [
    ...bands.flatMap((band) =>
      bandItems(
        band,
        band.region.flatMap((one) => paperRings(one, toPaper)),
      ),
    ),
    ...bands.flatMap((band) => band.region.flatMap((one) => labelOf(band, one, toPaper, obstacles, measure))),
  ];
}

function mapPage(
  job: Job,
  { survey, zones }: WorkedWall,
  bands: readonly ClientBand[],
  intro: string,
  pageNumber: PageNumber,
  measure: TextMeasure,
): Page {
  const box = boxOf(survey.outline.ring);
  const format: PaperFormat = (box.right - box.left) / (box.top - box.bottom) > 3.2 ? 'A3' : 'A4';
  const { width, height } = pageSize({ format, landscape: true });
  const introTop = height - margin - (survey.wall.surveyed === false ? 25.5 : 19);
  const head = textBlock(
    intro,
    {
      left: margin,
      top: introTop,
      width: width - 2 * margin,
    },
    2.5,
    { colour: 'ink' },
    measure,
  );
  const name = `${survey.wall.name || `Wall ${survey.wall.id}`}: where a magnet holds`;
  const foot = footOf(job, bands, pageNumber, width, measure);
  const room: PaperBox = {
    left: margin,
    right: width - margin,
    bottom: foot.top + 6,
    top: introTop - head.height - 3,
  };
  const { toPaper, mmPerPaperMm, figureFoot, floor } = placeWall(survey.outline.ring, box, room);
  const standing = drawOpeningsAndFittings(survey, toPaper);
  const zoneLines = zones.flatMap(({ area }) =>
    area.area.flatMap((polygon) => paperRings(polygon, toPaper).map((ring) => outline(ring, 0.18))),
  );
  const obstacles = survey.keepOuts.map(({ bare }) => paperBoxOf(bare.ring, toPaper));
  const items: Item[] = [
    { kind: 'fill', rings: [cornersOf({ left: 0, bottom: 0, right: width, top: height })], colour: 'white' },
    ...clientHeader({ ...survey.wall, name }, job, width, height, measure),
    ...head.items,
    ...drawBareWall(survey, toPaper),
    ...bands.flatMap((band) =>
      bandItems(
        band,
        band.region.flatMap((one) => paperRings(one, toPaper)),
      ),
    ),
    ...zoneLines,
    ...standing,
    ...bands.flatMap((band) => band.region.flatMap((one) => labelOf(band, one, toPaper, obstacles, measure))),
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

/** Solid where it holds in full, in strokes near an edge; else as on the fitter's sheet. */
function bandItems(
  band: Pick<ClientBand, 'verdict' | 'isNearEdge'>,
  rings: readonly (readonly PaperPoint[])[],
): Item[] {
  const lines = rings.map((ring) => outline(ring, 0.25));
  if (band.verdict !== 'holds') return [...bandHatch(band, rings), ...lines];
  return [
    ...(band.isNearEdge
      ? hatch(rings, { spacing: 1.4, angle: 45, width: 0.35, colour: 'wash' })
      : ([{ kind: 'fill', rings, colour: 'wash' }] satisfies Item[])),
    ...lines,
  ];
}

function labelOf(
  { short, verdict }: ClientBand,
  polygon: Polygon,
  toPaper: ToPaper,
  obstacles: readonly PaperBox[],
  measure: TextMeasure,
): Item[] {
  const area = inHundredths(polygon, toPaper);
  for (const height of [5, 3.5, 2.5] as const) {
    const label = labelWithin(
      [{ text: short, height, weight: 'semi-bold', colour: 'ink' }],
      area,
      obstacles,
      [0],
      measure,
    );
    if (!label) continue;
    // Lines stop for the words on them.
    const ground: Item = {
      kind: 'fill',
      rings: [cornersOf(label.box)],
      colour: verdict === 'holds' ? 'wash' : 'paper',
    };
    return [ground, ...label.texts];
  }
  return [];
}

function footOf(
  job: Job,
  bands: readonly ClientBand[],
  pageNumber: PageNumber,
  width: Mm,
  measure: TextMeasure,
): { items: Item[]; top: Mm } {
  const right = width - margin;
  const gap = 8;
  const column = (width - 2 * margin - gap) / 2;
  const blocks = holdingCautions.map(({ text }) => {
    const words = `– ${sentenceOnPaper(text, job.units)}`;
    return (left: Mm, top: Mm) =>
      textBlock(words, { left, top, width: column }, 2.5, { colour: 'ink' }, measure);
  });
  const heights = blocks.map((block) => block(0, 0).height);
  const total = heights.reduce((sum, one) => sum + one, 0);
  let split = 0;
  for (let held = 0; held < total / 2 - 1e-9; split++) held += heights[split]!;
  const high = Math.max(sum(heights.slice(0, split)), sum(heights.slice(split)));
  const bottom = 12;
  const stacked = (from: number, to: number, left: Mm) => {
    let top = bottom + high;
    return blocks.slice(from, to).flatMap((block, i) => {
      const { items } = block(left, top);
      top -= heights[from + i]!;
      return items;
    });
  };
  const top = bottom + high;
  const style = { kind: 'text', height: 2.5 } as const;
  const legend = legendOf(bands, top + 9, width, measure);
  return {
    items: [
      {
        ...style,
        text: pageWords(job, pageNumber),
        at: { x: right, y: top + 2 },
        anchor: 'end',
        colour: 'soft',
      },
      ...stacked(0, split, margin),
      ...stacked(split, blocks.length, margin + column + gap),
      {
        ...style,
        text: 'Before anything hangs here',
        at: { x: margin, y: top + 2 },
        weight: 'semi-bold',
        colour: 'red-lead',
      },
      ...legend.items,
    ],
    top: legend.top,
  };
}

/** In columns, rows counted upwards from `bottom`; each row as high as its longest words. */
function legendOf(bands: readonly ClientBand[], bottom: Mm, width: Mm, measure: TextMeasure) {
  const columns = Math.min(3, bands.length);
  const column = (width - 2 * margin) / columns;
  const detailOf = ({ detail }: ClientBand, left: Mm, top: Mm) =>
    textBlock(detail, { left, top, width: column - 19 }, 2.5, { colour: 'soft' }, measure);
  const rows = Array.from({ length: Math.ceil(bands.length / columns) }, (_, row) =>
    bands.slice(row * columns, (row + 1) * columns),
  );
  let top = bottom;
  const items = rows.reverse().flatMap((row): Item[] => {
    const high = 6 + Math.max(...row.map((band) => detailOf(band, 0, 0).height));
    top += high + 2;
    return row.flatMap((band, i): Item[] => {
      const left = margin + i * column;
      const title: Text = {
        kind: 'text',
        text: band.title,
        at: { x: left + 14, y: top - 3.5 },
        height: 3.5,
        weight: 'semi-bold',
        colour: 'ink',
      };
      return [
        ...bandItems(band, [cornersOf({ left, right: left + 10, bottom: top - 8, top })]),
        fitText(title, column - 19, measure),
        ...detailOf(band, left + 14, top - 6).items,
      ];
    });
  });
  return { items, top };
}

function sum(all: readonly number[]): number {
  return all.reduce((of, one) => of + one, 0);
}

function outline(points: readonly PaperPoint[], width: 0.18 | 0.25): Item {
  return { kind: 'stroke', points, closed: true, width, colour: 'soft' };
}

function paperRings({ outer, holes }: Polygon, toPaper: ToPaper): PaperPoint[][] {
  return [outer, ...holes].map((ring) => ring.map(toPaper));
}

/** In hundredths of a paper millimetre, for `labelWithin`. */
function inHundredths({ outer, holes }: Polygon, toPaper: ToPaper): Polygon {
  const [first, ...others] = [outer, ...holes].map((ring) =>
    ring.map((point) => {
      const { x, y } = toPaper(point);
      return { x: Math.round(x * 100), y: Math.round(y * 100) };
    }),
  );
  return { outer: first!, holes: others };
}

function paperBoxOf(ring: Polygon['outer'], toPaper: ToPaper): PaperBox {
  const box = boxOf(ring);
  const low = toPaper({ x: box.left, y: box.bottom });
  const high = toPaper({ x: box.right, y: box.top });
  return { left: low.x, bottom: low.y, right: high.x, top: high.y };
}
