import type { Item, PaperPoint } from './page';
import type { Mm } from '../units';

/** Items moved on paper by (dx, dy) mm. */
export function moveItems(items: readonly Item[], dx: Mm, dy: Mm): Item[] {
  const move = ({ x, y }: PaperPoint): PaperPoint => ({ x: x + dx, y: y + dy });
  return items.map((item): Item => {
    switch (item.kind) {
      case 'stroke':
        return { ...item, points: item.points.map(move) };
      case 'fill':
        return { ...item, rings: item.rings.map((ring) => ring.map(move)) };
      case 'circle':
        return { ...item, centre: move(item.centre) };
      case 'text':
      case 'lettering':
        return { ...item, at: move(item.at) };
      case 'art':
        return {
          ...item,
          chains: item.chains.map((chain) => ({ ...chain, points: chain.points.map(move) })),
        };
      case 'photograph':
        return { ...item, left: item.left + dx, bottom: item.bottom + dy };
    }
  });
}
