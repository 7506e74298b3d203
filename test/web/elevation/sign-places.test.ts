import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  discArea,
  placeSigns,
  type LooseSign,
  type PlacedSign,
  type PxArea,
} from '../../../web/elevation/by-hand/sign-places';

const paper = { width: 800, height: 600 };
const words = [
  { text: 'H1 joint here', width: 80 },
  { text: 'H1', width: 14 },
];

/** On an upright line from top to bottom. */
function onLine(x: number, y: number, changes: Partial<LooseSign> = {}): LooseSign {
  return {
    spot: { x, y },
    within: { left: x, right: x, top: 0, bottom: 600 },
    words,
    isHeld: false,
    ...changes,
  };
}

const areasOf = ({ disc, plate }: PlacedSign): PxArea[] => [discArea(disc), ...(plate ? [plate] : [])];

function meet(a: PxArea, b: PxArea): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

describe('places for signs', () => {
  it('are their own where nothing is in the way, with all their words', () => {
    const [sign] = placeSigns([onLine(400, 300)], [], paper);
    expect(sign!.disc).toEqual({ x: 400, y: 300 });
    expect(sign!.plate!.text).toBe('H1 joint here');
  });

  it('are further along the line where a panel has its number', () => {
    const number = { left: 395, right: 410, top: 290, bottom: 305 };
    const [sign] = placeSigns([onLine(400, 300)], [number], paper);
    expect(sign!.disc.x).toBe(400);
    expect(sign!.disc.y).not.toBe(300);
    for (const area of areasOf(sign!)) expect(meet(area, number)).toBe(false);
  });

  it('have fewer words where there is no room for more', () => {
    const walls = [
      { left: 0, right: 370, top: 0, bottom: 600 },
      { left: 440, right: 800, top: 0, bottom: 600 },
    ];
    const [sign] = placeSigns([onLine(400, 300)], walls, paper);
    expect(sign!.plate!.text).toBe('H1');
  });

  it('stay under the hand, and the others make room', () => {
    const [other, held] = placeSigns(
      [onLine(400, 300), onLine(400, 304, { isHeld: true })],
      [{ left: 380, right: 420, top: 280, bottom: 320 }],
      paper,
    );
    expect(held!.disc).toEqual({ x: 400, y: 304 });
    expect(areasOf(other!).some((a) => areasOf(held!).some((b) => meet(a, b)))).toBe(false);
  });

  it('cover neither each other nor a number, and nothing of them is cut off, wherever six of them belong', () => {
    const place = fc.record({ x: fc.integer({ min: 1, max: 799 }), y: fc.integer({ min: 1, max: 599 }) });
    fc.assert(
      fc.property(
        fc.uniqueArray(place, { minLength: 6, maxLength: 6, selector: ({ x }) => Math.floor(x / 60) }),
        fc.array(place, { maxLength: 8 }),
        (spots, numbers) => {
          const taken = numbers.map(({ x, y }) => ({ left: x, right: x + 14, top: y, bottom: y + 12 }));
          const all = placeSigns(
            spots.map(({ x, y }) => onLine(x, y)),
            taken,
            paper,
          ).map(areasOf);
          for (const [i, own] of all.entries()) {
            for (const area of own) {
              expect(area.left >= 0 && area.right <= 800 && area.top >= 0 && area.bottom <= 600).toBe(true);
              expect(taken.some((other) => meet(area, other))).toBe(false);
              expect(all.some((others, j) => j !== i && others.some((other) => meet(area, other)))).toBe(
                false,
              );
            }
          }
        },
      ),
    );
  });
});
