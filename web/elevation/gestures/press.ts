import type { Wall } from '../../../core/job/schema';
import { isLocked, sameObject } from '../../../core/job/several';
import { findObject, type ObjectRef } from '../../../core/job/shape';
import { cornerHandles, handleAt, shapeHandles } from '../handles';
import { hitsAt, nearestWithin, nextHit, outlineCornerAt, type Hit } from '../hit';
import type { Hand } from '../hand.svelte';
import { bendEdgeByHand, edgeAt } from './bend-edge';
import { chooseObject, chooseSeveral } from './choose';
import { pressMagnet } from './drag-magnet';
import { dragPin, pinUnderHand } from './drag-pin';
import { dragObject } from './drag-object';
import { dragSeveral } from './drag-several';
import { frameChoice } from './frame-choice';
import { pressFixingPoint } from './fixing-points';
import type { Gesture, HandEvent } from './gesture';
import { goToNeighbour } from './go-to-neighbour';
import { markFixingPoint } from './mark-fixing-point';
import { chooseHole, dragHole, holeAt, pressChosenHole, putHole } from './holes';
import {
  chooseMarking,
  chosenMarking,
  dragMarking,
  markingAt,
  pressChosenMarking,
  putMarking,
} from './markings';
import { moveCorner } from './move-corner';
import { setMeasure } from './measure';
import { pan } from './pan';
import { pressPeople, pressPeopleEnd, putPeople } from './people-below';
import { pickEdge } from './pick-edge';
import { putIn } from './put-in';
import { resizeObject } from './resize-object';
import { pressByHand, setByHand } from '../by-hand/set-by-hand';
import { pressStart } from '../by-hand/move-start';
import { pressSign } from '../by-hand/move-choice';
import { setCornerDown } from './corners';
import { tapOrDrag } from './tap-or-drag';
import { canChange, changeable, chosenObject } from './what-can-change';

/** What a press on the drawing begins, by the tool in the hand and by what lies under it. */
export function press(hand: Hand, start: HandEvent): Gesture | null {
  const { tool, wall } = hand;
  if (tool.kind === 'put-in') return putIn(hand, start, tool);
  if (tool.kind === 'mark') return tapOrPan(hand, start, (event) => markFixingPoint(hand, tool.what, event));
  if (tool.kind === 'hole') return putHole(hand, start, tool);
  if (tool.kind === 'marking') return putMarking(hand, start, tool.what);
  if (tool.kind === 'people') return putPeople(hand, start, tool.what);
  if (tool.kind === 'bend') return pressEdge(hand, start);
  if (tool.kind === 'by-hand')
    return (
      pressByHand(hand, start, tool.what) ??
      tapOrPan(hand, start, (event) => setByHand(hand, tool.what, event))
    );
  if (tool.kind === 'corners') return tapOrPan(hand, start, (event) => setCornerDown(hand, tool.of, event));
  if (tool.kind === 'offset') return tapOrPan(hand, start, (event) => pickEdge(hand, event));
  if (tool.kind === 'measure') return tapOrPan(hand, start, (event) => setMeasure(hand, event));
  if (!wall) return pan(hand, start);
  const pin = pinUnderHand(hand, start);
  if (pin)
    return tapOrDrag(
      start,
      () => dragPin(hand, start, pin),
      () => hand.lookAtPin(pin.id),
    );
  const ofPanels = pressSign(hand, start) ?? pressStart(hand, start);
  if (ofPanels) return ofPanels;
  const handle = chosenMarking(hand)
    ? pressChosenMarking(hand, start)
    : (pressChosenHole(hand, start) ?? pressHandle(hand, start) ?? pressPeopleEnd(hand, start));
  if (handle) return handle;
  const magnet = pressMagnet(hand, start, (event) => tapAt(hand, event));
  if (magnet) return magnet;
  if (hand.room.neighbourAt(start.at)) return tapOrPan(hand, start, (event) => goToNeighbour(hand, event));
  // A small object in a corner of the wall lies under that corner's reach: once chosen, it comes first.
  return isWithinChosen(hand, start) || addsToChosen(hand, start)
    ? pressWall(hand, start)
    : (pressCorner(hand, start) ?? pressWall(hand, start));
}

/** Handles and corners of the object that is chosen. */
function pressHandle(hand: Hand, start: HandEvent): Gesture | null {
  const { wall, open } = hand;
  const ref = chosenObject(open.selection);
  const object = wall && ref && canChange(hand.open.station, ref) && findObject(wall, ref);
  if (!ref || !object || isLocked(object) || open.chosen.isSeveral) return null;
  const handle = handleAt(object, hand.view.frame, start, start.touch);
  if (handle) return resizeObject(hand, start, ref, handle);
  const reach = (start.touch ? 20 : 10) / hand.view.frame.scale;
  const { corners, middles, apexes } = shapeHandles(object);
  const corner = nearestWithin(corners, start.at, reach);
  if (corner !== null) return moveCorner(hand, start, ref, corner);
  const middle = middles[nearestWithin(middles, start.at, reach) ?? -1];
  if (middle) return moveCorner(hand, start, ref, middle.index, { fresh: true });
  const apex = apexes[nearestWithin(apexes, start.at, reach) ?? -1];
  return apex ? bendEdgeByHand(hand, start, { ref, index: apex.index }) : null;
}

/** With the tool in the hand any edge can be bent. */
function pressEdge(hand: Hand, start: HandEvent): Gesture {
  const edge = edgeAt(hand, start.at, (start.touch ? 24 : 12) / hand.view.frame.scale);
  if (!edge) return pan(hand, start);
  // What is bent is chosen, so that its corners are listed.
  hand.open.selection = edge.ref && { kind: edge.ref.kind, id: edge.ref.id };
  return bendEdgeByHand(hand, start, edge) ?? pan(hand, start);
}

function isWithinChosen({ wall, open }: Hand, { at }: HandEvent): boolean {
  const { selection } = open;
  return (
    !!wall &&
    hitsAt(wall, at, 0, open.station).some(({ kind, id }) => kind === selection?.kind && id === selection.id)
  );
}

/** Corners of the wall, where the survey is made. A finger chooses one before it can move it. */
function pressCorner(hand: Hand, start: HandEvent): Gesture | null {
  const { wall, open } = hand;
  if (!wall || open.station !== 'survey') return null;
  const reach = (start.touch ? 20 : 9) / hand.view.frame.scale;
  const index = outlineCornerAt(wall, start.at, reach);
  if (index === null) return pressEdgeMiddle(hand, start, wall, reach);
  const id = String(index);
  const chosen = open.selection?.kind === 'vertex' && open.selection.id === id;
  const drag = start.touch && !chosen ? () => pan(hand, start) : () => moveCorner(hand, start, null, index);
  return tapOrDrag(start, drag, () => chooseObject(hand, { kind: 'vertex', id }));
}

/** While one corner is chosen, another can be pulled out of the middle of an edge. */
function pressEdgeMiddle(hand: Hand, start: HandEvent, wall: Wall, reach: number): Gesture | null {
  if (hand.open.selection?.kind !== 'vertex') return null;
  const { middles, apexes } = cornerHandles(wall.outline);
  const middle = middles[nearestWithin(middles, start.at, reach) ?? -1];
  if (middle) return moveCorner(hand, start, null, middle.index, { fresh: true });
  const apex = apexes[nearestWithin(apexes, start.at, reach) ?? -1];
  return apex ? bendEdgeByHand(hand, start, { ref: null, index: apex.index }) : null;
}

function pressWall(hand: Hand, start: HandEvent): Gesture {
  const { wall, open } = hand;
  const tolerance = (start.touch ? 12 : 4) / hand.view.frame.scale;
  const hits = wall ? hitsAt(wall, start.at, tolerance, open.station, hand.panels) : [];
  const grip = objectUnderHand(hand, start, hits);
  // At Hanging nothing else can be moved, so that a stretch may be gripped before the door behind it.
  const people =
    hits[0]?.kind === 'hung' ? null : pressPeople(hand, start, (event) => tap(hand, event, hits));
  if (people && !addsToChosen(hand, start)) return people;
  // A zone is not where its hole is: there the hole is meant, unless something else lies in it.
  const hole = hits.some(({ kind }) => kind !== 'zone') ? null : holeAt(hand, start.at);
  const isOfChosen = hole !== null && open.selection?.kind === 'zone' && open.selection.id === hole.zone;
  if (hole && (isOfChosen || hits.length === 0)) {
    const dragIt = () => (start.touch && !isOfChosen ? pan(hand, start) : dragHole(hand, start, hole));
    return tapOrDrag(start, dragIt, () => chooseHole(hand, hole));
  }
  // A marking is on a zone: the zone is chosen first, then what is marked on it, then what lies under both.
  const marking = hits[0]?.kind === 'zone' && !addsToChosen(hand, start) ? markingAt(hand, start.at) : null;
  if (marking) {
    const isHeld = open.marking?.zone === marking.zone && open.marking.marking === marking.marking;
    const dragIt = () =>
      (isHeld ? dragMarking(hand, start, marking) : dragOf(hand, start, grip)) ?? pan(hand, start);
    return tapOrDrag(start, dragIt, () => (isHeld ? tap(hand, start, hits) : chooseMarking(hand, marking)));
  }
  // Anything else on the wall is meant before what lies in it.
  const point = hits.length === 0 && !addsToChosen(hand, start) ? pressFixingPoint(hand, start) : null;
  if (point) return point;
  const drag = () => dragOf(hand, start, grip) ?? pan(hand, start);
  return tapOrDrag(start, drag, () => tap(hand, start, hits));
}

/** What a tap on the wall does, whatever lies there. */
function tapAt(hand: Hand, at: HandEvent): void {
  const { wall, open } = hand;
  const tolerance = (at.touch ? 12 : 4) / hand.view.frame.scale;
  tap(hand, at, wall ? hitsAt(wall, at.at, tolerance, open.station, hand.panels) : []);
}

/** Shift, or the switch to choose several, adds to what is chosen. */
function addsToChosen({ open }: Hand, start: HandEvent): boolean {
  return start.straight || open.chosen.adding;
}

function tap(hand: Hand, start: HandEvent, hits: readonly Hit[]): void {
  const { chosen, selection } = hand.open;
  const object = hits.map((hit) => chosenObject(hit)).find((ref) => ref !== null);
  if (!addsToChosen(hand, start)) {
    hand.open.hole = hand.open.marking = hand.open.handChoice = null;
    chooseObject(hand, nextHit(hits, chosen.isSeveral ? null : selection));
  } else if (object) {
    chosen.toggle(object);
    chooseSeveral(hand, chosen.refs);
  }
}

/** A drag moves everything that is chosen if it begins on one of it, draws a frame if it adds, and else pans. */
function dragOf(hand: Hand, start: HandEvent, grip: ObjectRef | null): Gesture | null {
  const { chosen } = hand.open;
  const isChosen = grip !== null && chosen.has(grip);
  // A zone that is not chosen is paper to a frame: where zones fill the wall there is no other.
  const isPaper = !grip || (!isChosen && (chosen.adding || grip.kind === 'zone'));
  if (isPaper && addsToChosen(hand, start)) return frameChoice(hand, start);
  if (!grip) return null;
  if (isChosen && chosen.isSeveral) return dragSeveral(hand, start, grip, { copy: start.alt });
  if (!start.alt && sayLocked(hand, grip)) return null;
  return dragObject(hand, start, grip, { copy: start.alt });
}

function sayLocked(hand: Hand, ref: ObjectRef): boolean {
  const object = hand.find(ref);
  if (!object || !isLocked(object)) return false;
  chooseObject(hand, ref);
  hand.open.chosen.say(`${changeable(hand.open).held}.`);
  return true;
}

/** What a drag takes along: one of what is chosen, else, with a mouse, what lies uppermost. */
function objectUnderHand(hand: Hand, start: HandEvent, hits: readonly Hit[]): ObjectRef | null {
  const { chosen, station } = hand.open;
  const objects = hits.flatMap((hit) => chosenObject(hit) ?? []).filter((ref) => canChange(station, ref));
  const held =
    objects.find((ref) => sameObject(ref, chosen.refs[0] ?? null)) ?? objects.find((ref) => chosen.has(ref));
  if (held) return held;
  const uppermost = hits[0] && chosenObject(hits[0]);
  return !start.touch && uppermost && canChange(station, uppermost) ? uppermost : null;
}

function tapOrPan(hand: Hand, start: HandEvent, tap: (event: HandEvent) => void): Gesture {
  return tapOrDrag(start, () => pan(hand, start), tap);
}
