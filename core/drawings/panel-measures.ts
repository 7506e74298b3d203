import { difference } from '../geometry/clip';
import {
  boxOf,
  boxOfRegion,
  distanceToBoundary,
  polygonArea,
  rectangleOfBox,
  translate,
  type Box,
  type Point,
  type Polygon,
  type Ring,
} from '../geometry/polygon';
import type { Panel } from '../panels/panel';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { Hundredth } from '../units';
import { collapseArcs, trueCircleOf, wallArcs, type Corner } from './panel-arcs';
import type { PanelPlace } from './placed-panels';

/** A notch is open to the panel's edge, a hole is not; a slant takes a corner off along one straight line. */
export type CutoutKind = 'notch' | 'hole' | 'slant';

/** What is missing from the panel's rectangle, measured from the panel's lower left corner, seen from the face. */
export interface Cutout {
  readonly kind: CutoutKind;
  readonly form: 'rectangle' | 'circle' | 'free';
  /** The missing part, arcs as polygons. */
  readonly outline: Ring;
  /** Bounding box of the missing part inside the panel's rectangle. */
  readonly box: Box;
  /** For circles: true centre and diameter; the centre of a notch may lie off the panel. */
  readonly circle?: { readonly x: number; readonly y: number; readonly diameter: number };
  /** Corners of the missing part, arcs drawn together; for free forms and slants. */
  readonly corners: readonly Corner[];
  /** Which sides of the panel's rectangle the missing part is open to. */
  readonly sides: readonly PanelSide[];
  /** Openings, fittings and the like that cause it, each once. */
  readonly causes: readonly EdgeCause[];
}

export type PanelSide = 'foot' | 'head' | 'left' | 'right';

export interface PanelMeasures {
  readonly width: Hundredth;
  readonly height: Hundredth;
  /** Hundredths squared. */
  readonly area: number;
  /** Lower left corner of the panel's rectangle on the wall. */
  readonly at: Point;
  /** The panel moved so that this corner is the origin. */
  readonly shape: Polygon;
  readonly cutouts: readonly Cutout[];
  /** Corners of the outer edge from the lower left, anticlockwise, arcs drawn together. */
  readonly corners: readonly Corner[];
}

/**
 * The sizes of a panel and where its notches and holes sit, in hundredths from the lower left corner of its
 * bounding rectangle. A round fitting gives centre and diameter, its clearance included.
 */
export function panelMeasures(panel: Panel, place: PanelPlace): PanelMeasures {
  const box = boxOf(panel.outline.outer);
  const shape = translate(panel.outline, -box.left, -box.bottom);
  const width = box.right - box.left;
  const height = box.top - box.bottom;
  const arcs = wallArcs(place, -box.left, -box.bottom);
  const full = rectangleOfBox({ left: 0, bottom: 0, right: width, top: height });
  const open = difference([full], [{ outer: shape.outer, holes: [] }]);
  const holes = shape.holes.map((hole): Polygon => ({ outer: [...hole].reverse(), holes: [] }));
  const describe = (missing: Polygon, hole: boolean): Cutout => {
    const causes = causesOf(missing, shape, panel.causes, hole);
    const sides = hole ? [] : sidesOf(missing, width, height);
    const circle = trueCircleOf(causes, place, -box.left, -box.bottom);
    const corners = collapseArcs(missing.outer, arcs);
    const form = circle ? 'circle' : isBox(missing) ? 'rectangle' : 'free';
    const slant = !hole && form === 'free' && corners.length === 3 && corners.every((corner) => !corner.arc);
    const kind = hole ? 'hole' : slant ? 'slant' : 'notch';
    return {
      kind,
      form,
      outline: missing.outer,
      box: boxOfRegion([missing]),
      ...(circle && { circle }),
      corners,
      sides,
      causes,
    };
  };
  const cutouts = [
    ...open.map((missing) => describe(missing, false)),
    ...holes.map((missing) => describe(missing, true)),
  ];
  cutouts.sort((a, b) => a.box.bottom - b.box.bottom || a.box.left - b.box.left);
  return {
    width,
    height,
    area: polygonArea(panel.outline),
    at: { x: box.left, y: box.bottom },
    shape,
    cutouts,
    corners: fromLowerLeft(collapseArcs(shape.outer, arcs)),
  };
}

function fromLowerLeft(corners: readonly Corner[]): Corner[] {
  const reach = corners.map(({ x, y }) => x + y);
  const first = reach.indexOf(Math.min(...reach));
  return [...corners.slice(first), ...corners.slice(0, first)];
}

/** The causes of those panel edges whose middle lies on the missing part's edge. */
function causesOf(
  missing: Polygon,
  shape: Polygon,
  causes: readonly (readonly EdgeCause[])[],
  hole: boolean,
): EdgeCause[] {
  const found = new Map<string, EdgeCause>();
  [shape.outer, ...shape.holes].forEach((ring, r) => {
    if (hole !== r > 0) return;
    ring.forEach((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      const cause = causes[r]?.[i];
      if (!cause || cause.kind === 'stock-edge') return;
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
      if (distanceToBoundary(middle, missing) <= 2) found.set(causeKey(cause), cause);
    });
  });
  return [...found.values()];
}

export function causeKey(cause: EdgeCause): string {
  if (cause.kind === 'stock-edge') return cause.kind;
  return cause.kind === 'rim' ? `rim ${cause.side}` : `${cause.kind} ${cause.id}`;
}

function sidesOf(missing: Polygon, width: Hundredth, height: Hundredth): PanelSide[] {
  const runsAlong = (on: (point: Point) => boolean) => hasEdge(missing.outer, on);
  const sides: PanelSide[] = [];
  if (runsAlong(({ y }) => y === 0)) sides.push('foot');
  if (runsAlong(({ y }) => y === height)) sides.push('head');
  if (runsAlong(({ x }) => x === 0)) sides.push('left');
  if (runsAlong(({ x }) => x === width)) sides.push('right');
  return sides;
}

function hasEdge(ring: Ring, on: (point: Point) => boolean): boolean {
  return ring.some((point, i) => on(point) && on(ring[(i + 1) % ring.length]!));
}

function isBox({ outer }: Polygon): boolean {
  const { left, bottom, right, top } = boxOf(outer);
  return polygonArea({ outer, holes: [] }) === (right - left) * (top - bottom);
}
