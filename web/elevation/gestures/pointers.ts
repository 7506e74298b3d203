import { toWall, type ScreenPoint } from '../frame';
import type { Hand } from '../hand.svelte';
import { aimByHand } from '../by-hand/set-by-hand';
import { aimCorner } from './corners';
import type { Gesture, HandEvent } from './gesture';
import { aimMeasure } from './measure';
import { pan } from './pan';
import { watchLongPress } from './long-press';
import { press } from './press';
import { showGhost } from './put-in';

/**
 * Follows the pointers over an element: one finger or the mouse makes a gesture, two fingers move and zoom the
 * view and end whatever one of them had begun. Wheel zooms to the cursor. A finger or pen held still on an object
 * goes to its row.
 *
 * @param showRow goes to the row of what is chosen
 * @returns stops following
 */
export function followPointers(
  element: HTMLElement,
  hand: Hand,
  showRow: () => void,
): {
  stop(): void;
  escape(): boolean;
} {
  const down = new Map<number, ScreenPoint>();
  let gesture: Gesture | null = null;
  let gesturePointer = -1;
  let spaceHeld = false;

  const eventOf = (event: PointerEvent | WheelEvent): HandEvent => {
    const box = element.getBoundingClientRect();
    const point = { px: event.clientX - box.left, py: event.clientY - box.top };
    return {
      ...point,
      at: toWall(hand.view.frame, point),
      touch: 'pointerType' in event && event.pointerType === 'touch',
      straight: event.shiftKey,
      ctrl: event.ctrlKey || event.metaKey,
      alt: event.altKey,
    };
  };

  const longPress = watchLongPress(hand, () => {
    escape();
    showRow();
  });

  const escape = (): boolean => {
    if (!gesture) return false;
    gesture.cancel();
    gesture = null;
    return true;
  };

  const onDown = (event: PointerEvent) => {
    if (event.button > 1) return;
    element.setPointerCapture(event.pointerId);
    element.focus({ preventScroll: true });
    // Keeps the middle button from scrolling the page, and a press from selecting text.
    event.preventDefault();
    const at = eventOf(event);
    down.set(event.pointerId, at);
    if (down.size > 1) {
      longPress.stop();
      escape();
      return;
    }
    gesturePointer = event.pointerId;
    if (event.pointerType !== 'mouse') longPress.begin(at);
    gesture = event.button === 1 || spaceHeld ? pan(hand, at) : press(hand, at);
  };

  const onMove = (event: PointerEvent) => {
    const at = eventOf(event);
    const before = down.get(event.pointerId);
    if (!before) return hover(hand, at);
    longPress.move(at);
    if (down.size === 2) pinch(hand, down, event.pointerId, at);
    down.set(event.pointerId, at);
    if (down.size === 1 && event.pointerId === gesturePointer) gesture?.move(at);
  };

  const onUp = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return;
    if (event.pointerId !== gesturePointer) return;
    longPress.stop();
    gesture?.end(eventOf(event));
    gesture = null;
  };

  const onCancel = (event: PointerEvent) => {
    down.delete(event.pointerId);
    longPress.stop();
    if (event.pointerId === gesturePointer) escape();
  };

  const onLeave = () => {
    hand.ghost = null;
    if (!gesture) hand.guides = [];
  };

  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    // A line is about 16 px and a page about 400, as browsers scroll by default.
    const unit = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
    if (event.shiftKey) hand.view.panBy(-event.deltaX * unit || -event.deltaY * unit, 0);
    // A pinch on a trackpad arrives as a wheel with Ctrl and much smaller steps.
    else hand.view.zoomAt(eventOf(event), Math.exp(-event.deltaY * unit * (event.ctrlKey ? 0.01 : 0.0015)));
  };

  const onSpace = (event: KeyboardEvent) => {
    if (event.key === ' ') spaceHeld = event.type === 'keydown' && event.target === element;
    if (spaceHeld && event.key === ' ') event.preventDefault();
  };

  element.addEventListener('pointerdown', onDown);
  element.addEventListener('pointermove', onMove);
  element.addEventListener('pointerup', onUp);
  element.addEventListener('pointercancel', onCancel);
  element.addEventListener('pointerleave', onLeave);
  element.addEventListener('wheel', onWheel, { passive: false });
  window.addEventListener('keydown', onSpace);
  window.addEventListener('keyup', onSpace);
  return {
    escape,
    stop() {
      longPress.stop();
      escape();
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointercancel', onCancel);
      element.removeEventListener('pointerleave', onLeave);
      element.removeEventListener('wheel', onWheel);
      window.removeEventListener('keydown', onSpace);
      window.removeEventListener('keyup', onSpace);
    },
  };
}

/** A hand above the drawing that has not pressed yet. */
function hover(hand: Hand, at: HandEvent): void {
  const { tool } = hand;
  if (at.touch) return;
  if (tool.kind === 'put-in') showGhost(hand, tool, at);
  else if (tool.kind === 'corners') aimCorner(hand, at);
  else if (tool.kind === 'by-hand') aimByHand(hand, tool.what, at);
  else if (tool.kind === 'measure') aimMeasure(hand, at);
}

/** Two fingers: the points of the wall under them stay under them, as far as zoom and shift can do it. */
function pinch(hand: Hand, down: ReadonlyMap<number, ScreenPoint>, movedId: number, to: ScreenPoint): void {
  const moved = down.get(movedId)!;
  const other = [...down.entries()].find(([id]) => id !== movedId)![1];
  const before = Math.hypot(moved.px - other.px, moved.py - other.py);
  const after = Math.hypot(to.px - other.px, to.py - other.py);
  hand.view.panBy((to.px - moved.px) / 2, (to.py - moved.py) / 2);
  if (before > 0 && after > 0) {
    hand.view.zoomAt({ px: (to.px + other.px) / 2, py: (to.py + other.py) / 2 }, after / before);
  }
}
