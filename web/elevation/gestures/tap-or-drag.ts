import { hasTravelled, type Gesture, type HandEvent } from './gesture';

/** A press that is a tap until the hand has travelled. */
export function tapOrDrag(
  start: HandEvent,
  begin: () => Gesture | null,
  tap: (event: HandEvent) => void,
): Gesture {
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
