import { extentOfSeveral } from '../../../core/job/extent';
import { pointOf, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from '../../job/changes/named-change';
import { copySeveral, moveSeveral, takeOutSeveral } from '../../job/changes/several';
import { setCorner, takeOutCorner } from '../../job/changes/walls';
import type { Hand } from '../hand.svelte';
import { choose } from '../tool';
import { everything, sameKind, sameRow } from '../../arrange/choose-alike';
import { chooseObject, chooseSeveral } from './choose';
import { closeShape, setTypedCorner, takeBackCorner, typeLength } from './corners';
import { putInMiddle } from './put-in';
import { changeable, copyable } from './what-can-change';

const directions: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * A key pressed on the drawing. Arrows nudge by 1 mm, with Shift by 10; a held arrow is one change to undo.
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
  if (command) return commandKey(hand, event.key.toLowerCase());
  if (event.key === 'Tab') return walk(hand, event.shiftKey ? -1 : 1);
  if (hand.corners) return drawByKey(hand, event.key);
  const direction = directions[event.key];
  if (direction) return nudge(hand, direction, event.shiftKey ? 10 : 1, event.repeat);
  if (event.key === 'Delete' || event.key === 'Backspace') return takeOutChosen(hand);
  if (event.key === 'Enter' && hand.tool.kind === 'put-in') {
    putInMiddle(hand, hand.tool);
    return true;
  }
  return chooseKey(hand, event.key) || viewKey(hand, event.key);
}

/** K chooses all of the kind, R all of the row, of what is chosen. */
function chooseKey(hand: Hand, key: string): boolean {
  const refs = key === 'k' ? sameKind(hand.open) : key === 'r' ? sameRow(hand.open) : [];
  if (refs.length === 0) return false;
  chooseSeveral(hand, refs);
  return true;
}

function commandKey(hand: Hand, key: string): boolean {
  if (key === 'a') chooseSeveral(hand, everything(hand.open));
  else return key === 'd' && copyBesideItself(hand);
  return true;
}

/** First the gesture, then the tool, then what is chosen. */
function escape(hand: Hand, escapeGesture: () => boolean): boolean {
  if (escapeGesture()) return true;
  if (hand.tool.kind !== 'choose') {
    hand.takeUp(choose);
    return true;
  }
  const { chosen, selection } = hand.open;
  if (!selection && !chosen.adding) return false;
  chosen.adding = false;
  chooseObject(hand, null);
  return true;
}

function nudge(hand: Hand, [x, y]: readonly [number, number], step: number, repeated: boolean): boolean {
  const { wall, open } = hand;
  const { selection } = open;
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
  return makeForChosen(hand, refs, held, moveSeveral(wall, refs, x * step, y * step), { merge: repeated });
}

function takeOutChosen(hand: Hand): boolean {
  const { wall, open } = hand;
  const { selection } = open;
  if (!wall || !selection || selection.kind === 'panel') return false;
  if (selection.kind === 'vertex') {
    if (hand.make(takeOutCorner(wall.id, null, Number(selection.id)))) open.selection = null;
    return true;
  }
  const { refs, held } = changeable(open);
  return makeForChosen(hand, refs, held, takeOutSeveral(wall, refs));
}

/** True: the key is used up, if only by saying why it does nothing. What stays as it is is said after what was done. */
function makeForChosen(
  hand: Hand,
  refs: readonly ObjectRef[],
  held: string,
  change: NamedChange,
  options?: { merge?: boolean },
): boolean {
  if (refs.length === 0) hand.said = held;
  else if (hand.make(change, options) && held) hand.said = `${change.name}. ${held}`;
  return true;
}

/** A copy to the right, as far away as everything that is chosen is wide and a hand's breadth more. */
function copyBesideItself(hand: Hand): boolean {
  const { wall, open } = hand;
  const { refs, held } = copyable(open);
  const extent = wall && extentOfSeveral(wall, refs);
  if (!wall || !extent) {
    if (held) hand.said = held;
    return held !== '';
  }
  const copy = copySeveral(open.job, wall, refs, Math.round(extent.width) + 100, 0);
  if (hand.make(copy)) open.chosen.set(copy.copies);
  return true;
}

/** To the next object as they are listed; past the last one the key leaves the drawing as usual. */
function walk(hand: Hand, by: 1 | -1): boolean {
  const { wall, open } = hand;
  if (!wall) return false;
  const refs: ObjectRef[] = [
    ...wall.openings.map(({ id }) => ({ kind: 'opening' as const, id })),
    ...wall.fittings.map(({ id }) => ({ kind: 'fitting' as const, id })),
    ...(open.station === 'survey' ? [] : wall.zones).map(({ id }) => ({ kind: 'zone' as const, id })),
  ];
  const at = refs.findIndex(({ kind, id }) => kind === open.selection?.kind && id === open.selection.id);
  const next = at < 0 ? (by > 0 ? refs[0] : undefined) : refs[at + by];
  if (!next) return false;
  chooseObject(hand, next);
  return true;
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
