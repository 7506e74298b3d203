import type { Mm } from '../units';
import type { Colour, Item, PaperPoint, Stroke, Text, TextHeight, TextMeasure } from './page';
import { spreadAlong } from './place-labels';

/*
 * Dimensions after ISO 129-1: superimposed running dimensions from one origin, with one kind of terminator
 * (the oblique stroke) on every drawing, figures in line with their extension lines. The figures of the foot
 * are read from the right, those of the side from the bottom; where they stand too near each other their
 * leaders bend, the terminators stay where they belong.
 */

/** A place that is dimensioned; both coordinates are paper mm. */
export interface Stop {
  /** Along the dimension line: x for the foot, y for the side. */
  readonly at: Mm;
  /** Across it: where the object begins that the extension line comes from. */
  readonly from: Mm;
  readonly figure: string;
  /** What is dimensioned, written beyond the figure. */
  readonly note?: string;
  readonly strong?: boolean;
  readonly colour?: Colour;
}

export interface RunningDimension {
  readonly axis: 'foot' | 'side';
  /** The dimension line: its y for the foot, its x for the side. */
  readonly line: Mm;
  /** The datum along the line; null if it is not on this page. */
  readonly origin: Mm | null;
  readonly stops: readonly Stop[];
  /** Where figures may stand along the line. */
  readonly from: Mm;
  readonly to: Mm;
  readonly height: TextHeight;
}

export interface DrawnDimension {
  readonly items: readonly Item[];
  /** Drawn beneath everything else, and to be broken round texts. */
  readonly extensionLines: readonly Stroke[];
  /** How far the figure that moved most stands from its terminator. */
  readonly largestShift: Mm;
}

/** Gap and overrun of extension lines: 8 line widths, ISO 129-1 (from memory). */
const extensionGap = 1.5;
const overrun = 1.5;
/** From the dimension line to the figures; the bent part of leaders lies within. */
export const toFigures: Mm = 5;
/** A figure from the foot of its comma to the top of its digits, as a multiple of its height. */
const figureSize = 1.38;
const betweenFigures = 0.2;
const noteGap = 1.4;
const originRadius = 1.5;

/** How far figures and notes reach from the dimension line. */
export function depthOfRunningDimension(
  stops: readonly Stop[],
  height: TextHeight,
  measure: TextMeasure,
): Mm {
  return (
    toFigures + stops.reduce((depth, stop) => Math.max(depth, lengthOfLabel(stop, height, measure)), 0) + 0.5
  );
}

/** @returns undefined if the figures do not fit between `from` and `to` */
export function drawRunningDimension(
  dimension: RunningDimension,
  measure: TextMeasure,
): DrawnDimension | undefined {
  const stops = [...dimension.stops].sort((a, b) => a.at - b.at);
  const { height, origin } = dimension;
  const size = height * figureSize;
  const places = spreadAlong(
    stops.map(({ at }) => ({ at, size })),
    betweenFigures,
    dimension.from,
    dimension.to,
  );
  if (!places) return undefined;
  const at = placer(dimension);
  const ends = [...stops.map((stop) => stop.at), ...(origin === null ? [] : [origin])];
  const items: Item[] = [];
  if (ends.length > 1) items.push(stroke([at(Math.min(...ends), 0), at(Math.max(...ends), 0)], 0.25));
  const texts: Text[] = [];
  const extensionLines: Stroke[] = [];
  stops.forEach((stop, i) => {
    const place = places[i]!;
    extensionLines.push(...extensionLine(stop, dimension));
    items.push(stroke([at(stop.at, -extensionGap), at(stop.at, overrun), at(place, toFigures - 0.7)], 0.18));
    if (origin === null || Math.abs(stop.at - origin) > 0.01) items.push(terminator(at(stop.at, 0)));
    texts.push(...labelOf(stop, place, dimension, at, measure));
  });
  if (origin !== null) items.push(originMark(at(origin, 0)));
  const largestShift = places.reduce((most, place, i) => Math.max(most, Math.abs(place - stops[i]!.at)), 0);
  return { items: [...items, ...texts], extensionLines, largestShift };
}

/**
 * A single dimension from edge to edge with its figure in the middle, above the line or, turned, left of it.
 *
 * @param axis 'foot' runs along x at y = `line`, 'side' along y at x = `line`
 */
export function drawOverall(
  axis: 'foot' | 'side',
  line: Mm,
  from: Mm,
  to: Mm,
  figure: string,
  height: TextHeight,
): Item[] {
  const at = (along: Mm, across: Mm): PaperPoint =>
    axis === 'foot' ? { x: along, y: line + across } : { x: line - across, y: along };
  const text: Text = {
    kind: 'text',
    text: figure,
    at: at((from + to) / 2, 1.2),
    height,
    face: 'condensed',
    anchor: 'middle',
    ...(axis === 'side' ? { turned: 90 as const } : {}),
  };
  return [stroke([at(from, 0), at(to, 0)], 0.25), terminator(at(from, 0)), terminator(at(to, 0)), text];
}

/** Origin of running dimensions: an open circle of 3 mm. */
export function originMark(centre: PaperPoint): Item {
  return { kind: 'circle', centre, radius: originRadius, width: 0.35, fill: 'white' };
}

/** Oblique stroke at 45°. */
export function terminator({ x, y }: PaperPoint): Stroke {
  const half = 0.9;
  return stroke(
    [
      { x: x - half, y: y - half },
      { x: x + half, y: y + half },
    ],
    0.5,
  );
}

function placer({ axis, line }: RunningDimension): (along: Mm, away: Mm) => PaperPoint {
  return (along, away) => (axis === 'foot' ? { x: along, y: line - away } : { x: line - away, y: along });
}

function extensionLine(stop: Stop, { axis, line }: RunningDimension): Stroke[] {
  const length = stop.from - line - 2 * extensionGap;
  if (length <= 0) return [];
  const at = (across: Mm): PaperPoint =>
    axis === 'foot' ? { x: stop.at, y: across } : { x: across, y: stop.at };
  return [stroke([at(stop.from - extensionGap), at(line + extensionGap)], 0.18, 'soft')];
}

function labelOf(
  stop: Stop,
  place: Mm,
  { axis, height }: RunningDimension,
  at: (along: Mm, away: Mm) => PaperPoint,
  measure: TextMeasure,
): Text[] {
  const foot = axis === 'foot';
  const baseline = place + (foot ? height / 2 : -height / 2);
  const turned = foot ? { turned: 90 as const } : {};
  const figure: Text = {
    kind: 'text',
    text: stop.figure,
    at: at(baseline, toFigures),
    height,
    anchor: 'end',
    ...figureStyle(stop),
    colour: stop.colour ?? 'ink',
    ...turned,
  };
  if (!stop.note) return [figure];
  const away = toFigures + measure(stop.figure, height, figureStyle(stop)) + noteGap;
  const note: Text = {
    kind: 'text',
    text: stop.note,
    at: at(baseline, away),
    height,
    anchor: 'end',
    face: 'condensed',
    colour: 'soft',
    ...turned,
  };
  return [figure, note];
}

function lengthOfLabel(stop: Stop, height: TextHeight, measure: TextMeasure): Mm {
  const figure = measure(stop.figure, height, figureStyle(stop));
  return stop.note ? figure + noteGap + measure(stop.note, height, { face: 'condensed' }) : figure;
}

function figureStyle({ strong }: Stop): { face: 'condensed'; weight: 'regular' | 'semi-bold' } {
  return { face: 'condensed', weight: strong ? 'semi-bold' : 'regular' };
}

function stroke(points: readonly PaperPoint[], width: Stroke['width'], colour: Colour = 'ink'): Stroke {
  return { kind: 'stroke', points, width, colour };
}
