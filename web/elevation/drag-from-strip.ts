import { toWall } from './frame';
import type { HandEvent } from './gestures/gesture';
import { hasTravelled } from './gestures/gesture';
import { putInAt, showGhost } from './gestures/put-in';
import type { Hand } from './hand.svelte';
import { choose, type Tool } from './tool';

/**
 * Drags a thing from its button in the strip onto the wall, where it is put in at its usual size; let go beside the wall it is
 * put away. A press that does not travel stays a click of the button.
 */
export function dragFromStrip(hand: Hand, tool: Tool) {
  return (button: HTMLElement) => {
    if (tool.kind !== 'put-in') return;
    let from: HandEvent | null = null;
    let isDragged = false;

    const drawing = () => document.querySelector<HTMLElement>('[data-testid="elevation"]')!;
    const eventOf = (event: PointerEvent): HandEvent => {
      const box = drawing().getBoundingClientRect();
      const point = { px: event.clientX - box.left, py: event.clientY - box.top };
      return {
        ...point,
        at: toWall(hand.view.frame, point),
        touch: event.pointerType === 'touch',
        straight: false,
        ctrl: event.ctrlKey || event.metaKey,
        alt: event.altKey,
      };
    };
    const isOver = ({ px, py }: HandEvent) =>
      px >= 0 && py >= 0 && px <= hand.view.frame.width && py <= hand.view.frame.height;

    const listeners = new AbortController();
    const { signal } = listeners;
    const putAway = () => {
      from = null;
      hand.ghost = null;
      hand.guides = [];
    };
    button.addEventListener(
      'pointerdown',
      (event) => {
        if (event.button !== 0 || !hand.wall) return;
        from = eventOf(event);
        isDragged = false;
        button.setPointerCapture(event.pointerId);
      },
      { signal },
    );
    button.addEventListener(
      'pointermove',
      (event) => {
        if (!from) return;
        const at = eventOf(event);
        if (!isDragged && !hasTravelled(from, at)) return;
        if (!isDragged) hand.takeUp(tool);
        isDragged = true;
        if (isOver(at)) showGhost(hand, tool, at);
        else hand.ghost = null;
      },
      { signal },
    );
    button.addEventListener(
      'pointerup',
      (event) => {
        const at = eventOf(event);
        const ends = from !== null && isDragged;
        putAway();
        if (!ends) return;
        if (isOver(at)) putInAt(hand, tool, at);
        else hand.takeUp(choose);
        drawing().focus();
      },
      { signal },
    );
    button.addEventListener(
      'pointercancel',
      () => {
        if (isDragged) hand.takeUp(choose);
        putAway();
      },
      { signal },
    );
    // The click that ends a drag is not meant for the button.
    button.addEventListener(
      'click',
      (event) => {
        if (isDragged && event.detail > 0) event.stopImmediatePropagation();
        isDragged = false;
      },
      { signal, capture: true },
    );
    return () => listeners.abort();
  };
}
