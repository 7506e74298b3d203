import { boxOf, type Polygon, type Ring } from '../../../core/geometry/polygon';
import type { HungItem, PeopleBelow } from '../../../core/job/hung-schema';
import type { Fitting, Opening, Vertex, Zone } from '../../../core/job/schema';
import { isHung } from '../../../core/job/hung-places';
import { pointOf, type MmBox, type MmPoint, type ObjectRef, type WallObject } from '../../../core/job/shape';
import { toScreen } from '../frame';
import { boxHandles, cornerHandles, shapeHandles } from '../handles';
import type { Corners } from '../hand.svelte';
import { polygonOf, polygonOfVertices } from '../rings';
import { asObject } from '../gestures/holes';
import type { Guide } from '../snap';
import { paintCorners } from './corners-drawing';
import { paintGuide, paintSize, type SizeWords } from './guides-drawing';
import { paintFraming, paintSeveral } from './chosen-drawing';
import { paintFitting } from './fittings-layer';
import { paintHeldItem, paintHungItem, paintMagnets, type HungDrawing } from './hung-layer';
import { paintMeasure } from './measures-drawing';
import { paintOpening } from './openings-layer';
import { paintMarkings, type PictureOf } from './markings-layer';
import { acrossOf, downOf, inks, paintSquare, strokeLine, strokePolygon, type Pen } from './pen';
import { paintChosenPeople } from './people-layer';
import { paintRadii, type Radius } from './radii';
import { paintZone } from './zones-layer';

interface Distance {
  readonly from: MmPoint;
  readonly to: MmPoint;
}

export interface HandDrawing {
  /** Painted here rather than on its own layer: it is under the hand. */
  readonly lifted: readonly { readonly kind: ObjectRef['kind']; readonly object: WallObject }[];
  readonly ghost: { readonly kind: ObjectRef['kind']; readonly object: WallObject } | null;
  readonly chosen: WallObject | null;
  /** What is chosen beside it. */
  readonly beside: readonly WallObject[];
  /** The frame that is drawn about what is to be chosen. */
  readonly framing: MmBox | null;
  /** A hole of it that is chosen, too. */
  readonly hole: readonly Vertex[] | null;
  /** A marking of it that is chosen, too, as an object on the wall. */
  readonly marking: Opening | null;
  /** The chosen stretch with people below. */
  readonly people: PeopleBelow | null;
  /** What markings show; null where they are not drawn. */
  readonly pictureOf: PictureOf | null;
  /** Radii of the arcs that are in the hand's reach. */
  readonly radii: readonly Radius[];
  /** Whether the chosen object can be pulled by its handles. */
  readonly handles: boolean;
  /** What hung items are drawn with. */
  readonly hung: Pick<HungDrawing, 'verdicts' | 'diameterOf'>;
  /** The wall's. */
  readonly outline: readonly Vertex[];
  /** Whether the wall's corners can be moved, and the one that is chosen. */
  readonly corner: { readonly chosen: number | null } | null;
  /** What is under the hand crosses itself as it is now. */
  readonly crosses: boolean;
  /** Distances that were taken, and the one that is being taken. */
  readonly measures: readonly Distance[];
  readonly measuring: Distance | null;
  readonly guides: readonly Guide[];
  readonly size: SizeWords | null;
  readonly corners: Corners | null;
  /** A photo lies under the drawing. */
  readonly clear: boolean;
}

/** What is under the hand: the dragged object, handles, guides, a shape that is being drawn. */
export function paintHand(pen: Pen, drawing: HandDrawing): void {
  const { lifted, ghost, chosen, guides, corners } = drawing;
  const { outer } = polygonOfVertices(drawing.outline);
  for (const { kind, object } of lifted) {
    if (kind === 'hung') {
      const { verdicts, diameterOf } = drawing.hung;
      paintHeldItem(pen, object as HungItem, verdicts?.get(object.id), diameterOf);
    } else paintObject(pen, kind, object, outer, drawing.clear);
    if (kind === 'zone' && drawing.pictureOf) paintMarkings(pen, [object as Zone], drawing.pictureOf);
  }
  if (ghost) {
    pen.context.save();
    pen.context.globalAlpha = 0.55;
    paintObject(pen, ghost.kind, ghost.object, outer, drawing.clear);
    pen.context.restore();
  }
  if (drawing.crosses && lifted.length === 0) paintCrossing(pen, polygonOfVertices(drawing.outline));
  if (drawing.corner) paintWallCorners(pen, drawing.outline, drawing.corner.chosen);
  if (chosen && drawing.beside.length > 0) {
    paintSeveral(pen, chosen, drawing.beside);
  } else if (chosen) {
    paintLeaders(pen, chosen);
    if (drawing.crosses) paintCrossing(pen, polygonOf(chosen));
    else strokePolygon(pen, polygonOf(chosen), inks['red-lead'], 2.5);
    if (isHung(chosen)) paintMagnets(pen, chosen, drawing.hung.diameterOf, inks['red-lead']);
    if (drawing.handles) paintHandles(pen, chosen);
  }
  if (drawing.framing) paintFraming(pen, drawing.framing);
  if (drawing.hole) {
    strokePolygon(pen, polygonOfVertices(drawing.hole), inks['red-lead'], 2.5);
    paintHandles(pen, asObject(drawing.hole));
  }
  if (drawing.marking) {
    strokePolygon(pen, polygonOf(drawing.marking), inks['red-lead'], 2.5);
    paintHandles(pen, drawing.marking);
  }
  if (drawing.people) paintChosenPeople(pen, drawing.people);
  paintRadii(pen, drawing.radii);
  for (const { from, to } of drawing.measures) paintMeasure(pen, from, to, false);
  if (drawing.measuring) paintMeasure(pen, drawing.measuring.from, drawing.measuring.to, true);
  for (const guide of guides) paintGuide(pen, guide, drawing.size);
  if (drawing.size) paintSize(pen, drawing.size);
  if (corners) paintCorners(pen, corners);
}

/** Dashed, on paper: it cannot stay as it is. */
function paintCrossing(pen: Pen, polygon: Polygon): void {
  strokePolygon(pen, polygon, inks.paper, 4);
  strokePolygon(pen, polygon, inks['red-lead'], 2, [7, 5]);
}

function paintObject(
  pen: Pen,
  kind: ObjectRef['kind'],
  object: WallObject,
  outline: Ring,
  clear: boolean,
): void {
  if (kind === 'opening') paintOpening(pen, object as Opening, clear);
  else if (kind === 'fitting') paintFitting(pen, object as Fitting);
  else if (kind === 'hung') paintHungItem(pen, object as HungItem);
  else paintZone(pen, object as Zone, { outline, faint: false, handles: object.id });
}

/** Dotted, from the object's outermost points to the two tapes. */
function paintLeaders(pen: Pen, object: WallObject): void {
  const { outer } = polygonOf(object);
  const { left, bottom, right, top } = boxOf(outer);
  const { frame } = pen;
  for (const x of [left, right]) {
    const across = acrossOf(frame, x);
    const lowest = Math.min(...outer.filter((point) => point.x === x).map((point) => point.y));
    strokeLine(pen, [across, downOf(frame, lowest), across, frame.height], inks['red-lead'], 1, [2, 3]);
  }
  for (const y of [bottom, top]) {
    const down = downOf(frame, y);
    const leftmost = Math.min(...outer.filter((point) => point.y === y).map((point) => point.x));
    strokeLine(pen, [0, down, acrossOf(frame, leftmost), down], inks['red-lead'], 1, [2, 3]);
  }
}

function paintHandles(pen: Pen, object: WallObject): void {
  for (const { px, py } of boxHandles(object, pen.frame)) paintSquare(pen, px, py, inks.paper);
  const { corners, middles, apexes } = shapeHandles(object);
  for (const apex of apexes) paintDot(pen, apex, 4);
  for (const middle of middles) paintDot(pen, middle, 4);
  for (const corner of corners) {
    const { px, py } = toScreen(pen.frame, corner);
    paintSquare(pen, px, py, inks.paper);
  }
}

function paintWallCorners(pen: Pen, outline: readonly Vertex[], chosen: number | null): void {
  if (chosen !== null) {
    const { middles, apexes } = cornerHandles(outline);
    for (const middle of [...middles, ...apexes]) paintDot(pen, middle, 3);
  }
  outline.forEach((vertex, i) => {
    const { px, py } = toScreen(pen.frame, pointOf(vertex));
    if (i === chosen) paintSquare(pen, px, py, inks['red-lead']);
    else paintDot(pen, pointOf(vertex), 4);
  });
}

function paintDot({ context, frame }: Pen, at: MmPoint, radius: number): void {
  const { px, py } = toScreen(frame, at);
  context.beginPath();
  context.arc(px, py, radius, 0, 2 * Math.PI);
  context.fillStyle = inks.paper;
  context.fill();
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1.2;
  context.stroke();
}
