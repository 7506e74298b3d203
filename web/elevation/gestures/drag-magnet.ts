import { withPlaces } from '../../../core/job/hung-places';
import type { HungItem } from '../../../core/job/hung-schema';
import { isLocked } from '../../../core/job/several';
import type { Wall } from '../../../core/job/schema';
import { placeMagnets } from '../../job/changes/hung';
import { nearestWithin } from '../hit';
import type { Hand } from '../hand.svelte';
import { snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';
import { tapOrDrag } from './tap-or-drag';
import { travel } from './travel';

/** Magnets of an item that is smaller than this many reaches on the screen are moved by figures: the hand means the item. */
const leastReaches = 3;

/** A press on a magnet of the chosen item; null where none is meant. @param otherwise what a tap there does */
export function pressMagnet(
  hand: Hand,
  start: HandEvent,
  otherwise: (event: HandEvent) => void,
): Gesture | null {
  const { wall, open } = hand;
  const { selection, station, chosen } = open;
  if (!wall || station !== 'hanging' || selection?.kind !== 'hung' || chosen.isSeveral) return null;
  if (start.alt || start.straight) return null;
  const item = wall.hung?.find(({ id }) => id === selection.id);
  if (!item?.magnets || isLocked(item)) return null;
  const reach = (start.touch ? 16 : 8) / hand.view.frame.scale;
  if (Math.min(item.width, item.height) < leastReaches * reach) return null;
  const places = item.magnets.places.map(([x, y]) => ({ x: item.x + x, y: item.y + y }));
  const index = nearestWithin(places, start.at, reach);
  return index === null
    ? null
    : tapOrDrag(start, () => dragMagnet(hand, start, wall, item, index), otherwise);
}

/** Moves one magnet within its item, in line with the item's middle, its other magnets and what is on the wall. */
function dragMagnet(hand: Hand, start: HandEvent, wall: Wall, item: HungItem, index: number): Gesture {
  const places = item.magnets!.places;
  const [fromX, fromY] = places[index]!;
  const lines = linesFor(hand, wall, item, index);
  const name = placeMagnets(wall, item, places).name;
  hand.lift({ kind: 'hung', id: item.id }, wall);

  return {
    move(event) {
      const { dx, dy } = travel(start, event);
      const free = toWholeMm({ x: item.x + fromX + dx, y: item.y + fromY + dy });
      const parts = (['x', 'y'] as const).map((axis) => ({
        axis,
        at: free[axis],
        words: 'magnet',
        kind: 'edge' as const,
      }));
      const { by, guides } = snap(parts, lines, hand.snapReachOf(event));
      hand.guide(guides);
      const to: [number, number] = [
        within(free.x + by.x - item.x, item.width),
        within(free.y + by.y - item.y, item.height),
      ];
      const moved = withPlaces(
        item,
        places.map((place, i) => (i === index ? to : place)),
      );
      hand.open.preview(placeMagnets(wall, item, moved.magnets!.places).change);
    },
    end() {
      hand.commit(name);
    },
    cancel() {
      hand.cancel();
    },
  };
}

function linesFor(hand: Hand, wall: Wall, item: HungItem, index: number): SnapLine[] {
  const { x, y, width, height, magnets } = item;
  const own = magnets!.places.filter((_, i) => i !== index);
  return [
    { axis: 'x', at: x + width / 2, words: 'the middle of the item', kind: 'edge' },
    { axis: 'y', at: y + height / 2, words: 'the middle of the item', kind: 'edge' },
    ...own.flatMap(([dx, dy]): SnapLine[] => [
      { axis: 'x', at: x + dx, words: 'another magnet', kind: 'edge' },
      { axis: 'y', at: y + dy, words: 'another magnet', kind: 'edge' },
    ]),
    ...snapLines(wall, { kind: 'hung', id: item.id }, hand.panels),
  ];
}

function within(place: number, length: number): number {
  return Math.min(length, Math.max(0, place));
}
