import { pointOf, verticesAt, type ShapeRef } from '../../../core/job/shape';
import { putInCorner, setCorner } from '../../job/changes/walls';
import type { Hand } from '../hand.svelte';
import { partsOfPoint, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';

/**
 * Moves one corner of the wall's outline (`ref` null) or of a shape.
 *
 * @param fresh the corner is not there yet: it is put in before `index` where the hand goes
 */
export function moveCorner(
  hand: Hand,
  start: HandEvent,
  ref: ShapeRef | null,
  index: number,
  { fresh = false } = {},
): Gesture | null {
  const { wall } = hand;
  const vertices = wall && verticesAt(wall, ref);
  if (!wall || !vertices) return null;
  const corner = vertices[index] ? pointOf(vertices[index]) : start.at;
  const offset = fresh ? { x: 0, y: 0 } : { x: corner.x - start.at.x, y: corner.y - start.at.y };
  const lines = snapLines(wall, ref, hand.panels);
  const changeTo = fresh ? putInCorner : setCorner;
  if (ref) hand.lift({ kind: ref.kind, id: ref.id }, wall);

  return {
    move(event) {
      const to = toWholeMm({ x: event.at.x + offset.x, y: event.at.y + offset.y });
      const own = vertices.flatMap((vertex, i) =>
        i === index && !fresh ? [] : linesOfCorner(pointOf(vertex)),
      );
      const { by, guides } = snap(partsOfPoint(to), [...lines, ...own], hand.snapReachOf(event));
      hand.guide(guides);
      hand.open.preview(changeTo(wall.id, ref, index, { x: to.x + by.x, y: to.y + by.y }).change);
    },
    end(event) {
      hand.commit(changeTo(wall.id, ref, index, event.at).name);
    },
    cancel() {
      hand.cancel();
    },
  };
}

/** A corner is easily brought above or beside its neighbours. */
function linesOfCorner({ x, y }: { x: number; y: number }) {
  return [
    { axis: 'x' as const, at: x, words: 'another corner', kind: 'edge' as const },
    { axis: 'y' as const, at: y, words: 'another corner', kind: 'edge' as const },
  ];
}
