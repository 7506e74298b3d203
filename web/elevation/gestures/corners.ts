import { freshWallId } from '../../../core/job/changes';
import { newFitting, newOpening, newWall, newZone } from '../../../core/job/defaults';
import type { Fitting, Job, Opening, Vertex, Wall, Zone } from '../../../core/job/schema';
import type { MmPoint, Placed } from '../../../core/job/shape';
import type { Mm } from '../../../core/units';
import { lengthFigure } from '../../look/figures';
import { readLength } from '../../tapes/read-length';
import { redrawOutline } from '../../job/changes/objects';
import { putInFitting, putInOpening, putInZone } from '../../job/changes/put-in';
import type { NamedChange } from '../../job/changes/named-change';
import { putUpWall } from '../../job/changes/walls';
import type { Selection } from '../../job/open-job.svelte';
import { nearestWithin } from '../hit';
import type { Corners, Hand } from '../hand.svelte';
import { partsOfPoint, snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import { choose, type CornersOf } from '../tool';
import { finishHole, zoneUnder } from './holes';
import type { HandEvent } from './gesture';

/** Where the next corner would be: in line with what is near, level or plumb with Shift. */
export function aimCorner(hand: Hand, event: HandEvent): void {
  const { corners, wall } = hand;
  if (!corners) return;
  const last = corners.placed.at(-1);
  const at = toWholeMm(last && event.straight ? levelOrPlumb(last, event.at) : event.at);
  const lines = [
    ...(wall ? snapLines(wall, null, hand.panels) : datum),
    ...corners.placed.flatMap(linesOfCorner),
  ];
  const { by, guides } = snap(partsOfPoint(at), lines, hand.snapReachOf(event));
  hand.guide(guides);
  hand.corners = { ...corners, next: { x: at.x + by.x, y: at.y + by.y } };
}

/** Sets the corner aimed at; on the first corner it closes the shape. */
export function setCornerDown(hand: Hand, of: CornersOf, event: HandEvent): void {
  aimCorner(hand, event);
  const { corners } = hand;
  if (!corners?.next) return;
  const closes = nearestWithin(
    corners.placed.slice(0, 1),
    event.at,
    (event.touch ? 20 : 10) / hand.view.frame.scale,
  );
  if (closes !== null && corners.placed.length >= 3) closeShape(hand, of);
  else addCorner(hand, corners, corners.next);
}

/** What is typed for the next edge, to be set by a key. */
export function typeLength(hand: Hand, typed: string): void {
  if (hand.corners) hand.corners = { ...hand.corners, typed, fault: null };
}

/** A corner as far from the last one as was typed, in the direction aimed at; to the right if nothing is. */
export function setTypedCorner(hand: Hand): void {
  const length = typedLength(hand);
  const { corners } = hand;
  const from = corners?.placed.at(-1);
  if (!corners || length === null) return;
  if (!from) return setFirstCorner(hand);
  const aim = corners.next ?? { x: from.x + 1, y: from.y };
  const distance = Math.hypot(aim.x - from.x, aim.y - from.y);
  const [ux, uy] = distance === 0 ? [1, 0] : [(aim.x - from.x) / distance, (aim.y - from.y) / distance];
  addCorner(hand, corners, { x: tidy(from.x + ux * length), y: tidy(from.y + uy * length) });
}

/** A corner as far from the last one as was typed, in a direction of length 1; the first one on the datum. */
export function setCornerBeside(hand: Hand, x: number, y: number): void {
  const { corners } = hand;
  const from = corners?.placed.at(-1);
  if (!from) return setFirstCorner(hand);
  const length = typedLength(hand);
  if (corners && length !== null)
    addCorner(hand, corners, { x: tidy(from.x + x * length), y: tidy(from.y + y * length) });
}

export function takeBackCorner(hand: Hand): void {
  const { corners } = hand;
  if (!corners || corners.placed.length === 0) return;
  hand.corners = { ...corners, placed: corners.placed.slice(0, -1), fault: null };
  hand.said = 'Last corner taken back';
}

/** The corners become what was being drawn. */
export function closeShape(hand: Hand, of: CornersOf): void {
  const { corners, wall } = hand;
  if (!corners || corners.placed.length < 3) {
    hand.said = 'A shape needs at least three corners';
    return;
  }
  const shape = anticlockwiseFromLowerLeft(corners.placed);
  if (of === 'hole') return closeHole(hand, corners.placed[0]!, shape);
  const drawn = drawnThing(hand.open.job, wall, of, shape);
  if (!drawn || !hand.make(drawn.change)) return;
  hand.takeUp(choose);
  if (drawn.wall) {
    hand.open.showWall(drawn.wall.id);
  }
  if (of === 'wall' || of === 'outline') hand.fit();
  hand.open.selection = drawn.selection;
}

function closeHole(hand: Hand, first: MmPoint, shape: Vertex[]): void {
  const { wall } = hand;
  const zone = wall && zoneUnder(hand, wall, first);
  if (wall && zone) finishHole(hand, wall, zone, shape);
  else hand.said = 'A hole is put into a zone: set its first corner inside one';
}

function addCorner(hand: Hand, corners: Corners, at: MmPoint): void {
  const last = corners.placed.at(-1);
  if (last && last.x === at.x && last.y === at.y) return;
  hand.corners = { placed: [...corners.placed, at], next: null, typed: '', fault: null };
  hand.said = `Corner ${corners.placed.length + 1} at ${lengthFigure(at.x)}, ${lengthFigure(at.y)}`;
}

function setFirstCorner(hand: Hand): void {
  if (hand.corners) addCorner(hand, hand.corners, { x: 0, y: 0 });
}

/** The length typed for the next edge; null, and the fault shown, if it cannot be read. */
function typedLength(hand: Hand): Mm | null {
  const { corners } = hand;
  if (!corners) return null;
  const typed = readLength(corners.typed, 0.01, 'Type the length of the edge');
  if ('value' in typed) return typed.value;
  hand.corners = { ...corners, fault: typed.fault };
  return null;
}

interface Drawn {
  readonly change: NamedChange;
  readonly selection: Selection;
  readonly wall?: Wall;
}

function drawnThing(job: Job, wall: Wall | undefined, of: CornersOf, shape: Vertex[]): Drawn | null {
  if (of === 'wall') {
    const drawn = { ...newWall(freshWallId(job), '', 1000, 1000), outline: shape };
    return { change: putUpWall(drawn), selection: null, wall: drawn };
  }
  if (!wall) return null;
  if (of === 'outline') return { change: redrawOutline(wall, shape), selection: null };
  if (of === 'zone') {
    const zone: Zone = { ...newZone(job, wall, { x: 0, y: 0, width: 1, height: 1 }), shape };
    return { change: putInZone(wall, zone), selection: { kind: 'zone', id: zone.id } };
  }
  if (of === 'hole') return null;
  if (of === 'opening') {
    const opening = withShape(newOpening(wall, 'free'), shape);
    return { change: putInOpening(wall, opening), selection: { kind: 'opening', id: opening.id } };
  }
  const fitting = withShape(newFitting(wall, 'free'), shape);
  return { change: putInFitting(wall, fitting), selection: { kind: 'fitting', id: fitting.id } };
}

function withShape<T extends Opening | Fitting>(object: T, shape: Vertex[]): T {
  const { x: _x, y: _y, width: _width, height: _height, ...rest } = object as Placed;
  return { ...rest, shape } as unknown as T;
}

/** As a job file written by hand would list them. */
function anticlockwiseFromLowerLeft(points: readonly MmPoint[]): Vertex[] {
  const area = points.reduce((sum, { x, y }, i) => {
    const next = points[(i + 1) % points.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);
  const turned = area < 0 ? [...points].reverse() : [...points];
  const first = turned.reduce(
    (best, { x, y }, i) => (y + x < turned[best]!.y + turned[best]!.x ? i : best),
    0,
  );
  return [...turned.slice(first), ...turned.slice(0, first)].map(({ x, y }): Vertex => [x, y]);
}

function levelOrPlumb(from: MmPoint, to: MmPoint): MmPoint {
  return Math.abs(to.x - from.x) >= Math.abs(to.y - from.y) ? { x: to.x, y: from.y } : { x: from.x, y: to.y };
}

const datum: readonly SnapLine[] = [
  { axis: 'x', at: 0, words: 'the datum', kind: 'datum' },
  { axis: 'y', at: 0, words: 'the datum', kind: 'datum' },
];

function linesOfCorner({ x, y }: MmPoint, i: number): SnapLine[] {
  return [
    { axis: 'x', at: x, words: `corner ${i + 1}`, kind: 'edge' },
    { axis: 'y', at: y, words: `corner ${i + 1}`, kind: 'edge' },
  ];
}

/** To 0.01 mm, the step of the clipping kernel. */
function tidy(length: number): number {
  return Math.round(length * 100) / 100;
}
