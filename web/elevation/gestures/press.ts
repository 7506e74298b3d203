import type { Wall } from '../../../core/job/schema';
import { findObject, type ObjectRef } from '../../../core/job/shape';
import { cornerHandles, handleAt, shapeHandles } from '../handles';
import { hitsAt, nearestWithin, nextHit, outlineCornerAt, type Hit } from '../hit';
import type { Hand } from '../hand.svelte';
import { chooseObject } from './choose';
import { dragObject } from './drag-object';
import { hasTravelled, type Gesture, type HandEvent } from './gesture';
import { moveCorner } from './move-corner';
import { pan } from './pan';
import { putIn } from './put-in';
import { resizeObject } from './resize-object';
import { setCornerDown } from './corners';
import { canChange, chosenObject } from './what-can-change';

/** What a press on the drawing begins, by the tool in the hand and by what lies under it. */
export function press(hand: Hand, start: HandEvent): Gesture | null {
  const { tool, wall } = hand;
  if (tool.kind === 'put-in') return putIn(hand, start, tool);
  if (tool.kind === 'corners') return tapOrPan(hand, start, (event) => setCornerDown(hand, tool.of, event));
  if (!wall) return pan(hand, start);
  const handle = pressHandle(hand, start);
  if (handle) return handle;
  // A small object in a corner of the wall lies under that corner's reach: once chosen, it comes first.
  return isWithinChosen(hand, start)
    ? pressWall(hand, start)
    : (pressCorner(hand, start) ?? pressWall(hand, start));
}

/** Handles and corners of the object that is chosen. */
function pressHandle(hand: Hand, start: HandEvent): Gesture | null {
  const { wall, open } = hand;
  const ref = chosenObject(open.selection);
  const object = wall && ref && canChange(hand.open.station, ref) && findObject(wall, ref);
  if (!ref || !object) return null;
  const handle = handleAt(object, hand.view.frame, start, start.touch);
  if (handle) return resizeObject(hand, start, ref, handle);
  const reach = (start.touch ? 20 : 10) / hand.view.frame.scale;
  const { corners, middles } = shapeHandles(object);
  const corner = nearestWithin(corners, start.at, reach);
  if (corner !== null) return moveCorner(hand, start, ref, corner);
  const middle = middles[nearestWithin(middles, start.at, reach) ?? -1];
  return middle ? moveCorner(hand, start, ref, middle.index, { fresh: true }) : null;
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
  const { middles } = cornerHandles(wall.outline);
  const middle = middles[nearestWithin(middles, start.at, reach) ?? -1];
  return middle ? moveCorner(hand, start, null, middle.index, { fresh: true }) : null;
}

function pressWall(hand: Hand, start: HandEvent): Gesture {
  const { wall, open } = hand;
  const tolerance = (start.touch ? 12 : 4) / hand.view.frame.scale;
  const hits = wall ? hitsAt(wall, start.at, tolerance, open.station, hand.panels) : [];
  const grip = objectUnderHand(hand, start, hits);
  const drag = () => (grip && dragObject(hand, start, grip, { copy: start.alt })) ?? pan(hand, start);
  return tapOrDrag(start, drag, () => chooseObject(hand, nextHit(hits, open.selection)));
}

/** What a drag takes along: what is chosen, else, with a mouse, what lies uppermost. */
function objectUnderHand(hand: Hand, start: HandEvent, hits: readonly Hit[]): ObjectRef | null {
  const { selection } = hand.open;
  const objects = hits.flatMap((hit) => chosenObject(hit) ?? []);
  const chosen = objects.find(({ kind, id }) => kind === selection?.kind && id === selection.id);
  if (chosen && canChange(hand.open.station, chosen)) return chosen;
  const uppermost = objects[0];
  return !start.touch &&
    uppermost &&
    canChange(hand.open.station, uppermost) &&
    hits[0]?.kind === uppermost.kind
    ? uppermost
    : null;
}

function tapOrPan(hand: Hand, start: HandEvent, tap: (event: HandEvent) => void): Gesture {
  return tapOrDrag(start, () => pan(hand, start), tap);
}

/** A press that is a tap until the hand has travelled. */
function tapOrDrag(start: HandEvent, begin: () => Gesture | null, tap: (event: HandEvent) => void): Gesture {
  let drag: Gesture | null = null;
  let begun = false;
  return {
    move(event) {
      if (!begun && hasTravelled(start, event)) {
        begun = true;
        drag = begin();
      }
      drag?.move(event);
    },
    end(event) {
      if (begun) drag?.end(event);
      else tap(event);
    },
    cancel() {
      drag?.cancel();
    },
  };
}
