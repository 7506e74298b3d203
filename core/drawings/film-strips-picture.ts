import { difference } from '../geometry/clip';
import { boxOfRegion, rectangleOfBox, type Box, type Region } from '../geometry/polygon';
import { seamRuns, type FilmPiece } from '../quantities/film-pieces';
import type { StripPlan } from '../quantities/film-strips';
import type { Mm } from '../units';
import { depthOfRunningDimension, drawRunningDimension, type Stop } from './dimension';
import type { FlowBlock } from './flow-table';
import { drawMark } from './film-strip-mark';
import type { Item, PaperPoint, Stroke, Text, TextHeight, TextMeasure } from './page';
import { largestScale, onPaper, ratioOf, scales, type PaperBox, type Scale } from './paper';
import type { WriteLength } from './paper-figures';
import { breakStrokes } from './setting-out-view';
import { lineSpacing, textBlock, textBox } from './text';

/** What is drawn of a zone's film. */
export interface StripPicture {
  readonly plan: StripPlan;
  /** What it covers. */
  readonly region: Region;
  readonly pieces: readonly FilmPiece[];
  readonly write: WriteLength;
}

const figureHeight = 2.5;
const gap: Mm = 2;
const above: Mm = 3;
const captionLine: Mm = lineSpacing * figureHeight;

/**
 * The strips of a zone on its elevation: each as it is hung, with its mark and an arrow along its run, seams in red lead,
 * the edge of what is covered wide, and so openings and fittings; running figures of edges and seams from the datum. Beneath it the
 * scale, and what found no room and is to be read from the list.
 */
export function stripPicture(
  picture: StripPicture,
  room: { readonly width: Mm; readonly height: Mm },
  measure: TextMeasure,
): FlowBlock {
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
  // The smallest has room for the largest wall of a job.
  const scale =
    largestScale(width, height, room.width - beside.left - gap, room.height - around) ?? scales.at(-1)!;
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

function reachOf({ pieces, plan, region }: StripPicture): Box {
  return pieces.reduce((box, piece) => {
    const own = boxOfPiece(piece, plan);
    return {
      left: Math.min(box.left, own.left),
      right: Math.max(box.right, own.right),
      bottom: Math.min(box.bottom, own.bottom),
      top: Math.max(box.top, own.top),
    };
  }, boxOfRegion(region));
}

/** A piece as it is hung: with what is over at edges, but only to the line of a seam. */
function boxOfPiece(piece: FilmPiece, { direction, seams }: StripPlan): Box {
  const from = seams.includes(piece.from) ? piece.from : piece.reachFrom;
  const to = seams.includes(piece.to) ? piece.to : piece.reachTo;
  return direction === 'upright'
    ? { left: from, right: to, bottom: piece.begins, top: piece.ends }
    : { left: piece.begins, right: piece.ends, bottom: from, top: to };
}

function drawStrips(
  { region, plan, pieces }: StripPicture,
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
  const boxes = pieces.map((piece) => boxOfPiece(piece, plan));
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
  const onPage = (own: Box): PaperBox => ({
    left: x(own.left),
    right: x(own.right),
    bottom: y(own.bottom),
    top: y(own.top),
  });
  const isBare = (paper: PaperBox) => {
    const back = (at: Mm, from: Mm, start: number) =>
      Math.round(start + ((at - from) / onPaper(1, scale)) * 100);
    const own = {
      left: back(paper.left, corner.x, box.left),
      right: back(paper.right, corner.x, box.left),
      bottom: back(paper.bottom, corner.y, box.bottom),
      top: back(paper.top, corner.y, box.bottom),
    };
    return difference([rectangleOfBox(own)], region).length > 0;
  };
  const marked = pieces.map((piece, i) =>
    drawMark(piece.mark, onPage(shownOf(piece, boxes[i]!, isUpright)), isUpright, isBare, measure),
  );
  const marks = marked.flat();
  const texts = marks.filter((item): item is Text => item.kind === 'text');
  const seams = seamRuns(plan, region).map(({ at, from, to }): Stroke => ({
    kind: 'stroke',
    points: isUpright
      ? [
          { x: x(at), y: y(from) },
          { x: x(at), y: y(to) },
        ]
      : [
          { x: x(from), y: y(at) },
          { x: x(to), y: y(at) },
        ],
    width: 0.35,
    colour: 'red-lead',
  }));
  const edges = region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((ring): Stroke => ({ kind: 'stroke', points: ringOf(ring), closed: true, width: 0.5 }));
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
    items: [...lines, ...edges, ...marks, ...(dimension?.items ?? [])],
    unmarked: pieces.flatMap(({ mark }, i) => (marked[i]!.length > 0 ? [] : [mark])),
    hasFigures: dimension !== undefined,
  };
}

/** What shows of a piece across its run; along it, all. */
function shownOf({ from, to }: FilmPiece, box: Box, isUpright: boolean): Box {
  return isUpright ? { ...box, left: from, right: to } : { ...box, bottom: from, top: to };
}
