import { circleOf, circleVertices, fittedHole, type HoleRef } from '../../../core/job/holes';
import type { Opening, Vertex, Wall, Zone } from '../../../core/job/schema';
import { boxOfVertices, rectangleVertices, type MmBox, type MmPoint } from '../../../core/job/shape';
import { moveHole, nameOfHole, putInHole, setHoleBox } from '../../job/changes/holes';
import { handleAt, shapeHandles, type BoxHandle } from '../handles';
import { hitsAt, nearestWithin } from '../hit';
import type { Hand } from '../hand.svelte';
import { polygonOfVertices } from '../rings';
import { partsOfBox, partsOfPoint, snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import { choose, type Tool } from '../tool';
import { locate } from '../../../core/geometry/polygon';
import { toHundredth } from '../../../core/units';
import { hasTravelled, type Gesture, type HandEvent } from './gesture';
import { moveCorner } from './move-corner';
import { resizedBox } from './resized-box';

export type HoleTool = Extract<Tool, { kind: 'hole' }>;

/** A hole as an object on the wall, so that it has the same handles as one. */
export function asObject(hole: readonly Vertex[]): Opening {
  const circle = circleOf(hole);
  return {
    id: '',
    kind: 'free',
    clearance: 0,
    ...(circle ? { circle: { ...circle } } : { shape: [...hole] }),
  };
}

/** The chosen hole and its zone, while they are there. */
export function chosenHole({
  open,
  wall,
}: Hand): { ref: HoleRef; hole: readonly Vertex[]; zone: Zone } | null {
  const { hole: ref, selection, station } = open;
  if (!ref || station !== 'zones' || selection?.kind !== 'zone' || selection.id !== ref.zone) return null;
  const zone = wall?.zones.find(({ id }) => id === ref.zone);
  const hole = zone?.holes[ref.hole];
  return zone && hole ? { ref, hole, zone } : null;
}

/** The hole of a zone that a point lies in: of the chosen zone first. */
export function holeAt({ wall, open }: Hand, at: MmPoint): HoleRef | null {
  if (!wall || open.station !== 'zones') return null;
  const point = { x: toHundredth(at.x), y: toHundredth(at.y) };
  const chosen = open.selection?.kind === 'zone' ? open.selection.id : null;
  const zones = [...wall.zones].sort((a, b) => Number(b.id === chosen) - Number(a.id === chosen));
  for (const { id, holes } of zones) {
    const hole = holes.findIndex((one) => locate(point, polygonOfVertices(one)) !== 'outside');
    if (hole >= 0) return { zone: id, hole };
  }
  return null;
}

export function chooseHole(hand: Hand, ref: HoleRef): void {
  hand.open.selection = { kind: 'zone', id: ref.zone };
  hand.open.hole = ref;
  hand.open.marking = null;
  hand.said = `${nameOfHole(ref)} chosen`;
}

/** Handles, corners and the inside of the chosen hole. */
export function pressChosenHole(hand: Hand, start: HandEvent): Gesture | null {
  const found = chosenHole(hand);
  if (!found) return null;
  const { ref, hole } = found;
  const object = asObject(hole);
  const handle = handleAt(object, hand.view.frame, start, start.touch);
  if (handle) return resizeHole(hand, start, ref, hole, handle);
  const reach = (start.touch ? 20 : 10) / hand.view.frame.scale;
  const { corners, middles } = shapeHandles(object);
  const shape = { kind: 'zone', id: ref.zone, hole: ref.hole } as const;
  const corner = nearestWithin(corners, start.at, reach);
  if (corner !== null) return moveCorner(hand, start, shape, corner);
  const middle = middles[nearestWithin(middles, start.at, reach) ?? -1];
  return middle ? moveCorner(hand, start, shape, middle.index, { fresh: true }) : null;
}

export function dragHole(hand: Hand, start: HandEvent, ref: HoleRef): Gesture | null {
  const { wall } = hand;
  const hole = wall?.zones.find(({ id }) => id === ref.zone)?.holes[ref.hole];
  if (!wall || !hole) return null;
  chooseHole(hand, ref);
  const box = boxOfVertices(hole);
  const lines = linesWithout(hand, wall, ref);
  hand.lift({ kind: 'zone', id: ref.zone }, wall);
  return {
    move(event) {
      const to = toWholeMm({ x: box.x + event.at.x - start.at.x, y: box.y + event.at.y - start.at.y });
      const { by, guides } = snap(partsOfBox({ ...box, ...to }), lines, hand.snapReachOf(event));
      hand.guide(guides);
      hand.open.preview(moveHole(wall.id, ref, to.x - box.x + by.x, to.y - box.y + by.y).change);
    },
    end: () => hand.commit(moveHole(wall.id, ref, 0, 0).name),
    cancel: () => hand.cancel(),
  };
}

function resizeHole(
  hand: Hand,
  start: HandEvent,
  ref: HoleRef,
  hole: readonly Vertex[],
  handle: BoxHandle,
): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  const box = boxOfVertices(hole);
  const round = circleOf(hole) !== null;
  const lines = round ? [] : linesWithout(hand, wall, ref);
  hand.lift({ kind: 'zone', id: ref.zone }, wall);
  let name = '';
  return {
    move(event) {
      const dx = Math.round(event.at.x - start.at.x);
      const dy = Math.round(event.at.y - start.at.y);
      const free = resizedBox(box, handle, dx, dy);
      const moving = partsOfBox(free).filter(
        ({ axis, at }) => !partsOfBox(box).some((part) => part.axis === axis && part.at === at),
      );
      const { by, guides } = snap(
        moving.filter(({ kind }) => kind === 'edge'),
        lines,
        hand.snapReachOf(event),
      );
      hand.guide(guides);
      const to = resizedBox(box, handle, dx + by.x, dy + by.y, round || event.straight);
      const change = setHoleBox(wall.id, ref, to);
      name = change.name;
      hand.open.preview(change.change);
    },
    end: () => hand.commit(name),
    cancel: () => hand.cancel(),
  };
}

/** A click makes a hole of the usual size, a drag from corner to corner gives it the size. */
export function putHole(hand: Hand, start: HandEvent, tool: HoleTool): Gesture | null {
  const { wall } = hand;
  const zone = wall && zoneUnder(hand, wall, start.at);
  if (!wall || !zone) {
    hand.said = 'A hole is put into a zone: press inside one';
    return null;
  }
  const lines = snapLines(wall, null, hand.panels);
  const corner = (event: HandEvent) => {
    const at = toWholeMm(event.at);
    const { by, guides } = snap(partsOfPoint(at), lines, hand.snapReachOf(event));
    hand.guide(guides);
    return { x: at.x + by.x, y: at.y + by.y };
  };
  const from = corner(start);
  let box: MmBox | null = null;
  const change = (to: MmBox) => putInHole(wall.id, zone.id, verticesIn(tool, to));
  return {
    move(event) {
      if (!box && !hasTravelled(start, event)) return;
      box = boxBetween(from, corner(event), tool.what === 'circle' || event.straight);
      hand.lifted = { ref: { kind: 'zone', id: zone.id }, rest: withoutZone(wall, zone.id) };
      hand.open.preview(change(box).change);
    },
    end(event) {
      hand.cancel();
      finishHole(hand, wall, zone, verticesIn(tool, box ?? usualBox(toWholeMm(event.at))));
    },
    cancel: () => hand.cancel(),
  };
}

/** In the middle of the chosen zone, as Enter does. */
export function putHoleInMiddle(hand: Hand, tool: HoleTool): void {
  const { wall, open } = hand;
  const zone = wall?.zones.find(({ id }) => id === open.selection?.id) ?? wall?.zones[0];
  if (!wall || !zone) {
    hand.said = 'A hole is put into a zone: draw one first';
    return;
  }
  const { x, y, width, height } = boxOfVertices(zone.shape);
  finishHole(hand, wall, zone, verticesIn(tool, usualBox({ x: x + width / 2, y: y + height / 2 })));
}

/** The zone that a hole at a point is put into: the chosen one, else the smallest that lies there. */
export function zoneUnder({ open }: Hand, wall: Wall, at: MmPoint): Zone | undefined {
  const ids = hitsAt(wall, at, 0, 'zones').flatMap(({ kind, id }) => (kind === 'zone' ? [id] : []));
  const chosen =
    open.selection?.kind === 'zone' && ids.includes(open.selection.id) ? open.selection.id : ids[0];
  return wall.zones.find(({ id }) => id === chosen);
}

export function finishHole(hand: Hand, wall: Wall, zone: Zone, hole: readonly Vertex[]): void {
  hand.takeUp(choose);
  hand.letGo();
  if (!hand.make(putInHole(wall.id, zone.id, hole))) return;
  hand.open.selection = { kind: 'zone', id: zone.id };
  hand.open.hole = { zone: zone.id, hole: zone.holes.length };
}

function verticesIn(tool: HoleTool, box: MmBox): Vertex[] {
  const square = rectangleVertices(box);
  if (tool.what === 'rectangle') return square;
  const circle = circleVertices({ x: box.x + box.width / 2, y: box.y + box.height / 2, diameter: box.width });
  return fittedHole(circle, box);
}

/** Round a bracket or a lamp (common practice, no source), mm. */
const usualSide = 200;

function usualBox({ x, y }: MmPoint): MmBox {
  return { x: x - usualSide / 2, y: y - usualSide / 2, width: usualSide, height: usualSide };
}

export function boxBetween(a: MmPoint, b: MmPoint, square: boolean): MmBox {
  const handle = { x: b.x < a.x ? -1 : 1, y: b.y < a.y ? -1 : 1 } as const;
  return resizedBox({ ...a, width: 0, height: 0 }, handle, b.x - a.x, b.y - a.y, square);
}

function withoutZone(wall: Wall, zoneId: string): Wall {
  return { ...wall, zones: wall.zones.filter(({ id }) => id !== zoneId) };
}

/** What a hole can be brought in line with: all but itself. */
function linesWithout(hand: Hand, wall: Wall, { zone, hole }: HoleRef): SnapLine[] {
  const zones = wall.zones.map((one) =>
    one.id === zone ? { ...one, holes: one.holes.filter((_, i) => i !== hole) } : one,
  );
  return snapLines({ ...wall, zones }, null, hand.panels);
}
