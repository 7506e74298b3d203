import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import {
  depthOfRunningDimension,
  drawOverall,
  drawRunningDimension,
  toFigures,
  type DrawnDimension,
  type Stop,
} from './dimension';
import { besideFold, endsOfPart, foldMarks } from './fold-marks';
import { createLabelRoom, occupy } from './label-room';
import type { Item, Text, TextHeight, TextMeasure } from './page';
import { onPaper, type PaperBox, type Scale } from './paper';
import type { WriteLength } from './paper-figures';
import { drawElevation, type DrawElevation } from './setting-out-elevation';
import { datumMark, levelLine, matchLines } from './setting-out-marks';
import { wallStops, type ObjectStops, type StopClass, type WallStop } from './setting-out-stops';
import { paperX, paperY, type View, type WallPart } from './setting-out-view';
import type { WallEnd } from './wall-ends';

export interface ElevationPage {
  readonly items: readonly Item[];
  readonly view: View;
  /** Classes whose figures found no room on a dimension line: they go to the tables. */
  readonly leftOut: readonly StopClass[];
  readonly unmarked: readonly string[];
  /** Height of all figures on the drawing. */
  readonly height: TextHeight;
}

/** From the wall to its dimension lines; names of zones and fittings may stand there. */
const toLine: Mm = 8.5;
const overallRoom: Mm = 10.5;
/** A figure farther than this from its terminator is no longer found at a glance. */
const mostShift: Mm = 16;

/** What goes to the tables first is named first. */
const stages: readonly (readonly StopClass[])[] = [
  [],
  ['fixing'],
  ['fixing', 'fitting'],
  ['fixing', 'fitting', 'panel'],
  ['fixing', 'fitting', 'panel', 'opening'],
  ['fixing', 'fitting', 'panel', 'opening', 'zone'],
];

/**
 * A wall or a part of it with its running dimensions from the datum along the foot and up the side.
 *
 * @param stops of the whole wall
 * @param draw what is drawn of the wall itself
 * @returns undefined if it does not fit into `space` at this scale, or not even the corners of the wall can be
 * dimensioned
 */
export function elevationPage(
  wall: WorkedWall,
  stops: ObjectStops,
  part: WallPart,
  scale: Scale,
  space: PaperBox,
  height: TextHeight,
  measure: TextMeasure,
  write: WriteLength,
  ends: readonly WallEnd[] = [],
  draw: DrawElevation = drawElevation,
): ElevationPage | undefined {
  const folds = endsOfPart(ends, part);
  const toSide = toLine + roomForWords(folds, 'left');
  const toOverall = overallRoom + roomForWords(folds, 'right');
  const width = onPaper((part.shown.right - part.shown.left) / 100, scale);
  const rise = onPaper((part.shown.top - part.shown.bottom) / 100, scale);
  const allX = wallStops(stops, 'x', part.shown);
  const allY = wallStops(stops, 'y', part.shown);
  const classes = new Set([...allX, ...allY].flatMap((stop) => stop.classes));
  for (const stageY of stages) {
    const sideStops = paperStops(allY, stageY, write);
    const sideDepth = depthOfRunningDimension(sideStops, height, measure);
    const footDepth = depthOfRunningDimension(paperStops(allX, [], write), height, measure);
    const spareX = space.right - space.left - (sideDepth + toSide + width + toOverall);
    const spareY = space.top - space.bottom - (footDepth + toLine + rise + overallRoom);
    if (spareX < 0 || spareY < 0) return undefined;
    const left = space.left + spareX / 2 + sideDepth + toSide;
    const bottom = space.bottom + spareY / 2 + footDepth + toLine;
    const view: View = {
      scale,
      datum: {
        x: left - onPaper(part.shown.left / 100, scale),
        y: bottom - onPaper(part.shown.bottom / 100, scale),
      },
      shown: part.shown,
      write,
    };
    const last = stageY === stages.at(-1);
    const upTo = { from: bottom - 2, to: space.top };
    const side = drawLine('side', toSide, allY, stageY, view, upTo, height, measure);
    if (!side || (!last && side.largestShift > mostShift)) continue;
    for (const stageX of stages) {
      const room = { from: left - 4, to: space.right };
      const foot = drawLine('foot', toLine, allX, stageX, view, room, height, measure);
      if (!foot || (stageX !== stages.at(-1) && foot.largestShift > mostShift)) continue;
      const leftOut = [...new Set([...stageX, ...stageY])].filter((one) => classes.has(one));
      return compose(wall, part, view, { foot, side }, leftOut, space, height, measure, folds, draw);
    }
  }
  return undefined;
}

function compose(
  wall: WorkedWall,
  part: WallPart,
  view: View,
  lines: { readonly foot: DrawnDimension; readonly side: DrawnDimension },
  leftOut: readonly StopClass[],
  space: PaperBox,
  height: TextHeight,
  measure: TextMeasure,
  folds: readonly WallEnd[],
  draw: DrawElevation,
): ElevationPage {
  const clipped = Object.values(part.beyond).some((sheet) => sheet !== undefined);
  const box: PaperBox = {
    left: paperX(view, view.shown.left),
    right: paperX(view, view.shown.right),
    bottom: paperY(view, view.shown.bottom),
    top: paperY(view, view.shown.top),
  };
  const room = createLabelRoom(clipped ? box : space, measure);
  const fixed: Item[] = [];
  const fix = (items: readonly Item[]) => {
    fixed.push(...items);
    for (const item of items) if (item.kind === 'text') occupy(room, item);
  };
  fix(lines.foot.items);
  fix(lines.side.items);
  fix(lineNames(box, toLine + roomForWords(folds, 'left')));
  if (part.beyond.left === undefined && part.beyond.right === undefined && part.beyond.top === undefined) {
    const figure = `(${view.write(view.shown.right - view.shown.left)})`;
    fix(drawOverall('foot', box.top + 5.5, box.left, box.right, figure, height));
  }
  const { right, bottom, top } = part.beyond;
  if (right === undefined && bottom === undefined && top === undefined) {
    const figure = `(${view.write(view.shown.top - view.shown.bottom)})`;
    fix(
      drawOverall(
        'side',
        box.right + 9.5 + roomForWords(folds, 'right'),
        box.bottom,
        box.top,
        figure,
        height,
      ),
    );
  }
  fix(matchLines(part, box, height));
  fix(foldMarks(folds, view, box, height, measure));
  const level = levelLine(view, box, room);
  fix(level.texts);
  const { items, unmarked } = draw(wall, view, room, {
    extensionLines: [...lines.foot.extensionLines, ...lines.side.extensionLines, ...level.lines],
    brief: false,
    clipped,
  });
  return { items: [...items, ...fixed, ...datumMark(view)], view, leftOut, unmarked, height };
}

function roomForWords(folds: readonly WallEnd[], at: WallEnd['side']): Mm {
  return folds.some(({ side }) => side === at) ? besideFold : 0;
}

function drawLine(
  axis: 'foot' | 'side',
  away: Mm,
  stops: readonly WallStop[],
  leftOut: readonly StopClass[],
  view: View,
  room: { readonly from: Mm; readonly to: Mm },
  height: TextHeight,
  measure: TextMeasure,
): DrawnDimension | undefined {
  const foot = axis === 'foot';
  const { shown } = view;
  const line = foot ? paperY(view, shown.bottom) - away : paperX(view, shown.left) - away;
  const along = foot ? paperX : paperY;
  const across = foot ? paperY : paperX;
  const nearest = foot ? shown.bottom : shown.left;
  const placed = paperStops(stops, leftOut, view.write, (stop) => ({
    at: along(view, stop.at),
    from: across(view, Math.max(nearest, Math.min(stop.from, foot ? shown.top : shown.right))),
  }));
  const datumShows = foot ? shown.left <= 0 && 0 <= shown.right : shown.bottom <= 0 && 0 <= shown.top;
  const origin = datumShows ? along(view, 0) : null;
  return drawRunningDimension({ axis, line, origin, stops: placed, ...room, height }, measure);
}

function paperStops(
  stops: readonly WallStop[],
  leftOut: readonly StopClass[],
  write: WriteLength,
  place: (stop: WallStop) => Pick<Stop, 'at' | 'from'> = () => ({ at: 0, from: 0 }),
): Stop[] {
  return stops
    .filter(({ classes }) => classes.some((one) => !leftOut.includes(one)))
    .map((stop): Stop => {
      const note = noteOf(stop.ids);
      const onlySteel = stop.classes.every((one) => one === 'panel' || one === 'zone');
      return {
        ...place(stop),
        figure: write(stop.at),
        ...(note && { note }),
        strong: stop.classes.includes('wall') || stop.classes.includes('zone'),
        colour: onlySteel && stop.classes.includes('panel') ? 'red-lead' : 'ink',
      };
    });
}

/** Ids of what begins or ends at a figure, as many as a short note holds. */
function noteOf(ids: readonly string[]): string {
  return ids.length <= 3 ? ids.join(' ') : `${ids.slice(0, 2).join(' ')} +${ids.length - 2}`;
}

/** What the figures are measured from, at the beginning of both lines. */
function lineNames(box: PaperBox, toSide: Mm): Text[] {
  const base = { kind: 'text', height: 2.5, face: 'condensed', colour: 'soft', anchor: 'end' } as const;
  return [
    { ...base, text: 'from left', at: { x: box.left - 3, y: box.bottom - toLine - 1.25 } },
    { ...base, text: 'from floor', at: { x: box.left - toSide - toFigures, y: box.bottom - 5.8 } },
  ];
}
