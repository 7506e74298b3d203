import type { Marking } from '../../../core/job/marking-schema';
import { boxOfMarking, proportionOf, type MarkingRef } from '../../../core/job/markings';
import { newMarking } from '../../../core/job/new-marking';
import type { Opening, Wall, Zone } from '../../../core/job/schema';
import type { MmBox, MmPoint } from '../../../core/job/shape';
import { nameOfMarking, putInMarking, shiftMarking, sizeMarking } from '../../job/changes/markings';
import { handleAt, type BoxHandle } from '../handles';
import type { Hand } from '../hand.svelte';
import { partsOfBox, partsOfPoint, snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import { choose, type DrawnMarking } from '../tool';
import { hasTravelled, type Gesture, type HandEvent } from './gesture';
import { boxBetween, zoneUnder } from './holes';
import { resizedBox } from './resized-box';

export interface ChosenMarking {
  readonly ref: MarkingRef;
  readonly marking: Marking;
  readonly zone: Zone;
}

/** The chosen marking and its zone, while they are there. */
export function chosenMarking({ open, wall }: Pick<Hand, 'open' | 'wall'>): ChosenMarking | null {
  const { marking: ref, selection, station } = open;
  if (!ref || station !== 'zones' || selection?.kind !== 'zone' || selection.id !== ref.zone) return null;
  const zone = wall?.zones.find(({ id }) => id === ref.zone);
  const marking = zone?.markings?.find(({ id }) => id === ref.marking);
  return zone && marking ? { ref, marking, zone } : null;
}

/** A marking as an object on the wall, so that it has the same handles as one. */
export function markingAsObject({ zone, marking }: Pick<ChosenMarking, 'zone' | 'marking'>): Opening {
  return { id: '', kind: 'free', clearance: 0, ...boxOfMarking(zone, marking) };
}

/** The marking of the chosen zone that a point lies on: the last listed lies uppermost. */
export function markingAt({ wall, open }: Hand, { x, y }: MmPoint): MarkingRef | null {
  const { selection, station } = open;
  if (station !== 'zones' || selection?.kind !== 'zone' || open.chosen.isSeveral) return null;
  const zone = wall?.zones.find(({ id }) => id === selection.id);
  const found = zone?.markings?.findLast((marking) => {
    const box = boxOfMarking(zone, marking);
    return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
  });
  return zone && found ? { zone: zone.id, marking: found.id } : null;
}

export function chooseMarking(hand: Hand, ref: MarkingRef): void {
  hand.open.selection = { kind: 'zone', id: ref.zone };
  hand.open.hole = null;
  hand.open.marking = ref;
  hand.said = `${nameOfMarking(ref)} chosen`;
}

/** Handles of the chosen marking. */
export function pressChosenMarking(hand: Hand, start: HandEvent): Gesture | null {
  const found = chosenMarking(hand);
  if (!found) return null;
  const handle = handleAt(markingAsObject(found), hand.view.frame, start, start.touch);
  return handle && resizeMarking(hand, start, found, handle);
}

export function dragMarking(hand: Hand, start: HandEvent, ref: MarkingRef): Gesture | null {
  chooseMarking(hand, ref);
  const found = chosenMarking(hand);
  const { wall } = hand;
  if (!wall || !found) return null;
  const box = boxOfMarking(found.zone, found.marking);
  const lines = linesWithout(hand, wall, found);
  return {
    move(event) {
      const to = toWholeMm({ x: box.x + event.at.x - start.at.x, y: box.y + event.at.y - start.at.y });
      const { by, guides } = snap(partsOfBox({ ...box, ...to }), lines, hand.snapReachOf(event));
      hand.guide(guides);
      hand.open.preview(shiftMarking(wall.id, ref, to.x - box.x + by.x, to.y - box.y + by.y).change);
    },
    end: () => hand.commit(shiftMarking(wall.id, ref, 0, 0).name),
    cancel: () => hand.cancel(),
  };
}

function resizeMarking(
  hand: Hand,
  start: HandEvent,
  found: ChosenMarking,
  handle: BoxHandle,
): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  const { ref, marking } = found;
  const box = boxOfMarking(found.zone, marking);
  // A side that follows from another one cannot be held to a line by itself.
  const lines = proportionOf(hand.open.job, marking) === null ? linesWithout(hand, wall, found) : [];
  const change = (to: MmBox) => sizeMarking(wall.id, ref, { width: to.width, height: to.height }, handle);
  return {
    move(event) {
      const dx = Math.round(event.at.x - start.at.x);
      const dy = Math.round(event.at.y - start.at.y);
      const moving = partsOfBox(resizedBox(box, handle, dx, dy)).filter(
        ({ kind, axis, at }) =>
          kind === 'edge' && !partsOfBox(box).some((part) => part.axis === axis && part.at === at),
      );
      const { by, guides } = snap(moving, lines, hand.snapReachOf(event));
      hand.guide(guides);
      hand.open.preview(change(resizedBox(box, handle, dx + by.x, dy + by.y)).change);
    },
    end: () => hand.commit(change(box).name),
    cancel: () => hand.cancel(),
  };
}

/** A click puts one over the whole zone, a drag from corner to corner gives it its size. */
export function putMarking(hand: Hand, start: HandEvent, kind: DrawnMarking): Gesture | null {
  const { wall } = hand;
  const zone = wall && zoneUnder(hand, wall, start.at);
  if (!wall || !zone) {
    hand.said = 'A marking is put on a zone: press inside one';
    return null;
  }
  const lines = [...snapLines(wall, null, hand.panels), ...linesOfMarkings(zone)];
  const corner = (event: HandEvent) => {
    const at = toWholeMm(event.at);
    const { by, guides } = snap(partsOfPoint(at), lines, hand.snapReachOf(event));
    hand.guide(guides);
    return { x: at.x + by.x, y: at.y + by.y };
  };
  const from = corner(start);
  let box: MmBox | undefined;
  return {
    move(event) {
      if (!box && !hasTravelled(start, event)) return;
      box = boxBetween(from, corner(event), event.straight);
      hand.open.preview(putInMarking(wall.id, zone.id, newMarking(zone, kind, box)).change);
    },
    end() {
      hand.cancel();
      finish(hand, wall, zone, kind, box);
    },
    cancel: () => hand.cancel(),
  };
}

/** Over the whole of the chosen zone, or the first, as Enter does. */
export function putMarkingOnZone(hand: Hand, kind: DrawnMarking): void {
  const { wall, open } = hand;
  const zone = wall?.zones.find(({ id }) => id === open.selection?.id) ?? wall?.zones[0];
  if (wall && zone) finish(hand, wall, zone, kind);
  else hand.said = 'A marking is put on a zone: draw one first';
}

function finish(hand: Hand, wall: Wall, zone: Zone, kind: DrawnMarking, box?: MmBox): void {
  const marking = newMarking(zone, kind, box);
  hand.takeUp(choose);
  hand.letGo();
  if (hand.make(putInMarking(wall.id, zone.id, marking))) {
    chooseMarking(hand, { zone: zone.id, marking: marking.id });
    hand.open.showLeaf('zones', 'Markings');
  }
}

/** What a marking can be brought in line with: everything on the wall, and the other markings of its zone. */
function linesWithout(hand: Hand, wall: Wall, { zone, marking }: ChosenMarking): SnapLine[] {
  return [...snapLines(wall, null, hand.panels), ...linesOfMarkings(zone, marking)];
}

function linesOfMarkings(zone: Zone, except?: Marking): SnapLine[] {
  return (zone.markings ?? [])
    .filter((one) => one !== except)
    .flatMap((one) =>
      partsOfBox(boxOfMarking(zone, one)).map(({ axis, at, words, kind }): SnapLine => ({
        axis,
        at,
        kind,
        words: `the ${words} of marking ${one.id}`,
      })),
    );
}
