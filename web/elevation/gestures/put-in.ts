import {
  defaultFitting,
  defaultLayout,
  defaultOpening,
  newFitting,
  newOpening,
  newZone,
} from '../../../core/job/defaults';
import { hungFigures, isPiece, newHung } from '../../../core/job/hung-kinds';
import type { Wall } from '../../../core/job/schema';
import { boxOfVertices, type MmBox, type MmPoint, type ObjectRef } from '../../../core/job/shape';
import { lengthOfSheets, nearestSheets, sheetPitch } from '../../../core/panels/whole-sheets';
import { putInFitting, putInOpening, putInZone, setInto } from '../../job/changes/put-in';
import { hungInto, putInHung } from '../../job/changes/hung';
import type { NamedChange } from '../../job/changes/named-change';
import type { Hand } from '../hand.svelte';
import { partsOfBox, partsOfPoint, snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import { snapToSquares } from '../snap-to-squares';
import { choose, type Tool } from '../tool';
import { hasTravelled, type Gesture, type HandEvent } from './gesture';

export type PutInTool = Extract<Tool, { kind: 'put-in' }>;

/** A click puts a thing in at its usual size, a drag from corner to corner gives it the size. */
export function putIn(hand: Hand, start: HandEvent, tool: PutInTool): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  const lines = linesFor(hand, wall, tool);
  const corner = (event: HandEvent) => {
    const at = toWholeMm(event.at);
    const { by, guides } = snap(partsOfPoint(at), lines, hand.snapReachOf(event));
    hand.guide(guides);
    return { x: at.x + by.x, y: at.y + by.y };
  };
  const from = corner(start);
  let box: MmBox | null = null;
  hand.ghost = null;

  return {
    move(event) {
      if (!box && !hasTravelled(start, event)) return;
      box =
        tool.what === 'whole-sheets'
          ? sheetsBetween(hand, from, event)
          : boxBetween(from, corner(event), event.straight);
      const { change, ref } = thingFor(hand, wall, tool, box);
      hand.lifted = { ref, rest: wall, sized: true };
      hand.open.preview(change.change);
      hand.open.selection = ref;
    },
    end(event) {
      hand.cancel();
      finish(hand, wall, tool, box ?? usualBox(hand, wall, tool, event));
    },
    cancel() {
      hand.cancel();
      hand.open.selection = null;
    },
  };
}

/** Puts a thing in at its usual size about the hand, as when it was dragged onto the wall. */
export function putInAt(hand: Hand, tool: PutInTool, event: HandEvent): void {
  const { wall } = hand;
  if (wall) finish(hand, wall, tool, usualBox(hand, wall, tool, event));
}

/** Puts a thing in at its usual size in the middle of what is seen, as Enter does. */
export function putInMiddle(hand: Hand, tool: PutInTool): void {
  const { wall } = hand;
  if (!wall) return;
  const { x, y, width, height } = boxOfVertices(wall.outline);
  finish(hand, wall, tool, usualBoxAt(hand, tool, { x: x + width / 2, y: y + height / 2 }));
}

/** Shows what a click would put in. */
export function showGhost(hand: Hand, tool: PutInTool, event: HandEvent): void {
  const { wall } = hand;
  if (!wall) return;
  const box = usualBox(hand, wall, tool, event);
  hand.ghost =
    tool.of === 'opening'
      ? setInto(newOpening(wall, tool.what), box)
      : tool.of === 'fitting'
        ? setInto(newFitting(wall, tool.what, {}, hand.ownKinds()), box)
        : tool.of === 'hung'
          ? hungInto(newHung(hand.open.job, wall, tool.what, box, hand.ownHungKinds()), box)
          : null;
}

function linesFor(hand: Hand, wall: Wall, { of }: PutInTool): SnapLine[] {
  return snapLines(wall, of === 'hung' ? { kind: of, id: '' } : null, hand.panels);
}

/** Where a click puts a thing: about the hand, in line with what is near; doors and arches stand on the floor. */
function usualBox(hand: Hand, wall: Wall, tool: PutInTool, event: HandEvent): MmBox {
  const box = usualBoxAt(hand, tool, event.at);
  const reach = hand.snapReachOf(event);
  const bySquares = tool.of === 'hung' && isPiece(tool.what, hand.ownHungKinds());
  const { by, guides } =
    (bySquares && snapToSquares(wall, box, reach)) ||
    snap(partsOfBox(box), linesFor(hand, wall, tool), reach);
  hand.guide(guides);
  return { ...box, x: box.x + by.x, y: box.y + by.y };
}

function usualBoxAt(hand: Hand, tool: PutInTool, middle: MmPoint): MmBox {
  const { width, height } = usualSize(hand, tool);
  const { x, y } = toWholeMm({ x: middle.x - width / 2, y: middle.y - height / 2 });
  const onFloor = tool.of === 'opening' && defaultOpening(tool.what).y === 0;
  return { x, y: onFloor ? 0 : y, width, height };
}

function usualSize(hand: Hand, tool: PutInTool): { width: number; height: number } {
  const { job } = hand.open;
  if (tool.of === 'opening') return defaultOpening(tool.what);
  if (tool.of === 'fitting') return defaultFitting(tool.what, hand.ownKinds());
  if (tool.of === 'hung') return hungFigures(tool.what, hand.ownHungKinds()) ?? { width: 200, height: 200 };
  const sheet = tool.what === 'whole-sheets' && sheetPitch(job, defaultLayout(job));
  if (!sheet) return { width: 2000, height: 1000 };
  const { width, height, gap } = sheet;
  return {
    width: lengthOfSheets(nearestSheets(2000, width, gap), width, gap),
    height: lengthOfSheets(nearestSheets(1000, height, gap), height, gap),
  };
}

function finish(hand: Hand, wall: Wall, tool: PutInTool, box: MmBox): void {
  const { change, ref } = thingFor(hand, wall, tool, box);
  hand.takeUp(choose);
  hand.letGo();
  if (hand.make(change)) hand.open.selection = ref;
}

function thingFor(
  hand: Hand,
  wall: Wall,
  tool: PutInTool,
  box: MmBox,
): { change: NamedChange; ref: ObjectRef } {
  if (tool.of === 'opening') {
    const opening = setInto(newOpening(wall, tool.what), box);
    return { change: putInOpening(wall, opening), ref: { kind: 'opening', id: opening.id } };
  }
  if (tool.of === 'fitting') {
    const fitting = setInto(newFitting(wall, tool.what, {}, hand.ownKinds()), box);
    return { change: putInFitting(wall, fitting, hand.ownKinds()), ref: { kind: 'fitting', id: fitting.id } };
  }
  if (tool.of === 'hung') {
    const own = hand.ownHungKinds();
    const item = hungInto(newHung(hand.open.job, wall, tool.what, box, own), box);
    return {
      change: putInHung(wall, item, own),
      ref: { kind: 'hung', id: item.id },
    };
  }
  const zone = newZone(hand.open.job, wall, box, tool.what === 'whole-sheets' ? 'steel-panel' : undefined);
  return { change: putInZone(wall, zone), ref: { kind: 'zone', id: zone.id } };
}

/** As many whole sheets as the hand has pulled past the middle of; without a stock sheet a plain box. */
function sheetsBetween({ open }: Hand, from: MmPoint, { at, straight }: HandEvent): MmBox {
  const sheet = sheetPitch(open.job, defaultLayout(open.job));
  if (!sheet) return boxBetween(from, at, straight);
  const { width, height, gap } = sheet;
  const size = {
    width: lengthOfSheets(nearestSheets(Math.abs(at.x - from.x), width, gap), width, gap),
    height: lengthOfSheets(nearestSheets(Math.abs(at.y - from.y), height, gap), height, gap),
  };
  return {
    x: at.x < from.x ? from.x - size.width : from.x,
    y: at.y < from.y ? from.y - size.height : from.y,
    ...size,
  };
}

function boxBetween(a: MmPoint, b: MmPoint, square: boolean): MmBox {
  let width = Math.max(5, Math.abs(b.x - a.x));
  let height = Math.max(5, Math.abs(b.y - a.y));
  if (square) width = height = Math.max(width, height);
  return { x: b.x < a.x ? a.x - width : a.x, y: b.y < a.y ? a.y - height : a.y, width, height };
}
