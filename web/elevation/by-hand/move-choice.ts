import { mapPlaces, movedChoice, placesOfChoice } from '../../../core/job/move-by-hand';
import type { HandChoice, HandPlace, Wall } from '../../../core/job/schema';
import { placeOnWall } from '../../../core/survey/wall-places';
import { setHandChoice } from '../../job/changes/by-hand';
import type { Gesture, HandEvent } from '../gestures/gesture';
import { tapOrDrag } from '../gestures/tap-or-drag';
import type { Hand } from '../hand.svelte';
import { snap, type SnapPart } from '../snap';
import { anchorLines, type AnchorLine } from './anchor-lines';
import { chooseChoice, chosenChoice, chooseSign, type FoundChoice } from './chosen-choice';
import type { HandSign } from './hand-signs';
import { discRadius } from './sign-places';

/** A press on the sign of a choice by hand: a tap chooses it, a drag moves what it stands for. */
export function pressSign(hand: Hand, press: HandEvent): Gesture | null {
  const sign = signAt(hand.signs, press);
  if (!sign) return null;
  const ref = { zone: sign.zone, id: sign.wish.id };
  const drag = () => {
    chooseChoice(hand.open, ref);
    return dragChoice(hand, press);
  };
  return tapOrDrag(press, drag, () => chooseSign(hand, ref));
}

/** The nearest sign within reach of a hand; its words are part of it. */
export function signAt(
  signs: readonly HandSign[],
  { px, py, touch }: Pick<HandEvent, 'px' | 'py' | 'touch'>,
): HandSign | undefined {
  const reach = touch ? 22 : discRadius + 3;
  const around = touch ? 8 : 0;
  const far = ({ disc, plate }: HandSign): number => {
    const toDisc = Math.hypot(disc.x - px, disc.y - py);
    if (toDisc <= reach) return toDisc;
    if (!plate) return Infinity;
    const across = Math.max(plate.left - px, px - plate.right, 0);
    const down = Math.max(plate.top - py, py - plate.bottom, 0);
    return Math.max(across, down) <= around ? reach + Math.hypot(across, down) : Infinity;
  };
  const near = signs.map((sign) => ({ sign, far: far(sign) })).filter((one) => one.far < Infinity);
  return near.sort((a, b) => a.far - b.far)[0]?.sign;
}

/** Moves what is chosen by hand: a point to whole millimetres, its line and its edges drawn to edges of the wall. */
function dragChoice(hand: Hand, press: HandEvent): Gesture | null {
  const { wall, open } = hand;
  const found = chosenChoice(open);
  if (!wall || !found) return null;
  const { zone, choice } = found;
  hand.byHand.moving = { zone: zone.id, id: choice.id };
  const lines = anchorLines(wall, zone.id);
  const flat = flattened(wall, found);
  return {
    move(event) {
      const { dx, dy } = travelled(press, event);
      const moved = movedChoice(flat, dx, dy);
      const { by, guides } = snap(partsOf(moved), lines, hand.snapReachOf(event));
      hand.guide(guides);
      const drawn = movedChoice(moved, by.x, by.y);
      const kept = withEdges(drawn, flat, choice, guides.length > 0 ? lines : []);
      open.preview(setHandChoice(wall.id, zone.id, choice, kept).change);
    },
    end() {
      hand.byHand.moving = null;
      hand.commit(setHandChoice(wall.id, zone.id, choice, {}).name);
    },
    cancel() {
      hand.byHand.moving = null;
      hand.cancel();
    },
  };
}

/** An arrow key while a choice by hand is chosen; what stays with an edge stays with it. */
export function nudgeChoice(
  hand: Hand,
  [x, y]: readonly [number, number],
  step: number,
  held: boolean,
): boolean {
  const found = chosenChoice(hand.open);
  if (!found || !hand.wall) return false;
  const { zone, choice } = found;
  const moved = movedChoice(choice, x * step, y * step);
  hand.make(setHandChoice(hand.wall.id, zone.id, choice, moved), { merge: held });
  return true;
}

/** Every place as a figure from the datum; one that is lost stays as it is. */
function flattened(wall: Wall, { zone, choice }: FoundChoice): HandChoice {
  return mapPlaces(choice, ({ axis, place }) => {
    const at = placeOnWall(wall, zone.id, place, axis);
    return typeof at === 'number' ? at / 100 : place;
  });
}

/** What was not moved stays with its edge, and what has come to lie on one stays with that. */
function withEdges(
  moved: HandChoice,
  flat: HandChoice,
  before: HandChoice,
  lines: readonly AnchorLine[],
): HandChoice {
  const [was, own] = [placesOfChoice(flat), placesOfChoice(before)];
  let n = -1;
  return mapPlaces(moved, ({ axis, place }): HandPlace => {
    n++;
    if (place === was[n]!.place) return own[n]!.place;
    return (
      (isDrawn(moved, axis) && lines.find((line) => line.axis === axis && line.at === place)?.place) || place
    );
  });
}

/** What can be drawn to an edge: the line of a joint or split across it, and all sides of a band. */
function partsOf(choice: HandChoice): SnapPart[] {
  return placesOfChoice(choice).flatMap(({ axis, place }): SnapPart[] =>
    typeof place === 'number' && isDrawn(choice, axis)
      ? [{ axis, at: place, words: choice.kind === 'no-joints' ? 'edge' : 'joint', kind: 'edge' }]
      : [],
  );
}

function isDrawn({ kind, direction }: HandChoice, axis: 'x' | 'y'): boolean {
  if (kind === 'no-joints') return true;
  return (kind === 'joint-on-line' || kind === 'split') && axis === (direction === 'level' ? 'y' : 'x');
}

/** Whole millimetres; Shift keeps to the direction in which it went further. */
function travelled(from: HandEvent, to: HandEvent): { dx: number; dy: number } {
  const [dx, dy] = [Math.round(to.at.x - from.at.x), Math.round(to.at.y - from.at.y)];
  if (!to.straight) return { dx, dy };
  return Math.abs(dx) >= Math.abs(dy) ? { dx, dy: 0 } : { dx: 0, dy };
}
