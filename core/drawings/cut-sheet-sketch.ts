import type { Placement } from '../cutting/plan';
import { difference } from '../geometry/clip';
import { boxOf, rectangle, type Point, type Polygon } from '../geometry/polygon';
import type { JobSheet } from '../worked-out';
import type { CutPattern } from './cut-patterns';
import type { CutStep } from './cut-steps';
import { drawFlags, flagDepth } from './cut-sheet-flags';
import { sizeText } from './figure-text';
import { hatch } from './hatch';
import { labelWithin, type LabelLine } from './label-within';
import { moveItems } from './move-items';
import type { Item, PaperPoint, TextMeasure } from './page';
import { cornersOf, grownBox, onPaper, type PaperBox, type Scale } from './paper';
import { runningFrame } from './running-frame';
import type { Sketch } from './sketch';

/**
 * One stock sheet, seen from the face, with what is cut from it: panels by key, mark (where only one sheet is cut so) and
 * size, numbered cuts, kept offcuts, waste hatched, running dimensions from the lower left corner.
 *
 * @returns undefined if the dimensions do not fit at this scale
 */
export function sketchStockSheet(
  { drawn, places, sheets }: CutPattern,
  steps: readonly CutStep[],
  scale: Scale,
  measure: TextMeasure,
): Sketch | undefined {
  const box: PaperBox = {
    left: 0,
    bottom: 0,
    right: onPaper(drawn.width / 100, scale),
    top: onPaper(drawn.height / 100, scale),
  };
  const toPaper = ({ x, y }: Point): PaperPoint => ({
    x: onPaper(x / 100, scale),
    y: onPaper(y / 100, scale),
  });
  const xs = steps.flatMap((step) =>
    step.kind === 'part' && step.direction === 'upright' ? [step.from.x] : [],
  );
  const ys = steps.flatMap((step) =>
    step.kind === 'part' && step.direction === 'level' ? [step.from.y] : [],
  );
  const frame = runningFrame(box, drawn.width, drawn.height, xs, ys, measure);
  if (!frame) return undefined;
  const flags = drawFlags(steps, box, toPaper, measure);
  const corners = places.flatMap(({ placement }) => hangingCorner(placement, toPaper));
  const obstacles = [...flags.inside, ...corners.map(({ box: corner }) => corner)];
  let isComplete = true;
  const labels = places.flatMap(({ key, placement, marks }): Item[] => {
    const turned = placement.quarterTurns % 2 === 1;
    const { left, bottom, right, top } = boxOf(placement.outline.outer);
    const size = turned ? sizeText(top - bottom, right - left) : sizeText(right - left, top - bottom);
    const name = sheets.length === 1 ? `${key}  ${marks[0]!}` : key;
    const full = [heading(name, 3.5), plain(size, 3.5)];
    const small = [heading(name, 2.5), plain(size, 2.5)];
    const area = paperPolygon(placement.outline, toPaper);
    for (const lines of [full, small]) {
      const label = labelWithin(lines, area, obstacles, turned, measure);
      if (label) return label.texts;
    }
    isComplete = false;
    const alone = labelWithin([heading(key, 2.5)], area, obstacles, turned, measure);
    return alone?.texts ?? [];
  });
  const items = [
    ...drawWaste(drawn, toPaper),
    ...places.flatMap(({ placement }) => outlines(placement.outline, toPaper)),
    ...drawKept(drawn, toPaper, obstacles, measure),
    ...corners.map(({ item }) => item),
    { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.7 } as Item,
    ...steps.flatMap((step) => cutLines(step, toPaper)),
    ...frame.items,
    ...flags.items,
    ...labels,
  ];
  return {
    width: frame.left + box.right + flagDepth,
    height: frame.foot + box.top + flagDepth,
    items: moveItems(items, frame.left, frame.foot),
    isComplete,
  };
}

function heading(text: string, height: 2.5 | 3.5): LabelLine {
  return { text, height, weight: 'semi-bold' };
}

function plain(text: string, height: 2.5 | 3.5): LabelLine {
  return { text, height, face: 'condensed' };
}

/** Steel that is neither panel nor kept offcut, hatched. */
function drawWaste(sheet: JobSheet, toPaper: (point: Point) => PaperPoint): Item[] {
  const kept = sheet.offcuts
    .filter(({ keep }) => keep)
    .map(({ x, y, width, height }) => rectangle(x, y, width, height));
  const waste = difference(
    [rectangle(0, 0, sheet.width, sheet.height)],
    sheet.placements.map(({ outline }) => outline),
    kept,
  );
  const rings = waste.flatMap(({ outer, holes }) => [outer, ...holes].map((ring) => ring.map(toPaper)));
  return hatch(rings, { spacing: 1.8, angle: 45, width: 0.18, colour: 'soft' });
}

function drawKept(
  sheet: JobSheet,
  toPaper: (point: Point) => PaperPoint,
  obstacles: readonly PaperBox[],
  measure: TextMeasure,
): Item[] {
  return sheet.offcuts
    .filter(({ keep }) => keep)
    .flatMap(({ x, y, width, height }): Item[] => {
      const area = rectangle(x, y, width, height);
      const [low, high] = [toPaper({ x, y }), toPaper({ x: x + width, y: y + height })];
      const inset = cornersOf(
        grownBox(
          { left: low.x, bottom: low.y, right: high.x, top: high.y },
          -Math.min(0.8, (high.x - low.x) / 4),
        ),
      );
      const lines: LabelLine[] = [
        { text: 'keep', height: 2.5, colour: 'soft' },
        { text: sizeText(width, height), height: 2.5, face: 'condensed', colour: 'soft' },
      ];
      const paperArea = paperPolygon(area, toPaper);
      const label =
        labelWithin(lines, paperArea, obstacles, false, measure) ??
        labelWithin(lines.slice(0, 1), paperArea, obstacles, false, measure);
      return [
        { kind: 'stroke', points: inset, closed: true, width: 0.25, line: 'dashed' },
        ...(label?.texts ?? []),
      ];
    });
}

function outlines({ outer, holes }: Polygon, toPaper: (point: Point) => PaperPoint): Item[] {
  return [outer, ...holes].map((ring) => ({
    kind: 'stroke',
    points: ring.map(toPaper),
    closed: true,
    width: 0.35,
  }));
}

function cutLines(step: CutStep, toPaper: (point: Point) => PaperPoint): Item[] {
  const lines = step.kind === 'part' ? [step] : step.lines;
  return lines.map(({ from, to }) => ({
    kind: 'stroke',
    points: [toPaper(from), toPaper(to)],
    width: 0.5,
    colour: 'red-lead',
  }));
}

/** A small triangle in the corner that is the panel's lower left once it hangs; none where that corner is cut off. */
function hangingCorner(
  { outline, quarterTurns, turnedOver }: Placement,
  toPaper: (point: Point) => PaperPoint,
): { item: Item; box: PaperBox }[] {
  const { left, bottom, right, top } = boxOf(outline.outer);
  const corners = [
    { x: left, y: bottom, right: 1, up: 1 },
    { x: right, y: bottom, right: -1, up: 1 },
    { x: right, y: top, right: -1, up: -1 },
    { x: left, y: top, right: 1, up: -1 },
  ];
  const corner = corners[((turnedOver ? 1 : 0) + quarterTurns) % 4]!;
  if (!outline.outer.some(({ x, y }) => x === corner.x && y === corner.y)) return [];
  const at = toPaper(corner);
  const size = Math.min(2.4, (Math.min(right - left, top - bottom) / 100) * 0.3);
  const end = { x: at.x + corner.right * size, y: at.y + corner.up * size };
  const ring = [at, { x: end.x, y: at.y }, { x: at.x, y: end.y }];
  const box: PaperBox = {
    left: Math.min(at.x, end.x),
    right: Math.max(at.x, end.x),
    bottom: Math.min(at.y, end.y),
    top: Math.max(at.y, end.y),
  };
  return [{ item: { kind: 'fill', rings: [ring], colour: 'ink' }, box }];
}

/** In hundredths of a paper millimetre, for `labelWithin`. */
function paperPolygon({ outer, holes }: Polygon, toPaper: (point: Point) => PaperPoint): Polygon {
  const scaled = (point: Point): Point => {
    const { x, y } = toPaper(point);
    return { x: Math.round(x * 100), y: Math.round(y * 100) };
  };
  return { outer: outer.map(scaled), holes: holes.map((hole) => hole.map(scaled)) };
}
