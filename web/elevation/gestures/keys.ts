import { objectsOf, pointOf, type ObjectRef } from '../../../core/job/shape';
import { copyBeside, takeOutChosen, type Done } from '../../arrange/arrange';
import { moveHole, takeOutHole } from '../../job/changes/holes';
import { shiftMarking, takeOutMarking } from '../../job/changes/markings';
import { moveSeveral } from '../../job/changes/several';
import { setCorner, takeOutCorner } from '../../job/changes/walls';
import type { StationName } from '../../job/open-job.svelte';
import { finestStep } from '../../look/figures';
import { measures } from '../../measure/measures.svelte';
import { chosenFixingPoint } from '../../job/chosen-fixing-point';
import { chosenPeople } from '../../job/chosen-people';
import type { Hand } from '../hand.svelte';
import { choose } from '../tool';
import { nudgeStart } from '../by-hand/move-start';
import { chooseSign, chosenChoice, letGoOfChosen } from '../by-hand/chosen-choice';
import { nudgeChoice } from '../by-hand/move-choice';
import { setByHandAtChosen } from '../by-hand/set-by-hand';
import { chooseObject } from './choose';
import { chooseFixingPoint, nudgeFixingPoint, takeOutChosenPoint } from './fixing-points';
import { closeShape, setTypedCorner, takeBackCorner, typeLength } from './corners';
import { markInMiddle } from './mark-fixing-point';
import { chosenHole, putHoleInMiddle } from './holes';
import { chosenMarking, putMarkingOnZone } from './markings';
import { choosePeople, nudgePeople, putPeopleInMiddle, takeOutChosenPeople } from './people-below';
import { putInMiddle } from './put-in';
import { changeable } from './what-can-change';

const directions: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * A key pressed on the drawing. Arrows nudge by 1 mm (or a sixteenth of an inch), with Shift by 10; a held arrow is one change to undo.
 *
 * @param escapeGesture ends a running gesture; false if there was none
 */
export function pressKey(hand: Hand, event: KeyboardEvent, escapeGesture: () => boolean): void {
  if (event.target !== event.currentTarget) return;
  if (event.key === 'Escape' ? escape(hand, escapeGesture) : keyDoes(hand, event)) event.preventDefault();
}

function keyDoes(hand: Hand, event: KeyboardEvent): boolean {
  const command = event.ctrlKey || event.metaKey;
  if (!hand.open.settled || event.altKey) return false;
  if (command) return event.key.toLowerCase() === 'd' && copyChosen(hand);
  if (event.key === 'Tab') return walk(hand, event.shiftKey ? -1 : 1);
  if (hand.corners) return drawByKey(hand, event.key);
  if (hand.tool.kind === 'by-hand' && event.key === 'Enter') return setByHandAtChosen(hand, hand.tool.what);
  const direction = directions[event.key];
  const step = (event.shiftKey ? 10 : 1) * finestStep();
  if (direction && hand.tool.kind === 'start') {
    nudgeStart(hand, hand.tool.zone, direction, step, event.repeat);
    return true;
  }
  if (direction) return nudge(hand, direction, step, event.repeat);
  if (event.key === 'Delete' || event.key === 'Backspace') return takeOut(hand);
  if (event.key === 'Enter' && hand.tool.kind === 'put-in') {
    putInMiddle(hand, hand.tool);
    return true;
  }
  if (event.key === 'Enter' && hand.tool.kind === 'people') {
    putPeopleInMiddle(hand, hand.tool.what);
    return true;
  }
  if (event.key === 'Enter' && hand.tool.kind === 'mark') return markInMiddle(hand, hand.tool.what);
  if (event.key === 'Enter' && hand.tool.kind === 'hole') {
    putHoleInMiddle(hand, hand.tool);
    return true;
  }
  if (event.key === 'Enter' && hand.tool.kind === 'marking') {
    putMarkingOnZone(hand, hand.tool.what);
    return true;
  }
  return viewKey(hand, event.key);
}

/** First the gesture, then the tool, then what is chosen. */
function escape(hand: Hand, escapeGesture: () => boolean): boolean {
  if (escapeGesture()) return true;
  const hadMeasures = measures.clear();
  if (hand.tool.kind !== 'choose') {
    hand.takeUp(choose);
    return true;
  }
  if (chosenMarking(hand)) {
    hand.open.marking = null;
    hand.said = 'Marking let go';
    return true;
  }
  if (chosenHole(hand)) {
    hand.open.hole = null;
    hand.said = 'Hole let go';
    return true;
  }
  if (chosenChoice(hand.open)) {
    hand.open.handChoice = null;
    hand.said = 'Choice by hand no longer chosen';
    return true;
  }
  if (chosenFixingPoint(hand.open)) {
    hand.open.fixingPoint = null;
    hand.said = 'Fixing point let go';
    return true;
  }
  if (chosenPeople(hand.open)) {
    hand.open.people = null;
    hand.said = 'Stretch let go';
    return true;
  }
  if (hadMeasures) return true;
  const { chosen, selection } = hand.open;
  if (!selection && !chosen.adding) return false;
  chosen.adding = false;
  chooseObject(hand, null);
  return true;
}

function nudge(hand: Hand, [x, y]: readonly [number, number], step: number, repeated: boolean): boolean {
  const { wall, open } = hand;
  const { selection } = open;
  if (nudgeChoice(hand, [x, y], step, repeated)) return true;
  if (nudgeFixingPoint(hand, x * step, y * step, repeated)) return true;
  if (nudgePeople(hand, x * step, y * step, repeated)) return true;
  const marking = chosenMarking(hand);
  if (wall && marking) {
    hand.make(shiftMarking(wall.id, marking.ref, x * step, y * step), { merge: repeated });
    return true;
  }
  const hole = chosenHole(hand);
  if (wall && hole) {
    hand.make(moveHole(wall.id, hole.ref, x * step, y * step), { merge: repeated });
    return true;
  }
  if (!wall || !selection || selection.kind === 'panel') return false;
  if (selection.kind === 'vertex') {
    const vertex = wall.outline[Number(selection.id)];
    if (!vertex) return false;
    const at = pointOf(vertex);
    const to = { x: at.x + x * step, y: at.y + y * step };
    hand.make(setCorner(wall.id, null, Number(selection.id), to), { merge: repeated });
    return true;
  }
  const { refs, held } = changeable(open);
  if (held) open.chosen.say(`${held}.`);
  if (refs.length > 0) hand.make(moveSeveral(wall, refs, x * step, y * step), { merge: repeated });
  return true;
}

function takeOut(hand: Hand): boolean {
  const { wall, open } = hand;
  const { selection } = open;
  if (letGoOfChosen(hand) || takeOutChosenPoint(hand) || takeOutChosenPeople(hand)) return true;
  const marking = chosenMarking(hand);
  if (wall && marking) {
    if (hand.make(takeOutMarking(wall.id, marking.ref))) open.marking = null;
    return true;
  }
  const hole = chosenHole(hand);
  if (wall && hole) {
    if (hand.make(takeOutHole(wall.id, hole.ref))) open.hole = null;
    return true;
  }
  if (!wall || !selection || selection.kind === 'panel') return false;
  if (selection.kind !== 'vertex') return tellDone(hand, takeOutChosen(open));
  if (hand.make(takeOutCorner(wall.id, null, Number(selection.id)))) open.selection = null;
  return true;
}

function copyChosen(hand: Hand): boolean {
  return hand.open.chosen.refs.length > 0 && tellDone(hand, copyBeside(hand.open));
}

/** True: the key is used up, if only by saying why it does nothing. */
function tellDone({ open }: Hand, { words }: Done): boolean {
  open.chosen.say(words);
  return true;
}

/** To the next object as they are listed, then to fixing points or people below, and to what was chosen by hand; past the last one the key leaves the drawing as usual. */
function walk(hand: Hand, by: 1 | -1): boolean {
  const { wall, open } = hand;
  if (!wall) return false;
  const { selection } = open;
  const objects = walkedKinds(open.station).flatMap((kind) =>
    objectsOf(wall, kind).map(({ id }): ObjectRef => ({ kind, id })),
  );
  const chosen = chosenChoice(open);
  const points = open.station === 'survey' ? (wall.fixingPoints ?? []) : [];
  const below = open.station === 'hanging' ? (wall.peopleBelow ?? []) : [];
  const all: readonly { readonly isChosen: boolean; readonly choose: () => void }[] = [
    ...objects.map((ref) => ({
      isChosen: !chosen && ref.kind === selection?.kind && ref.id === selection.id,
      choose: () => chooseObject(hand, ref),
    })),
    ...points.map((point) => ({
      isChosen: point === chosenFixingPoint(open),
      choose: () => chooseFixingPoint(hand, point),
    })),
    ...below.map((one) => ({
      isChosen: one === chosenPeople(open),
      choose: () => choosePeople(hand, one),
    })),
    ...hand.signs.map(({ zone, wish: { id } }) => ({
      isChosen: zone === chosen?.zone.id && id === chosen.choice.id,
      choose: () => chooseSign(hand, { zone, id }),
    })),
  ];
  const at = all.findIndex(({ isChosen }) => isChosen);
  const next = at < 0 ? (by > 0 ? all[0] : undefined) : all[at + by];
  if (!next) return false;
  open.hole = open.marking = open.handChoice = null;
  next.choose();
  return true;
}

function walkedKinds(station: StationName): readonly ObjectRef['kind'][] {
  if (station === 'survey') return ['opening', 'fitting'];
  return station === 'hanging' ? ['hung', 'zone'] : ['opening', 'fitting', 'zone'];
}

/** While corners are set: figures are the length of the next edge. */
function drawByKey(hand: Hand, key: string): boolean {
  const { corners, tool } = hand;
  if (!corners || tool.kind !== 'corners') return false;
  if (/^[0-9.,]$/.test(key)) {
    typeLength(hand, corners.typed + key);
  } else if (key === 'Backspace' && corners.typed) {
    typeLength(hand, corners.typed.slice(0, -1));
  } else if (key === 'Backspace') takeBackCorner(hand);
  else if (key === 'Enter') {
    if (corners.typed) setTypedCorner(hand);
    else closeShape(hand, tool.of);
  } else return false;
  return true;
}

function viewKey(hand: Hand, key: string): boolean {
  if (key === '+' || key === '=') hand.view.zoom(1.25);
  else if (key === '-') hand.view.zoom(0.8);
  else if (key === '0') hand.fit();
  else return false;
  return true;
}
