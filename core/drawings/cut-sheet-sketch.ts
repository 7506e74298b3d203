import type { Placement } from '../cutting/plan';
import { difference } from '../geometry/clip';
import { boxOf, rectangle, type Point, type Polygon } from '../geometry/polygon';
import type { JobSheet } from '../worked-out';
import type { CutPattern } from './cut-patterns';
import type { CutStep } from './cut-steps';
import { drawFlags, flagDepth } from './cut-sheet-flags';
import { hatch } from './hatch';
import { labelWithin, type LabelLine } from './label-within';
import { moveItems } from './move-items';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { cornersOf, grownBox, onPaper, type PaperBox, type Scale } from './paper';
import { sizeText, type WriteLength } from './paper-figures';
import { runningFrame } from './running-frame';
import type { Sketch } from './sketch';

/**
 * One stock sheet, seen from the face, with what is cut from it: panels by key, mark (where only one sheet is cut so) and
 * size, numbered cuts, kept offcuts, waste hatched, running dimensions from the lower left corner.
 * Where the figures of all cuts do not fit, those of the list stand for them.
 */
export function sketchStockSheet(
  pattern: CutPattern,
  steps: readonly CutStep[],
  scale: Scale,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  const { drawn, places } = pattern;
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
  const { width, height } = drawn;
  const all = runningFrame(box, width, height, xs, ys, write, measure);
  const frame = all ?? runningFrame(box, width, height, [], [], write, measure);
  if (!frame) throw new Error('Two figures always find room beside a sketch.');
  const flags = drawFlags(steps, box, toPaper, measure);
  const corners = places.flatMap(({ placement }) => hangingCorner(placement, toPaper));
  const obstacles = [...flags.inside, ...corners.map(({ box: corner }) => corner)];
  const labels = labelPlaces(pattern, toPaper, obstacles, write, measure);
  const items = [
    ...drawWaste(drawn, toPaper),
    ...places.flatMap(({ placement }) => outlines(placement.outline, toPaper)),
    ...drawKept(drawn, toPaper, obstacles, write, measure),
    ...corners.map(({ item }) => item),
    { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.7 } as Item,
    ...steps.flatMap((step) => cutLines(step, toPaper)),
    ...frame.items,
    ...flags.items,
    ...labels.texts,
  ];
  return {
    width: frame.left + box.right + flagDepth,
    height: frame.foot + box.top + flags.above,
    items: moveItems(items, frame.left, frame.foot),
    isComplete: labels.isComplete && flags.isComplete && all !== undefined,
    isLegible: labels.isLegible && flags.isComplete && all !== undefined,
  };
}

/**
 * Key, mark and size in each panel, all at one height; the key alone where there is no room for more. A panel that is
 * turned says so, and its words turn with it if they can.
 */
function labelPlaces(
  { places, sheets }: CutPattern,
  toPaper: (point: Point) => PaperPoint,
  obstacles: readonly PaperBox[],
  write: WriteLength,
  measure: TextMeasure,
): { texts: Text[]; isComplete: boolean; isLegible: boolean } {
  const inAll = (linesOf: (place: CutPattern['places'][number]) => LabelLine[]) =>
    places.map((place) => {
      const { outline, quarterTurns } = place.placement;
      const area = paperPolygon(outline, toPaper);
      return labelWithin(
        linesOf(place),
        area,
        obstacles,
        quarterTurns % 2 === 1 ? [90, 0] : [0, 90],
        measure,
      );
    });
  const isFull = (labels: ReturnType<typeof inAll>) => labels.every((label) => label !== undefined);
  const say = ({ key, placement, marks }: CutPattern['places'][number], height: 2.5 | 3.5) => {
    const turned = [
      placement.turnedOver ? 'over' : '',
      placement.quarterTurns ? `${placement.quarterTurns * 90}°` : '',
    ];
    return [
      heading(sheets.length === 1 ? `${key}  ${marks[0]!}` : key, height),
      plain(hangingSize(placement, write), height),
      ...(turned.some(Boolean) ? [plain(`turned ${turned.filter(Boolean).join(', ')}`, 2.5)] : []),
    ];
  };
  const large = inAll((place) => say(place, 3.5));
  const small = isFull(large) ? large : inAll((place) => say(place, 2.5));
  if (isFull(small)) {
    return { texts: small.flatMap((label) => label!.texts), isComplete: true, isLegible: true };
  }
  const keys = inAll(({ key }) => [heading(key, 2.5)]);
  const shown = small.map((label, i) => label ?? keys[i]);
  return { texts: shown.flatMap((label) => label?.texts ?? []), isComplete: false, isLegible: isFull(shown) };
}

function hangingSize({ outline, quarterTurns }: Placement, write: WriteLength): string {
  const { left, bottom, right, top } = boxOf(outline.outer);
  return quarterTurns % 2 === 1
    ? sizeText(top - bottom, right - left, write)
    : sizeText(right - left, top - bottom, write);
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
  write: WriteLength,
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
        { text: sizeText(width, height, write), height: 2.5, face: 'condensed', colour: 'soft' },
      ];
      const paperArea = paperPolygon(area, toPaper);
      const label =
        labelWithin(lines, paperArea, obstacles, [0, 90], measure) ??
        labelWithin(lines.slice(0, 1), paperArea, obstacles, [0, 90], measure);
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
