import { boxOf, type Point, type Polygon } from '../../geometry/polygon';
import type { Placement } from '../../cutting/plan';
import { nameOfStock, whichRevision } from './drawing-words';
import type { WorkedOut } from '../../worked-out';
import { cutPatterns, type CutPattern } from '../cut-patterns';
import { wallArcs } from '../panel-arcs';
import { placedPanels, type PlacedPanel } from '../placed-panels';
import { contourOf, moveContour } from './contour';
import { boxShape, lineShape, wordsDown, wordsWithin } from './plain-shapes';
import { patternLayers, type WorkshopDrawing, type WorkshopShape } from './workshop-drawing';

/**
 * Each cutting pattern once, in the frame of its stock sheet (lower left corner the origin, sheets with a face seen from it):
 * contours of panels at their true size on `cut`, straight cuts right across and edges of offcuts to keep on `mark`,
 * the sheet and its margins on `sheet`, marks of panels and all notes on `text`. Whole sheets have no drawing.
 *
 * The kerf is not in the contours: a machine sets it off outside them.
 */
export function patternDrawings(worked: WorkedOut): WorkshopDrawing[] {
  const placed = new Map(placedPanels(worked).map((one) => [one.panel.mark, one]));
  return cutPatterns(worked).patterns.map((pattern) => patternDrawing(worked, pattern, placed));
}

/** Whether and where a drawing is to be had, without drawing it. */
export function patternNames(worked: WorkedOut): { name: string; title: string }[] {
  return cutPatterns(worked).patterns.map(namesOf);
}

function namesOf({ number, sheets }: CutPattern): { name: string; title: string } {
  const count = sheets.length === 1 ? sheets[0]!.id : `${sheets.length} sheets`;
  return { name: `cutting-pattern-${number}`, title: `Cutting pattern ${number}, ${count}` };
}

function patternDrawing(
  worked: WorkedOut,
  pattern: CutPattern,
  placed: ReadonlyMap<string, PlacedPanel>,
): WorkshopDrawing {
  const { job } = worked;
  const { drawn, sheets, places } = pattern;
  const kept = drawn.offcuts.filter(({ keep }) => keep);
  const single = sheets.length === 1;
  const shapes: WorkshopShape[] = [
    boxShape('sheet', { left: 0, bottom: 0, right: drawn.width, top: drawn.height }),
    ...places.flatMap(({ placement }) => panelContours(placement, placed.get(placement.mark)!)),
    ...(job.cutting.method === 'edge-to-edge'
      ? drawn.cuts.filter(({ opens }) => !opens).map(({ from, to }) => lineShape('mark', from, to))
      : []),
    ...kept.map(({ x, y, width, height }) =>
      boxShape('mark', { left: x, bottom: y, right: x + width, top: y + height }),
    ),
    ...places.map(({ key, placement, marks }) => wordsWithin(placement.outline, single ? marks[0]! : key)),
    ...wordsDown(notesOf(worked, pattern), drawn.width / 100 + 40, drawn.height / 100, 12),
  ];
  return { ...namesOf(pattern), layers: patternLayers, shapes };
}

/** The contours of a panel where it lies on the sheet: its own arcs, turned over, turned and moved with it. */
function panelContours(placement: Placement, one: PlacedPanel): WorkshopShape[] {
  const { outline } = one.panel;
  const arcs = wallArcs(one, 0, 0);
  const place = placeOnSheet(outline, placement);
  return [outline.outer, ...outline.holes].map((ring) => ({
    kind: 'contour',
    layer: 'cut',
    contour: moveContour(contourOf(ring, arcs), place, placement.turnedOver),
  }));
}

function placeOnSheet(outline: Polygon, placement: Placement): (point: Point) => Point {
  const turned = ({ x, y }: Point): Point => {
    let point = { x: placement.turnedOver ? -x : x, y };
    for (let turn = 0; turn < placement.quarterTurns; turn++) point = { x: -point.y, y: point.x };
    return point;
  };
  const from = boxOf(outline.outer.map(turned));
  const to = boxOf(placement.outline.outer);
  return (point) => {
    const { x, y } = turned(point);
    return { x: x + to.left - from.left, y: y + to.bottom - from.bottom };
  };
}

function notesOf({ job }: WorkedOut, { number, drawn, sheets, places }: CutPattern): string[] {
  const { kerf, method } = job.cutting;
  return [
    whichRevision(job),
    `Cutting pattern ${number}: sheet ${sheets.map(({ id }) => id).join(', ')}`,
    `${nameOfStock(job, drawn.stock)}, ${drawn.width / 100} × ${drawn.height / 100} mm`,
    'Millimetres, 1:1. Layer CUT: panels at true size.',
    kerf > 0 ? `Kerf ${kerf} mm: set it off outside the contours.` : 'No kerf is set off in the contours.',
    ...(method === 'edge-to-edge' ? ['Layer MARK: straight cuts right across, and offcuts to keep.'] : []),
    ...(method === 'free' && drawn.offcuts.some(({ keep }) => keep) ? ['Layer MARK: offcuts to keep.'] : []),
    'Neighbouring panels may share an edge: cut it once.',
    'Cut edges are sharp: wear gloves, deburr.',
    ...(sheets.length > 1 ? places.map(({ key, marks }) => `${key}: ${marks.join(', ')}`) : []),
  ];
}
