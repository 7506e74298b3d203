import type { PeopleBelow } from '../../../core/job/hung-schema';
import { newPeople, usualWidthOfPeople } from '../../../core/job/people-below';
import type { Wall } from '../../../core/job/schema';
import { boxOfVertices } from '../../../core/job/shape';
import { chosenPeople } from '../../job/chosen-people';
import { nameOfPeople, putInPeople, setPeople, takeOutPeople } from '../../job/changes/people-below';
import type { Hand } from '../hand.svelte';
import { endAt, peopleAt, type PeopleEnd } from '../people-band';
import { partsOfBox, snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import { choose } from '../tool';
import { hasTravelled, type Gesture, type HandEvent } from './gesture';
import { pan } from './pan';
import { resizedBox } from './resized-box';
import { tapOrDrag } from './tap-or-drag';
import { travel } from './travel';

/** Handles at the ends of the chosen stretch. */
export function pressPeopleEnd(hand: Hand, start: HandEvent): Gesture | null {
  const one = chosenPeople(hand.open);
  const end = one && endAt(one, hand.view.frame, start, start.touch);
  return one && end ? resizePeople(hand, start, one, end) : null;
}

/**
 * A press on a stretch; a finger chooses one before it can move it.
 *
 * @param otherwise what a tap on the chosen one does, so that tapping again goes on to what lies there
 */
export function pressPeople(
  hand: Hand,
  start: HandEvent,
  otherwise: (event: HandEvent) => void,
): Gesture | null {
  const { wall, open, view } = hand;
  if (!wall?.peopleBelow || open.station !== 'hanging') return null;
  const one = peopleAt(wall.peopleBelow, view.frame, start, start.touch);
  if (!one) return null;
  const isHeld = chosenPeople(open)?.id === one.id;
  const drag = () => (start.touch && !isHeld ? pan(hand, start) : dragPeople(hand, start, wall, one));
  return tapOrDrag(start, drag, (event) => (isHeld ? otherwise(event) : choosePeople(hand, one)));
}

export function choosePeople(hand: Hand, one: PeopleBelow): void {
  const { open, wall } = hand;
  if (!wall) return;
  open.selection = null;
  open.people = { wall: wall.id, id: one.id };
  const name = nameOfPeople(one);
  hand.said = `${name.charAt(0).toUpperCase()}${name.slice(1)} chosen`;
}

/** Along the wall and up or down, in whole millimetres and in line with what is near. */
function dragPeople(hand: Hand, start: HandEvent, wall: Wall, one: PeopleBelow): Gesture {
  choosePeople(hand, one);
  const { x, y = 0, width } = one;
  const lines = linesFor(hand, wall, one);
  liftPeople(hand, wall, one);
  return gesture(hand, setPeople(wall, one, {}, 'Move').name, (event) => {
    const { dx, dy } = travel(start, event);
    const to = toWholeMm({ x: x + dx, y: y + dy });
    // Its upper edge is only drawn: what counts is where it begins.
    const parts = partsOfBox({ ...to, width, height: 0 }).filter(
      ({ axis, words }) => axis === 'x' || words === 'lower edge',
    );
    const { by, guides } = snap(parts, lines, hand.snapReachOf(event));
    hand.guide(guides);
    return setPeople(wall, one, { x: to.x + by.x, y: to.y + by.y });
  });
}

function resizePeople(hand: Hand, start: HandEvent, one: PeopleBelow, end: PeopleEnd): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  const box = { x: one.x, y: one.y ?? 0, width: one.width, height: 0 };
  const lines = linesFor(hand, wall, one);
  const handle = { x: end, y: 0 } as const;
  liftPeople(hand, wall, one);
  return gesture(hand, setPeople(wall, one, {}).name, (event) => {
    const dx = toWholeMm({ x: event.at.x - start.at.x, y: 0 }).x;
    const moving = end < 0 ? 'left edge' : 'right edge';
    const parts = partsOfBox(resizedBox(box, handle, dx, 0)).filter(({ words }) => words === moving);
    const { by, guides } = snap(parts, lines, hand.snapReachOf(event));
    hand.guide(guides);
    const { x, width } = resizedBox(box, handle, dx + by.x, 0);
    return setPeople(wall, one, { x, width });
  });
}

/** A click puts one in at its usual width, a drag along the wall from end to end; both from the floor up. */
export function putPeople(hand: Hand, start: HandEvent, kind: PeopleBelow['kind']): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  const lines = linesFor(hand, wall, null);
  const endOf = (event: HandEvent) => {
    const { x } = toWholeMm({ x: event.at.x, y: 0 });
    const { by, guides } = snap(
      [{ axis: 'x', at: x, words: 'end', kind: 'edge' }],
      lines,
      hand.snapReachOf(event),
    );
    hand.guide(guides);
    return x + by.x;
  };
  const from = endOf(start);
  let drawn: { x: number; width: number } | null = null;
  return {
    move(event) {
      if (!drawn && !hasTravelled(start, event)) return;
      const to = endOf(event);
      drawn = { x: Math.min(from, to), width: Math.max(5, Math.abs(to - from)) };
      hand.open.preview(putInPeople(wall, newPeople(wall, kind, drawn)).change);
    },
    end(event) {
      hand.cancel();
      const width = usualWidthOfPeople[kind];
      finish(hand, wall, newPeople(wall, kind, drawn ?? { x: Math.round(event.at.x - width / 2), width }));
    },
    cancel: () => hand.cancel(),
  };
}

/** In the middle of the wall, as Enter does. */
export function putPeopleInMiddle(hand: Hand, kind: PeopleBelow['kind']): void {
  const { wall } = hand;
  if (!wall) return;
  const { x, width: whole } = boxOfVertices(wall.outline);
  const width = Math.min(whole, usualWidthOfPeople[kind]);
  finish(hand, wall, newPeople(wall, kind, { x: Math.round(x + (whole - width) / 2), width }));
}

/** @returns false if none is chosen */
export function nudgePeople(hand: Hand, dx: number, dy: number, merge: boolean): boolean {
  const { wall, open } = hand;
  const one = chosenPeople(open);
  if (!wall || !one) return false;
  hand.make(setPeople(wall, one, { x: one.x + dx, y: (one.y ?? 0) + dy }, 'Move'), { merge });
  return true;
}

/** @returns false if none is chosen */
export function takeOutChosenPeople(hand: Hand): boolean {
  const { wall, open } = hand;
  const one = chosenPeople(open);
  if (!wall || !one) return false;
  if (hand.make(takeOutPeople(wall, one))) open.people = null;
  return true;
}

function finish(hand: Hand, wall: Wall, one: PeopleBelow): void {
  hand.takeUp(choose);
  hand.letGo();
  if (!hand.make(putInPeople(wall, one))) return;
  choosePeople(hand, one);
  hand.open.showLeaf('hanging', 'People below');
}

function liftPeople(hand: Hand, wall: Wall, one: PeopleBelow): void {
  const peopleBelow = wall.peopleBelow?.filter((other) => other !== one);
  hand.lifted = { ref: null, rest: { ...wall, peopleBelow } };
}

function gesture(
  hand: Hand,
  name: string,
  changeFor: (event: HandEvent) => ReturnType<typeof setPeople>,
): Gesture {
  return {
    move: (event) => hand.open.preview(changeFor(event).change),
    end: () => hand.commit(name),
    cancel: () => hand.cancel(),
  };
}

/** Everything on the wall, what hangs there and the ends of the other stretches. */
function linesFor(hand: Hand, wall: Wall, moving: PeopleBelow | null): SnapLine[] {
  const others = (wall.peopleBelow ?? []).filter((one) => one !== moving);
  return [
    ...snapLines(wall, { kind: 'hung', id: '' }, hand.panels),
    ...others.flatMap((one): SnapLine[] => [
      { axis: 'x', at: one.x, words: `the left end of ${nameOfPeople(one)}`, kind: 'edge' },
      { axis: 'x', at: one.x + one.width, words: `the right end of ${nameOfPeople(one)}`, kind: 'edge' },
    ]),
  ];
}
