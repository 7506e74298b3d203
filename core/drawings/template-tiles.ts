import type { Point } from '../geometry/polygon';
import type { TemplatePaper } from '../job/template-paper';
import type { Job } from '../job/schema';
import type { Mm } from '../units';
import { hatch } from './hatch';
import type { Page, PaperPoint, Stroke, TextMeasure } from './page';
import { boxHeight, boxWidth, cornersOf, grownBox, pageSize, type PaperBox } from './paper';
import { clipStrokes } from './setting-out-view';
import { footHeight, templateFoot } from './template-foot';
import { jointMarks } from './template-marks';
import type { Template } from './template-shapes';

/** Around the cut-out, so that edges and setting lines show, mm. */
const around: Mm = 12;
export const templateMargin: Mm = 10;

/** One page of a template: what of it is shown, in its own mm. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly shown: PaperBox;
}

export interface TileGrid {
  readonly landscape: boolean;
  readonly columns: number;
  readonly rows: number;
  readonly overlap: Mm;
  /** Of a whole page, mm. */
  readonly step: { readonly x: Mm; readonly y: Mm };
  /** All that is drawn. */
  readonly region: PaperBox;
  /** Those that a line to cut along crosses, row by row from the upper left. */
  readonly tiles: readonly Tile[];
}

/** A template at 1:1 over as few pages as it takes, upright or lying. */
export function templateTiles(
  template: Template,
  number: number,
  job: Job,
  paper: TemplatePaper,
  measure: TextMeasure,
): Page[] {
  const upright = gridOf(template, paper, false);
  const lying = gridOf(template, paper, true);
  const grid = lying.tiles.length < upright.tiles.length ? lying : upright;
  return grid.tiles.map((tile, i): Page => {
    const page = { format: paper.paper, landscape: grid.landscape };
    const { height } = pageSize(page);
    const dx = templateMargin - tile.shown.left;
    const dy = height - templateMargin - tile.shown.top;
    const shown = movedBox(tile.shown, dx, dy);
    const lines = linesOf(template, grid.region).map((stroke) => movedStroke(stroke, dx, dy));
    const marks = jointMarks(grid, tile, dx, dy);
    return {
      ...page,
      items: [
        ...clipStrokes(lines, shown),
        { kind: 'stroke', points: cornersOf(shown), closed: true, width: 0.18, colour: 'soft' },
        ...marks,
        ...templateFoot(template, number, job, grid, i, page, measure),
      ],
    };
  });
}

function gridOf(template: Template, { paper, overlap }: TemplatePaper, landscape: boolean): TileGrid {
  const page = pageSize({ format: paper, landscape });
  const room = {
    x: page.width - 2 * templateMargin,
    y: page.height - 2 * templateMargin - footHeight,
  };
  const region = regionOf(template);
  const step = { x: room.x - overlap, y: room.y - overlap };
  const count = (length: Mm, along: 'x' | 'y') =>
    Math.max(1, Math.ceil((length - overlap) / step[along] - 1e-9));
  const columns = count(boxWidth(region), 'x');
  const rows = count(boxHeight(region), 'y');
  const cut = cutLines(template);
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const left = region.left + column * step.x;
    const top = region.top - row * step.y;
    const shown = {
      left,
      top,
      right: Math.min(left + room.x, region.right),
      bottom: Math.max(top - room.y, region.bottom),
    };
    return { column, row, shown };
  });
  return {
    ...{ landscape, columns, rows, overlap, step, region },
    tiles: tiles.filter(({ shown }) => clipStrokes(cut, shown).some(({ points }) => points.length > 1)),
  };
}

/** In mm, the crossing of the setting lines with it. */
function regionOf({ box }: Template): PaperBox {
  return grownBox(
    {
      left: Math.min(0, box.left / 100),
      right: Math.max(0, box.right / 100),
      bottom: Math.min(0, box.bottom / 100),
      top: Math.max(0, box.top / 100),
    },
    around,
  );
}

/** The width tells the lines apart on a photocopy: wide is where one cuts. */
function linesOf(template: Template, region: PaperBox): Stroke[] {
  return [
    ...hatch([template.ring.map(inMm)], { spacing: 8, angle: 45, width: 0.18, colour: 'soft' }),
    ...settingLines(template, region),
    ...edgeLines(template, region),
    ...cutLines(template),
  ];
}

/** All round but along the edges of the panel that the cut-out is open to. */
function cutLines({ ring, box, sides }: Template): Stroke[] {
  const isOpen = (a: Point, b: Point) =>
    (sides.includes('left') && a.x === box.left && b.x === box.left) ||
    (sides.includes('right') && a.x === box.right && b.x === box.right) ||
    (sides.includes('foot') && a.y === box.bottom && b.y === box.bottom) ||
    (sides.includes('head') && a.y === box.top && b.y === box.top);
  const next = (i: number) => ring[(i + 1) % ring.length]!;
  const gaps = ring.flatMap((point, i) => (isOpen(point, next(i)) ? [i] : []));
  const stroke = (points: readonly Point[], closed: boolean): Stroke => ({
    ...{ kind: 'stroke', width: 0.5, points: points.map(inMm) },
    ...(closed && { closed }),
  });
  if (gaps.length === 0) return [stroke(ring, true)];
  return gaps.flatMap((gap, g) => {
    const count = ((gaps[(g + 1) % gaps.length]! - gap + ring.length - 1) % ring.length) + 1;
    const run = Array.from({ length: count }, (_, i) => ring[(gap + 1 + i) % ring.length]!);
    return run.length > 1 ? [stroke(run, false)] : [];
  });
}

function inMm({ x, y }: Point): PaperPoint {
  return { x: x / 100, y: y / 100 };
}

/** Where the panel's edge lies on a setting line the edge is enough. */
function settingLines({ sides }: Template, { left, right, bottom, top }: PaperBox): Stroke[] {
  const line = (a: PaperPoint, b: PaperPoint): Stroke => ({
    kind: 'stroke',
    points: [a, b],
    width: 0.25,
    line: 'long-dashed-dotted',
  });
  return [
    ...(sides.includes('left') ? [] : [line({ x: 0, y: bottom }, { x: 0, y: top })]),
    ...(sides.includes('foot') ? [] : [line({ x: left, y: 0 }, { x: right, y: 0 })]),
  ];
}

function edgeLines({ box, sides }: Template, { left, right, bottom, top }: PaperBox): Stroke[] {
  const line = (a: PaperPoint, b: PaperPoint): Stroke => ({ kind: 'stroke', points: [a, b], width: 0.35 });
  const upright = (x: Mm) => line({ x, y: bottom }, { x, y: top });
  const level = (y: Mm) => line({ x: left, y }, { x: right, y });
  return sides.map((side) =>
    side === 'left'
      ? upright(box.left / 100)
      : side === 'right'
        ? upright(box.right / 100)
        : level((side === 'foot' ? box.bottom : box.top) / 100),
  );
}

function movedBox({ left, right, bottom, top }: PaperBox, dx: Mm, dy: Mm): PaperBox {
  return { left: left + dx, right: right + dx, bottom: bottom + dy, top: top + dy };
}

function movedStroke(stroke: Stroke, dx: Mm, dy: Mm): Stroke {
  return { ...stroke, points: stroke.points.map(({ x, y }) => ({ x: x + dx, y: y + dy })) };
}
