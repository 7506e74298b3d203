import type { FixingPoint } from '../../../core/job/ground-schema';
import { fixingPointNames } from '../../../core/job/names';
import { setFixingPoint, takeOutFixingPoint } from '../../job/changes/ground';
import { chosenFixingPoint } from '../../job/chosen-fixing-point';
import type { Hand } from '../hand.svelte';
import { partsOfPoint, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';
import { pan } from './pan';
import { tapOrDrag } from './tap-or-drag';

/** A press on a fixing point; a finger chooses one before it can move it. */
export function pressFixingPoint(hand: Hand, start: HandEvent): Gesture | null {
  const point = fixingPointAt(hand, start);
  if (!point) return null;
  const isHeld = chosenFixingPoint(hand.open)?.id === point.id;
  const drag = () => (start.touch && !isHeld ? pan(hand, start) : dragFixingPoint(hand, start, point));
  return tapOrDrag(start, drag, () => chooseFixingPoint(hand, point));
}

/** The one painted last whose box or circle is under the hand; a small one reaches beyond itself. */
export function fixingPointAt({ open, wall, view }: Hand, { at, touch }: HandEvent): FixingPoint | undefined {
  if (open.station !== 'survey') return undefined;
  const { scale } = view.frame;
  const slack = (touch ? 12 : 4) / scale;
  const least = (touch ? 20 : 8) / scale;
  return wall?.fixingPoints?.findLast(({ kind, x, y, width, height = width }) => {
    if (kind === 'hole') return Math.hypot(at.x - x, at.y - y) <= Math.max(width / 2 + slack, least);
    const isNear = (value: number, from: number, size: number) =>
      Math.abs(value - from - size / 2) <= Math.max(size / 2 + slack, least);
    return isNear(at.x, x, width) && isNear(at.y, y, height);
  });
}

export function chooseFixingPoint(hand: Hand, { id, kind }: FixingPoint): void {
  const { open, wall } = hand;
  if (!wall) return;
  open.selection = null;
  open.fixingPoint = { wall: wall.id, id };
  hand.said = `${fixingPointNames[kind]} ${id} chosen`;
}

/** Moves it in whole millimetres, in line with what is near. */
function dragFixingPoint(hand: Hand, start: HandEvent, point: FixingPoint): Gesture | null {
  const { wall, open } = hand;
  if (!wall) return null;
  chooseFixingPoint(hand, point);
  const moved = (event: HandEvent) => {
    const to = toWholeMm({ x: point.x + event.at.x - start.at.x, y: point.y + event.at.y - start.at.y });
    const { by } = snap(partsOfPoint(to), snapLines(wall, null, hand.panels), hand.snapReachOf(event));
    return setFixingPoint(wall.id, point, { x: to.x + by.x, y: to.y + by.y });
  };
  return {
    move: (event) => open.preview(moved(event).change),
    end: (event) => hand.commit(moved(event).name),
    cancel: () => hand.cancel(),
  };
}

/** @returns false if none is chosen */
export function nudgeFixingPoint(hand: Hand, dx: number, dy: number, merge: boolean): boolean {
  const { wall, open } = hand;
  const point = chosenFixingPoint(open);
  if (!wall || !point) return false;
  hand.make(setFixingPoint(wall.id, point, { x: point.x + dx, y: point.y + dy }), { merge });
  return true;
}

/** @returns false if none is chosen */
export function takeOutChosenPoint(hand: Hand): boolean {
  const { wall, open } = hand;
  const point = chosenFixingPoint(open);
  if (!wall || !point) return false;
  if (hand.make(takeOutFixingPoint(wall.id, point))) open.fixingPoint = null;
  return true;
}
