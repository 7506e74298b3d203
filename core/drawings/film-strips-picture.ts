import { boxOf, type Box } from '../geometry/polygon';
import type { FilmPiece } from '../quantities/film-pieces';
import type { StripPlan } from '../quantities/film-strips';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { Mm } from '../units';
import type { WorkedZone } from '../worked-out';
import { depthOfRunningDimension, drawRunningDimension, type Stop } from './dimension';
import type { FlowBlock } from './flow-table';
import type { Item, PaperPoint, Stroke, Text, TextHeight, TextMeasure } from './page';
import { largestScale, onPaper, ratioOf, type Scale } from './paper';
import type { WriteLength } from './paper-figures';
import { breakStrokes } from './setting-out-view';
import { lineSpacing, textBlock, textBox } from './text';

/** What is drawn of a zone's film. */
export interface StripPicture {
  readonly survey: SurveyedWall;
  readonly zone: WorkedZone;
  readonly plan: StripPlan;
  readonly pieces: readonly FilmPiece[];
  readonly write: WriteLength;
}

const figureHeight = 2.5;
const arrowHead: Mm = 1.4;
const gap: Mm = 2;
const above: Mm = 3;
const captionLine: Mm = lineSpacing * figureHeight;

/**
 * The strips of a zone on its elevation: each as it is hung, with its mark and an arrow along its run, seams in red lead,
 * the zone's edge wide, openings and fittings left open; running figures of edges and seams from the datum. Beneath it the
 * scale, and what found no room and is to be read from the list.
 *
 * @returns undefined where no scale is small enough for the room
 */
export function stripPicture(
  picture: StripPicture,
  room: { readonly width: Mm; readonly height: Mm },
  measure: TextMeasure,
): FlowBlock | undefined {
  const isUpright = picture.plan.direction === 'upright';
  const stops = stopsOf(picture);
  const depth = depthOfRunningDimension(
    stops.map((stop) => ({ ...stop, at: 0, from: 0 })),
    figureHeight,
    measure,
  );
  const box = reachOf(picture);
  const width = (box.right - box.left) / 100;
  const height = (box.top - box.bottom) / 100;
  const beside = isUpright ? { left: gap, below: depth + gap } : { left: depth + gap, below: gap };
  // Two lines for what found no room, whether or not anything did, so that the scale does not depend on it.
  const around = above + gap + beside.below + 2 * captionLine + gap;
  const scale = largestScale(width, height, room.width - beside.left - gap, room.height - around);
  if (!scale) return undefined;
  const drawnHeight = onPaper(height, scale);
  const drawnAt = (left: Mm, top: Mm) =>
    drawStrips(picture, box, scale, { x: left + beside.left, y: top - above - drawnHeight }, stops, measure);
  const { unmarked, hasFigures } = drawnAt(0, 0);
  const words = captionOf(scale, unmarked, hasFigures);
  const captionAt = (left: Mm, top: Mm) =>
    textBlock(words, { left, top, width: room.width }, figureHeight, { colour: 'soft' }, measure);
  const toCaption = above + drawnHeight + (hasFigures || !isUpright ? beside.below : 0) + gap;
  return {
    height: toCaption + captionAt(0, 0).height + gap,
    at: (left, top) => [...drawnAt(left, top).items, ...captionAt(left, top - toCaption).items],
  };
}

function captionOf(scale: Scale, unmarked: readonly string[], hasFigures: boolean): string {
  const which =
    unmarked.length > 8
      ? `${unmarked.slice(0, 6).join(', ')} and ${unmarked.length - 6} more`
      : unmarked.join(', ');
  return [
    `Scale ${ratioOf(scale)}.`,
    ...(unmarked.length > 0
      ? [
          `Too narrow here for ${unmarked.length === 1 ? 'its number: strip' : 'their numbers: strips'} ${which}; see the list.`,
        ]
      : []),
    ...(hasFigures ? [] : ['There is no room here for running figures: edges and seams stand in the list.']),
  ].join(' ');
}

interface PlacedStop extends Omit<Stop, 'at' | 'from'> {
  readonly on: number;
}

/** Edges of the strips' run and seams, each once. */
function stopsOf({ plan, write }: StripPicture): PlacedStop[] {
  const ends = plan.strips.flatMap(({ from, to }) => [from, to]);
  return [...new Set(ends)]
    .sort((a, b) => a - b)
    .map((on) => ({
      on,
      figure: write(on),
      ...(plan.seams.includes(on) && { strong: true, colour: 'red-lead' as const }),
    }));
}

function reachOf({ pieces, plan, zone }: StripPicture): Box {
  const shape = boxOf(zone.area.shape.ring);
  return pieces.reduce((box, piece) => {
    const own = pieceBox(piece, plan);
    return {
      left: Math.min(box.left, own.left),
      right: Math.max(box.right, own.right),
      bottom: Math.min(box.bottom, own.bottom),
      top: Math.max(box.top, own.top),
    };
  }, shape);
}

export function pieceBox(
  { reachFrom, reachTo, begins, ends }: FilmPiece,
  { direction }: Pick<StripPlan, 'direction'>,
): Box {
  return direction === 'upright'
    ? { left: reachFrom, right: reachTo, bottom: begins, top: ends }
    : { left: begins, right: ends, bottom: reachFrom, top: reachTo };
}

function drawStrips(
  { survey, zone, plan, pieces }: StripPicture,
  box: Box,
  scale: Scale,
  corner: PaperPoint,
  stops: readonly PlacedStop[],
  measure: TextMeasure,
): { items: Item[]; unmarked: string[]; hasFigures: boolean } {
  const isUpright = plan.direction === 'upright';
  const x = (at: number) => corner.x + onPaper((at - box.left) / 100, scale);
  const y = (at: number) => corner.y + onPaper((at - box.bottom) / 100, scale);
  const ringOf = (ring: readonly { x: number; y: number }[]) =>
    ring.map((point) => ({ x: x(point.x), y: y(point.y) }));
  const shape = boxOf(zone.area.shape.ring);
  const boxes = pieces.map((piece) => pieceBox(piece, plan));
  const strips = boxes.map(({ left, right, bottom, top }): Stroke => ({
    kind: 'stroke',
    points: ringOf([
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ]),
    closed: true,
    width: 0.18,
    colour: 'soft',
  }));
  const marked = pieces.map((piece, i) => markOf(piece, boxes[i]!, isUpright, { x, y }, measure));
  const marks = marked.flat();
  const texts = marks.filter((item): item is Text => item.kind === 'text');
  const seams = plan.seams.map((seam): Stroke => ({
    kind: 'stroke',
    points: isUpright
      ? [
          { x: x(seam), y: y(shape.bottom) },
          { x: x(seam), y: y(shape.top) },
        ]
      : [
          { x: x(shape.left), y: y(seam) },
          { x: x(shape.right), y: y(seam) },
        ],
    width: 0.35,
    colour: 'red-lead',
  }));
  const bare = survey.keepOuts.filter(({ bare: { ring } }) => meets(boxOf(ring), shape));
  const zoneLines = [zone.area.shapePolygon.outer, ...zone.area.shapePolygon.holes].map((ring): Stroke => ({
    kind: 'stroke',
    points: ringOf(ring),
    closed: true,
    width: 0.5,
  }));
  const dimension = drawRunningDimension(
    {
      axis: isUpright ? 'foot' : 'side',
      line: isUpright ? corner.y - gap : corner.x - gap,
      origin: null,
      stops: stops.map(({ on, ...stop }) => ({
        ...stop,
        at: isUpright ? x(on) : y(on),
        from: isUpright ? y(box.bottom) : x(box.left),
      })),
      from: isUpright ? corner.x - gap : corner.y - gap,
      to: isUpright ? x(box.right) + gap : y(box.top) + gap,
      height: figureHeight as TextHeight,
    },
    measure,
  );
  const lines = breakStrokes(
    [...strips, ...seams],
    texts.map((text) => textBox(text, measure)),
  );
  return {
    items: [
      ...lines,
      ...bare.flatMap(({ bare: { ring } }): Item[] => [
        { kind: 'stroke', points: ringOf(ring), closed: true, width: 0.35 },
      ]),
      ...zoneLines,
      ...marks,
      ...(dimension?.items ?? []),
    ],
    unmarked: pieces.flatMap(({ mark }, i) => (marked[i]!.length > 0 ? [] : [mark])),
    hasFigures: dimension !== undefined,
  };
}

/** The mark in the middle of a piece and an arrow along its run; a piece too narrow on paper for its mark has none. */
function markOf(
  piece: FilmPiece,
  box: Box,
  isUpright: boolean,
  { x, y }: { x: (at: number) => Mm; y: (at: number) => Mm },
  measure: TextMeasure,
): Item[] {
  const shown = isUpright
    ? { left: piece.from, right: piece.to, bottom: box.bottom, top: box.top }
    : { left: box.left, right: box.right, bottom: piece.from, top: piece.to };
  const [left, right, bottom, top] = [x(shown.left), x(shown.right), y(shown.bottom), y(shown.top)];
  const middle = { x: (left + right) / 2, y: (bottom + top) / 2 };
  const way = waysOfMark.find(({ height, turned }) => {
    const [along, across] = [measure(piece.mark, height, markStyle), height * 1.1];
    const [wide, high] = turned ? [across, along] : [along, across];
    return wide + 1 <= right - left && high + 1 <= top - bottom;
  });
  if (!way) return [];
  const { height, turned } = way;
  const mark: Text = {
    kind: 'text',
    text: piece.mark,
    at: turned ? { x: middle.x + height / 2, y: middle.y } : { x: middle.x, y: middle.y - height / 2 },
    height,
    anchor: 'middle',
    ...markStyle,
    ...(turned && { turned: 90 as const }),
  };
  const long = measure(piece.mark, height, markStyle);
  const alongRun = isUpright === turned ? long : height;
  const run = isUpright ? top - middle.y : right - middle.x;
  const from = alongRun / 2 + 1.5;
  const length = Math.min(10, run - from - 1);
  if (length < 2 * arrowHead) return [mark];
  const along = (d: Mm, across: Mm): PaperPoint =>
    isUpright ? { x: middle.x + across, y: middle.y + d } : { x: middle.x + d, y: middle.y + across };
  const tip = from + length;
  return [
    mark,
    { kind: 'stroke', points: [along(from, 0), along(tip, 0)], width: 0.25 },
    {
      kind: 'stroke',
      points: [along(tip - arrowHead, arrowHead / 2), along(tip, 0), along(tip - arrowHead, -arrowHead / 2)],
      width: 0.25,
    },
  ];
}

const markStyle = { weight: 'semi-bold' } as const;

/** The largest that has room, level before turned. */
const waysOfMark = ([5, 3.5, 2.5] as const).flatMap((height) => [
  { height, turned: false },
  { height, turned: true },
]);

export function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}
