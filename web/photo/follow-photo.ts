import type { Point2 } from '../../core/geometry/homography';

export interface PhotoHands {
  /** The marked point nearest to a place, within a reach in px, or null. */
  nearest(at: Point2, reach: number): number | null;
  take(index: number, touch: boolean): void;
  drag(dx: number, dy: number): void;
  letGo(): void;
  tap(at: Point2): void;
  pan(dx: number, dy: number): void;
  zoom(at: Point2, factor: number): void;
}

/**
 * Pointers over a photo: one drags the point under it, or the photo; a tap marks; two move and zoom. Wheel zooms.
 *
 * @returns stops following
 */
export function followPhoto(element: HTMLElement, hands: PhotoHands): () => void {
  const down = new Map<number, Point2>();
  let start: { at: Point2; point: number | null; travelled: boolean; reach: number } | null = null;

  const placeOf = ({ clientX, clientY }: MouseEvent): Point2 => {
    const box = element.getBoundingClientRect();
    return [clientX - box.left, clientY - box.top];
  };

  const onDown = (event: PointerEvent) => {
    if (event.button > 1) return;
    element.setPointerCapture(event.pointerId);
    element.focus({ preventScroll: true });
    event.preventDefault();
    const at = placeOf(event);
    down.set(event.pointerId, at);
    if (down.size > 1) {
      start = null;
      hands.letGo();
      return;
    }
    const touch = event.pointerType === 'touch';
    const point = hands.nearest(at, touch ? 30 : 16);
    start = { at, point, travelled: false, reach: touch ? 9 : 3 };
    if (point !== null) hands.take(point, touch);
  };

  const onMove = (event: PointerEvent) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const at = placeOf(event);
    if (down.size === 2) pinch(before, at, event.pointerId);
    down.set(event.pointerId, at);
    if (!start || down.size !== 1) return;
    const isFar = Math.hypot(at[0] - start.at[0], at[1] - start.at[1]) > start.reach;
    if (!start.travelled && !isFar) return;
    const from = start.travelled ? before : start.at;
    start.travelled = true;
    const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
    if (start.point === null) hands.pan(dx, dy);
    else hands.drag(dx, dy);
  };

  const pinch = (before: Point2, at: Point2, id: number) => {
    const other = [...down.entries()].find(([one]) => one !== id)![1];
    const was = Math.hypot(before[0] - other[0], before[1] - other[1]);
    const is = Math.hypot(at[0] - other[0], at[1] - other[1]);
    hands.pan((at[0] - before[0]) / 2, (at[1] - before[1]) / 2);
    if (was > 0 && is > 0) hands.zoom([(at[0] + other[0]) / 2, (at[1] + other[1]) / 2], is / was);
  };

  const onUp = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return;
    if (start && !start.travelled && start.point === null) hands.tap(start.at);
    if (start) hands.letGo();
    start = null;
  };

  const onCancel = (event: PointerEvent) => {
    down.delete(event.pointerId);
    start = null;
    hands.letGo();
  };

  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    const unit = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
    hands.zoom(placeOf(event), Math.exp(-event.deltaY * unit * (event.ctrlKey ? 0.01 : 0.0015)));
  };

  element.addEventListener('pointerdown', onDown);
  element.addEventListener('pointermove', onMove);
  element.addEventListener('pointerup', onUp);
  element.addEventListener('pointercancel', onCancel);
  element.addEventListener('wheel', onWheel, { passive: false });
  return () => {
    element.removeEventListener('pointerdown', onDown);
    element.removeEventListener('pointermove', onMove);
    element.removeEventListener('pointerup', onUp);
    element.removeEventListener('pointercancel', onCancel);
    element.removeEventListener('wheel', onWheel);
  };
}
