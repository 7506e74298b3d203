import { boxesMeet, boxOf, type Box } from '../geometry/polygon';
import type { MarkingDrawing } from '../markings/marking-drawing';
import { drawMarking } from '../markings/draw-marking';
import type { Hundredth, Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { depthOfRunningDimension, drawRunningDimension, toFigures, type Stop } from './dimension';
import { hatch } from './hatch';
import { boxOnPaper, pictureItems, type OnPaper } from './marking-items';
import type { Art, Item, Stroke, Text, TextMeasure } from './page';
import { boxHeight, boxWidth, cornersOf, onPaper, type PaperBox, type Scale } from './paper';
import type { WriteLength } from './paper-figures';
import type { Pictures } from './pictures';
import { breakStrokes } from './setting-out-view';
import { textBox } from './text';

/** One marking on its zone with its figures, as drawn on a sheet. */
export interface MarkingView {
  readonly items: readonly Item[];
  /** Headings whose cells are too small on paper. */
  readonly unlettered: readonly string[];
}

interface ViewRequest {
  readonly wall: WorkedWall;
  readonly zone: WorkedWall['zones'][number];
  readonly drawn: MarkingDrawing;
  readonly scale: Scale;
  readonly space: PaperBox;
  /** false: only the edges of zone and marking have figures. */
  readonly everyLine: boolean;
  readonly pictures: Pictures;
  readonly write: WriteLength;
  readonly measure: TextMeasure;
}

/** From the zone to its dimension lines. */
const toLine: Mm = 9.5;
const figures = 2.5;
/** A figure farther than this from its terminator is no longer found at a glance. */
const mostShift: Mm = 16;

/** Places of upright lines of a marking, wall frame, ascending; the edges of one without lines. */
export function linesAlong({ lines, box }: MarkingDrawing): Hundredth[] {
  return ascending([
    ...lines.filter(({ from, to }) => from.x === to.x).map(({ from }) => from.x),
    box.left,
    box.right,
  ]);
}

/** Likewise of level lines. */
export function linesUp({ lines, box }: MarkingDrawing): Hundredth[] {
  return ascending([
    ...lines.filter(({ from, to }) => from.y === to.y).map(({ from }) => from.y),
    box.bottom,
    box.top,
  ]);
}

/** @returns `too large` for this scale; undefined where the figures find no room at it */
export function markingView(request: ViewRequest): MarkingView | 'too large' | undefined {
  const { zone, drawn, scale, space, everyLine, measure } = request;
  const shown = about(zone.area.box, drawn.box);
  const foot = footStops(request, everyLine ? linesAlong(drawn) : [drawn.box.left, drawn.box.right]);
  const side = sideStops(request, everyLine ? linesUp(drawn) : [drawn.box.bottom, drawn.box.top]);
  const [width, height] = [
    onPaper((shown.right - shown.left) / 100, scale),
    onPaper((shown.top - shown.bottom) / 100, scale),
  ];
  const [sideDepth, footDepth] = [side, foot].map((stops) =>
    depthOfRunningDimension(stops, figures, measure),
  );
  const spareX = boxWidth(space) - (width + toLine + sideDepth! + 4);
  const spareY = boxHeight(space) - (height + toLine + footDepth! + 4);
  if (spareX < 0 || spareY < 0) return 'too large';
  const left = space.left + spareX / 2 + toLine + sideDepth!;
  const bottom = space.bottom + spareY / 2 + toLine + footDepth!;
  const perMm = scale.paper / scale.real;
  const paper: OnPaper = {
    perMm,
    toPaper: ({ x, y }) => ({
      x: left + ((x - shown.left) / 100) * perMm,
      y: bottom + ((y - shown.bottom) / 100) * perMm,
    }),
  };
  const place = (stops: readonly WallStop[], axis: 'x' | 'y'): Stop[] =>
    stops.map((stop) => ({
      ...stop,
      at: paper.toPaper({ x: stop.place, y: stop.place })[axis],
      from: paper.toPaper({ x: stop.begins, y: stop.begins })[axis === 'x' ? 'y' : 'x'],
    }));
  const origin = paper.toPaper({ x: zone.area.box.left, y: 0 }).x;
  const line = { height: figures, from: space.left, to: space.right } as const;
  const along = drawRunningDimension(
    { axis: 'foot', line: bottom - toLine, origin, stops: place(foot, 'x'), ...line },
    measure,
  );
  const up = drawRunningDimension(
    {
      axis: 'side',
      line: left - toLine,
      origin: null,
      stops: place(side, 'y'),
      ...line,
      from: bottom - 3,
      to: space.top,
    },
    measure,
  );
  if (!along || !up) return undefined;
  if (everyLine && Math.max(along.largestShift, up.largestShift) > mostShift) return undefined;
  const names = lineNames(left, bottom);
  const words = headings(drawn, paper, measure);
  const boxes = words.texts.map((text) => textBox(text, measure));
  return {
    items: [
      ...[...along.extensionLines, ...up.extensionLines].flatMap((one) => breakStrokes([one], boxes)),
      ...drawing(request, paper, shown, boxes),
      ...words.texts,
      ...along.items,
      ...up.items,
      ...names,
    ],
    unlettered: words.left,
  };
}

interface WallStop extends Omit<Stop, 'at' | 'from'> {
  readonly place: Hundredth;
  /** Where the object begins, across. */
  readonly begins: Hundredth;
}

function footStops({ zone, drawn, write }: ViewRequest, places: readonly Hundredth[]): (WallStop & Stop)[] {
  const { box } = zone.area;
  return ascending([...places, box.right]).flatMap((place) => {
    if (place === box.left) return [];
    const ofZone = place === box.right;
    const begins = ofZone ? box.bottom : drawn.box.bottom;
    return [stopOf(place, begins, write(place - box.left), ofZone ? zone.area.zone.id : '')];
  });
}

function sideStops({ zone, drawn, write }: ViewRequest, places: readonly Hundredth[]): (WallStop & Stop)[] {
  const { box } = zone.area;
  return ascending([...places, box.bottom, box.top]).map((place) => {
    const ofZone = place === box.bottom || place === box.top;
    const begins = ofZone ? box.left : drawn.box.left;
    return stopOf(place, begins, write(place), ofZone ? zone.area.zone.id : '');
  });
}

function stopOf(place: Hundredth, begins: Hundredth, figure: string, note: string): WallStop & Stop {
  return { place, begins, at: 0, from: 0, figure, strong: note !== '', ...(note && { note }) };
}

/** Zone and fittings thin, other markings as soft boxes, the marking itself in ink; filled squares hatched. */
function drawing(
  { wall, zone, drawn, pictures }: ViewRequest,
  paper: OnPaper,
  shown: Box,
  texts: readonly PaperBox[],
): Item[] {
  const { toPaper } = paper;
  const { area } = zone;
  const outline = [area.shapePolygon.outer, ...area.shapePolygon.holes].map((ring): Stroke => ({
    kind: 'stroke',
    points: ring.map(toPaper),
    closed: true,
    width: 0.35,
    line: 'dashed',
  }));
  const standing = wall.survey.keepOuts
    .filter(({ bare }) => boxesMeet(boxOf(bare.ring), shown) && isWithin(boxOf(bare.ring), shown))
    .map(({ bare }): Stroke => ({
      kind: 'stroke',
      points: bare.ring.map(toPaper),
      closed: true,
      width: 0.18,
      colour: 'soft',
    }));
  const others = (area.zone.markings ?? []).flatMap((marking): Stroke[] => {
    const other = drawMarking(marking, { x: area.box.left, y: area.box.bottom });
    if (JSON.stringify(other.box) === JSON.stringify(drawn.box) || !isWithin(other.box, shown)) return [];
    return [frameOf(other.box, paper, 0.18, 'soft')];
  });
  const filled = drawn.filled.flatMap((box) =>
    hatch([cornersOf(boxOnPaper(box, toPaper))], { spacing: 1.4, angle: 45, width: 0.18, colour: 'ink' }),
  );
  const lines = drawn.lines.map(({ from, to }): Stroke => ({
    kind: 'stroke',
    points: [toPaper(from), toPaper(to)],
    width: 0.35,
  }));
  const picture = pictureItems(drawn, toPaper, pictures).map((item) =>
    item.kind === 'art' ? inOutline(item) : item,
  );
  const frame = drawn.picture === null ? [] : [frameOf(drawn.box, paper, 0.35, 'ink')];
  return [
    ...picture,
    ...breakStrokes([...standing, ...others, ...filled, ...outline, ...lines, ...frame], texts),
  ];
}

/** In one colour and without areas, so that it photocopies and its edges can be measured. */
function inOutline(art: Art): Art {
  return { ...art, fill: null, stroke: '#1f2d36', width: 0.18 };
}

/** Headings in their cells, as large as a sheet may have them and the cells let them be. */
function headings(
  drawn: MarkingDrawing,
  { toPaper }: OnPaper,
  measure: TextMeasure,
): { texts: Text[]; left: string[] } {
  const texts: Text[] = [];
  const left: string[] = [];
  for (const { text, cell } of drawn.texts) {
    const box = boxOnPaper(cell, toPaper);
    const fitting = ([3.5, 2.5] as const).flatMap((height) =>
      (['sans', 'condensed'] as const).map((face): Text => ({
        kind: 'text',
        text,
        height,
        face,
        anchor: 'middle',
        at: { x: (box.left + box.right) / 2, y: (box.bottom + box.top - height) / 2 },
      })),
    );
    const one = fitting.find((candidate) => isInside(textBox(candidate, measure), box));
    if (one) texts.push(one);
    else left.push(text);
  }
  return { texts, left };
}

function isInside(inner: PaperBox, box: PaperBox): boolean {
  const clear = 0.4;
  return (
    inner.left >= box.left + clear &&
    inner.right <= box.right - clear &&
    inner.bottom >= box.bottom + clear / 2 &&
    inner.top <= box.top - clear / 2
  );
}

/** What the figures are measured from, at the beginning of both lines. */
function lineNames(left: Mm, bottom: Mm): Text[] {
  const base = { kind: 'text', height: 2.5, face: 'condensed', colour: 'soft', anchor: 'end' } as const;
  return [
    { ...base, text: 'from zone’s left', at: { x: left - 3, y: bottom - toLine - 1.25 } },
    { ...base, text: 'from floor', at: { x: left - toLine - toFigures, y: bottom - 6.4 } },
  ];
}

function frameOf(box: Box, { toPaper }: OnPaper, width: Stroke['width'], colour: Stroke['colour']): Stroke {
  return {
    kind: 'stroke',
    points: cornersOf(boxOnPaper(box, toPaper)),
    closed: true,
    width,
    ...(colour && { colour }),
  };
}

function about(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.max(a.right, b.right),
    top: Math.max(a.top, b.top),
  };
}

function isWithin(inner: Box, box: Box): boolean {
  return (
    inner.left >= box.left && inner.right <= box.right && inner.bottom >= box.bottom && inner.top <= box.top
  );
}

function ascending(places: readonly Hundredth[]): Hundredth[] {
  return [...new Set(places)].sort((a, b) => a - b);
}
