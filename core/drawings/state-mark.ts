import type { ItemState } from '../holding/calculation-words';
import type { Mm } from '../units';
import type { Item, PaperPoint } from './page';

/** The shape beside a state's words, so that it is told without colour; the same shapes as on the elevation of the screen. */
export function stateMark(
  state: ItemState,
  { x, y }: PaperPoint,
  /** Half of its width, mm on paper. */
  r: Mm = 1.7,
): Item[] {
  const at = (dx: number, dy: number): PaperPoint => ({ x: x + dx * r, y: y + dy * r });
  const square = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)];
  const around = (points: readonly PaperPoint[]): Item => ({
    kind: 'stroke',
    points,
    closed: true,
    width: 0.35,
  });
  const filled = (points: readonly PaperPoint[]): Item => ({ kind: 'fill', rings: [points], colour: 'ink' });
  const ring: Item = { kind: 'circle', centre: { x, y }, radius: r, width: 0.35 };
  switch (state) {
    case 'holds':
      return [filled(square)];
    case 'holds only if tested':
      return [around(square), filled([at(-1, -1), at(1, -1), at(1, 0), at(-1, 0)])];
    case 'does not hold':
      return [filled([at(-1.15, 1), at(1.15, 1), at(0, -1.1)])];
    case 'screwed to a fixing point':
      return [ring, { kind: 'stroke', points: [at(-0.7, -0.7), at(0.7, 0.7)], width: 0.5 }];
    case 'cannot be judged':
      return [
        ring,
        {
          kind: 'text',
          text: '?',
          at: { x, y: y - (r < 3 ? 1.25 : 2.5) },
          height: r < 3 ? 2.5 : 5,
          anchor: 'middle',
          weight: 'semi-bold',
        },
      ];
  }
}
