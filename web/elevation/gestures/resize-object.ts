import type { Zone } from '../../../core/job/schema';
import {
  boxOfObject,
  findObject,
  type MmBox,
  type ObjectRef,
  type Placed,
  type WallObject,
} from '../../../core/job/shape';
import { lengthOfSheets, sheetPitch } from '../../../core/panels/whole-sheets';
import { stretchTo } from '../../job/changes/objects';
import { stretchTogether } from '../../job/changes/zone-size';
import type { Hand } from '../hand.svelte';
import { partsOfBox, snap, type SnapLine, type SnapPart } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';
import { pulledRound } from './pulled-round';
import { resizedBox, type Handle } from './resized-box';
import { sharedEdges } from './shared-edges';

/**
 * Pulls edges of an object by a handle; the opposite edges stay. Round things stay round. Zones that touch an edge
 * of a zone along it move theirs with it, unless Ctrl or Alt holds them off as it does snapping.
 */
export function resizeObject(hand: Hand, start: HandEvent, ref: ObjectRef, handle: Handle): Gesture | null {
  const { wall } = hand;
  const object = wall && findObject(wall, ref);
  if (!wall || !object) return null;
  const box = boxOfObject(object);
  const round = (object as Placed).circle !== undefined;
  const shared = sharedEdges(wall, ref, box, handle);
  const along = shared?.along ?? [];
  const lines = [
    ...snapLines(wall, ref, hand.panels).filter((line) => shared?.stays(line) ?? true),
    ...sheetLines(hand, object, box, handle),
  ];
  let name = '';
  hand.lift(ref, wall, { sized: true, along });

  return {
    move(event) {
      const dx = Math.round(event.at.x - start.at.x);
      const dy = Math.round(event.at.y - start.at.y);
      const lead = ref.kind === 'zone' ? pulledRound(hand, wall, ref.id, handle, event) : null;
      if (lead) {
        hand.guide([]);
        name = lead.name;
        hand.open.preview(lead.change);
        return;
      }
      const free = resizedBox(box, handle, dx, dy);
      const { by, guides } = snap(movingParts(free, handle), lines, round ? -1 : hand.snapReachOf(event));
      hand.guide(guides);
      const to = resizedBox(box, handle, dx + by.x, dy + by.y, round || event.straight);
      const together = shared && !event.ctrl && !event.alt;
      const stretch = together
        ? stretchTogether(wall, ref, shared.within(to), shared.lines)
        : stretchTo(wall, ref, to);
      name = stretch.name;
      hand.open.preview(stretch.change);
    },
    end() {
      hand.commit(name);
    },
    cancel() {
      hand.cancel();
    },
  };
}

/** In one direction; a wall of more is not counted by eye. */
const mostSheets = 500;

/** Where a moving edge of a steel zone would end whole sheets from the edge that stays. */
function sheetLines({ open, wallBox }: Hand, object: WallObject, box: MmBox, { x, y }: Handle): SnapLine[] {
  const sheet = sheetPitch(open.job, (object as Zone).layout);
  if (!sheet) return [];
  const ends = (axis: 'x' | 'y', way: number, side: 'width' | 'height'): SnapLine[] => {
    const most = Math.min(mostSheets, Math.floor((wallBox[side] * 100) / sheet[side]));
    return Array.from({ length: way === 0 ? 0 : most }, (_, i) => {
      const length = lengthOfSheets(i + 1, sheet[side], sheet.gap);
      const at = way > 0 ? box[axis] + length : box[axis] + box[side] - length;
      return { axis, at, words: i === 0 ? '1 whole sheet' : `${i + 1} whole sheets`, kind: 'joint' };
    });
  };
  return [...ends('x', x, 'width'), ...ends('y', y, 'height')];
}

function movingParts(box: MmBox, handle: Handle): SnapPart[] {
  const words = [
    handle.x < 0 ? 'left edge' : handle.x > 0 ? 'right edge' : '',
    handle.y < 0 ? 'lower edge' : handle.y > 0 ? 'upper edge' : '',
  ];
  return partsOfBox(box).filter((part) => words.includes(part.words));
}
