import type { Point } from '../geometry/polygon';
import type { Mm } from '../units';
import { arrangeBlock, titledHead } from './arrange-block';
import { listWidthFor } from './cut-sheet-lists';
import type { PageBlock } from './page-blocks';
import { layHeading, layRows, type FlowBlock, type FlowColumn } from './flow-table';
import { labelWithin } from './label-within';
import { moveItems } from './move-items';
import type { Item, PaperPoint, TextMeasure } from './page';
import { onPaper, type PaperBox, type Scale } from './paper';
import type { Corner } from './panel-arcs';
import { exactMm, sizeText, type PaperFigures, type WriteLength } from './paper-figures';
import { panelMeasures, type PanelMeasures } from './panel-measures';
import { panelWords } from './panel-words';
import { signedMark } from './panel-marks';
import type { PlacedPanel } from './placed-panels';
import { runningFrame } from './running-frame';
import type { Sketch } from './sketch';

/** Panels of one shape and stock: drawn once. */
export interface PanelShape {
  readonly drawn: PlacedPanel;
  readonly measures: PanelMeasures;
  readonly marks: readonly string[];
  /** The marks as they are read: those of closing panels with their sign. */
  readonly names: readonly string[];
}

/** A panel that is cut, with its sizes. */
export interface MeasuredPanel {
  readonly placed: PlacedPanel;
  readonly measures: PanelMeasures;
}

/** Sizes of all panels that are no whole stock sheet. */
export function measurePanels(placed: readonly PlacedPanel[]): MeasuredPanel[] {
  return placed
    .filter(({ panel }) => !panel.full)
    .map((one) => ({ placed: one, measures: panelMeasures(one.panel, one) }));
}

/** The distinct shapes among the panels that have a notch, a hole or a slant, in the order of their first marks. */
export function panelShapes(measured: readonly MeasuredPanel[]): PanelShape[] {
  const shapes = new Map<
    string,
    { drawn: PlacedPanel; measures: PanelMeasures; marks: string[]; names: string[] }
  >();
  for (const { placed: one, measures } of measured) {
    if (measures.cutouts.length === 0) continue;
    const key = `${one.panel.stock} ${shapeKey(measures)}`;
    const known = shapes.get(key);
    const [mark, name] = [one.panel.mark, signedMark(one.panel)];
    if (known) {
      known.marks.push(mark);
      known.names.push(name);
    } else shapes.set(key, { drawn: one, measures, marks: [mark], names: [name] });
  }
  return [...shapes.values()];
}

/**
 * A panel with its notches and holes dimensioned from its lower left corner: what the fitter snips by.
 *
 * @param patterns what to say of the cutting patterns that are this panel and nothing else, a line each
 */
export function panelBlocks(
  { drawn, measures, marks, names }: PanelShape,
  patterns: readonly string[],
  room: Mm,
  figures: PaperFigures,
  measure: TextMeasure,
): PageBlock[] {
  const { width, height } = measures;
  const numbered = numberedCorners(measures);
  return arrangeBlock({
    size: [width / 100, height / 100],
    room,
    ...listWidthFor(figures),
    sketchAt: (scale) => sketchPanel(measures, numbered, scale, figures.cut, measure),
    head: (wide, scale) =>
      titledHead(
        names.length === 1 ? `Panel ${names[0]!}` : `${names.length} panels alike`,
        [
          [
            sizeText(width, height, figures.cut),
            exactMm(width, height, figures.units),
            `stock ${drawn.panel.stock}`,
          ]
            .filter(Boolean)
            .join(', '),
          ...(names.length === 1 ? [] : [names.join(', ')]),
          ...patterns,
        ],
        scale,
        wide,
        measure,
      ),
    lists: (wide) => [
      ...cutoutList({ drawn, measures, marks, names }, figures, wide, measure),
      ...cornerList(numbered, figures, wide, measure),
    ],
  });
}

function shapeKey({ shape }: PanelMeasures): string {
  const ring = (points: readonly Point[]) => {
    const texts = points.map(({ x, y }) => `${x},${y}`);
    const first = texts.indexOf([...texts].sort()[0]!);
    return [...texts.slice(first), ...texts.slice(0, first)].join(' ');
  };
  return [ring(shape.outer), ...shape.holes.map(ring).sort()].join(';');
}

/** Corners that running dimensions alone do not say: those of free forms with arcs or sloping edges. */
function numberedCorners({ cutouts, corners, width, height }: PanelMeasures): Corner[] {
  const isOddRing = (ring: readonly Corner[]) =>
    ring.some((corner, i) => {
      const next = ring[(i + 1) % ring.length]!;
      return corner.arc !== undefined || (corner.x !== next.x && corner.y !== next.y);
    });
  const free = cutouts.filter(
    ({ kind, form, corners: ring }) => kind !== 'slant' && form === 'free' && isOddRing(ring),
  );
  const outer = free.some(({ kind }) => kind !== 'hole')
    ? corners.filter(
        ({ x, y }, i) =>
          corners[i]!.arc !== undefined || !((x === 0 || x === width) && (y === 0 || y === height)),
      )
    : [];
  return [...outer, ...free.filter(({ kind }) => kind === 'hole').flatMap(({ corners: ring }) => ring)];
}

function sketchPanel(
  measures: PanelMeasures,
  numbered: readonly Corner[],
  scale: Scale,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  const { width, height, shape, cutouts } = measures;
  const toPaper = ({ x, y }: { x: number; y: number }): PaperPoint => ({
    x: onPaper(x / 100, scale),
    y: onPaper(y / 100, scale),
  });
  const box: PaperBox = { left: 0, bottom: 0, ...namedCorner(toPaper({ x: width, y: height })) };
  const places = cutouts.flatMap(({ circle, form, box: cutout, corners }) => {
    if (circle) {
      const inside = (at: number, end: number) => (at > 0 && at < end ? [Math.round(at)] : []);
      return [{ xs: inside(circle.x, width), ys: inside(circle.y, height) }];
    }
    if (form === 'free' && corners.length <= 12) {
      return [{ xs: corners.map(({ x }) => x), ys: corners.map(({ y }) => y) }];
    }
    return [{ xs: [cutout.left, cutout.right], ys: [cutout.bottom, cutout.top] }];
  });
  const within = (end: number) => (at: number) => at > 0 && at < end;
  const xs = places.flatMap((place) => place.xs).filter(within(width));
  const ys = places.flatMap((place) => place.ys).filter(within(height));
  const all = runningFrame(box, width, height, xs, ys, write, measure);
  const frame = all ?? runningFrame(box, width, height, [], [], write, measure);
  if (!frame) throw new Error('Two figures always find room beside a sketch.');
  const obstacles: PaperBox[] = [];
  const numbers = numbered.flatMap((corner, i) => numberAt(toPaper(corner), i + 1, box, obstacles));
  const circles = cutouts.flatMap(({ circle }) =>
    circle ? centreLines(toPaper(circle), circle.diameter, scale) : [],
  );
  const paperShape = {
    outer: shape.outer.map(toHundredth(toPaper)),
    holes: shape.holes.map((hole) => hole.map(toHundredth(toPaper))),
  };
  const face = labelWithin(
    [{ text: 'face', height: 2.5, colour: 'soft' }],
    paperShape,
    obstacles,
    [0, 90],
    measure,
  );
  const outline = [shape.outer, ...shape.holes].map((ring): Item => ({
    kind: 'stroke',
    points: ring.map(toPaper),
    closed: true,
    width: 0.5,
  }));
  const head = numbered.length > 0 ? 5 : 2;
  const isComplete = all !== undefined && Math.max(box.right, box.top) >= 45;
  return {
    width: frame.left + box.right + 6,
    height: frame.foot + box.top + head,
    items: moveItems(
      [...outline, ...circles, ...frame.items, ...numbers, ...(face?.texts ?? [])],
      frame.left,
      frame.foot,
    ),
    isComplete,
    isLegible: isComplete,
  };
}

function namedCorner({ x, y }: PaperPoint): { right: Mm; top: Mm } {
  return { right: x, top: y };
}

function toHundredth(toPaper: (point: Point) => PaperPoint): (point: Point) => Point {
  return (point) => {
    const { x, y } = toPaper(point);
    return { x: Math.round(x * 100), y: Math.round(y * 100) };
  };
}

/** A red-lead number outside its corner where there is room, else inside. */
function numberAt(at: PaperPoint, number: number, sketch: PaperBox, taken: PaperBox[]): Item[] {
  const size = 4.2;
  const spots = [
    [1.2, 1.2],
    [-1.2, 1.2],
    [1.2, -1.2],
    [-1.2, -1.2],
  ].map(([right, up]) => ({
    left: right! > 0 ? at.x + right! : at.x + right! - size,
    bottom: up! > 0 ? at.y + up! : at.y + up! - 2.8,
  }));
  const boxes = spots.map(({ left, bottom }): PaperBox => ({
    left,
    bottom,
    right: left + size,
    top: bottom + 2.8,
  }));
  const isFree = (box: PaperBox) =>
    box.left >= sketch.left &&
    box.bottom >= sketch.bottom &&
    box.right <= sketch.right + 6 &&
    box.top <= sketch.top + 5 &&
    taken.every(
      (other) =>
        box.right <= other.left ||
        other.right <= box.left ||
        box.top <= other.bottom ||
        other.top <= box.bottom,
    );
  const box = boxes.find(isFree);
  if (!box) return [];
  taken.push(box);
  return [
    { kind: 'circle', centre: at, radius: 0.6, fill: 'red-lead' },
    {
      kind: 'text',
      text: String(number),
      at: { x: (box.left + box.right) / 2, y: box.bottom },
      height: 2.5,
      anchor: 'middle',
      face: 'condensed',
      weight: 'semi-bold',
      colour: 'red-lead',
    },
  ];
}

function centreLines({ x, y }: PaperPoint, diameter: number, scale: Scale): Item[] {
  const reach = onPaper(diameter / 200, scale) + 2;
  return [
    [
      { x: x - reach, y },
      { x: x + reach, y },
    ],
    [
      { x, y: y - reach },
      { x, y: y + reach },
    ],
  ].map((points): Item => ({ kind: 'stroke', points, width: 0.18, line: 'long-dashed-dotted' }));
}

function cutoutList(
  { drawn, measures }: PanelShape,
  figures: PaperFigures,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const columns: FlowColumn[] = [{ heading: 'To cut out, from the lower left corner', align: 'left', width }];
  const words = panelWords(drawn.panel, drawn, figures.cut, measures).cutouts;
  const rows = layRows(
    columns,
    words.map((text) => ({ kind: 'row', cells: [text] })),
    measure,
  );
  return [layHeading(columns, measure), ...rows, { height: 2, at: () => [] }];
}

function cornerList(
  corners: readonly Corner[],
  { cut: write, units }: PaperFigures,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const wide = units === 'ft-in' ? 7 : 0;
  if (corners.length === 0) return [];
  const columns: FlowColumn[] = [
    { heading: 'Corner', align: 'left', width: 15 },
    { heading: 'from left', align: 'right', width: 17 + wide },
    { heading: 'from foot', align: 'right', width: 17 + wide },
    { heading: 'to the next', align: 'left', width: width - 49 - 2 * wide },
  ];
  const rows = layRows(
    columns,
    corners.map(({ x, y, arc }, i) => ({
      kind: 'row',
      cells: [
        String(i + 1),
        write(x),
        write(y),
        arc ? `arc R ${write(arc.radius)}, centre ${write(arc.x)} | ${write(arc.y)}` : 'straight',
      ],
    })),
    measure,
  );
  return [layHeading(columns, measure), ...rows];
}
