import { boxesHolding } from '../geometry/box-index';
import type { Box } from '../geometry/polygon';
import type { HungItem } from '../job/hung-schema';
import { toHundredth, type Mm } from '../units';

/** The first item other than the one of `itemId` that lies over a point of the wall, mm; edges belong to none. */
export type ItemAt = (itemId: string, at: { readonly x: Mm; readonly y: Mm }) => HungItem | undefined;

/** Pieces that are moved about lie nowhere. */
export function itemsAt(items: readonly HungItem[]): ItemAt {
  const lying = items.filter(({ marking }) => !marking);
  const holding = boxesHolding(lying.map(boxOfItem));
  return (itemId, { x, y }) => {
    const numbers = holding({ x: toHundredth(x), y: toHundredth(y) });
    const other = numbers.find((i) => lying[i]!.id !== itemId);
    return other === undefined ? undefined : lying[other];
  };
}

/** Less its edges. */
function boxOfItem({ x, y, width, height }: HungItem): Box {
  return {
    left: toHundredth(x) + 1,
    bottom: toHundredth(y) + 1,
    right: toHundredth(x + width) - 1,
    top: toHundredth(y + height) - 1,
  };
}
