import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadAlong } from '../../core/drawings/place-labels';

const labels = fc
  .array(fc.record({ at: fc.integer({ min: 0, max: 60 }), size: fc.integer({ min: 1, max: 6 }) }), {
    minLength: 1,
    maxLength: 9,
  })
  .map((list) => [...list].sort((a, b) => a.at - b.at));

const shift = (list: readonly { at: number }[], places: readonly number[]) =>
  list.reduce((sum, { at }, i) => sum + (places[i]! - at) ** 2, 0);

describe('labels along a line', () => {
  it('keep their order, their distance and their bounds, or do not fit', () => {
    fc.assert(
      fc.property(labels, (list) => {
        const places = spreadAlong(list, 1, -5, 70);
        const needed = list.reduce((sum, { size }) => sum + size, list.length - 1);
        if (!places) return needed > 75;
        const edges = list.map(({ size }, i) => [places[i]! - size / 2, places[i]! + size / 2] as const);
        expect(edges[0]![0]).toBeGreaterThanOrEqual(-5 - 1e-9);
        expect(edges.at(-1)![1]).toBeLessThanOrEqual(70 + 1e-9);
        for (let i = 1; i < edges.length; i++) {
          expect(edges[i]![0] - edges[i - 1]![1]).toBeGreaterThanOrEqual(1 - 1e-9);
        }
        return true;
      }),
    );
  });

  it('stay where they are if nothing is in their way', () => {
    expect(
      spreadAlong(
        [
          { at: 10, size: 4 },
          { at: 20, size: 4 },
        ],
        1,
        0,
        30,
      ),
    ).toEqual([10, 20]);
  });

  it('share a shift evenly', () => {
    expect(
      spreadAlong(
        [
          { at: 10, size: 4 },
          { at: 10, size: 4 },
        ],
        1,
        0,
        30,
      ),
    ).toEqual([7.5, 12.5]);
  });

  it('move least in sum of squares: no small change of allowed places is better', () => {
    fc.assert(
      fc.property(
        labels,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }),
        (list, nudges) => {
          const places = spreadAlong(list, 1, -40, 110)!;
          const moved = places.map((place, i) => place + nudges[i]!);
          const allowed =
            moved.every(
              (place, i) => i === 0 || place - moved[i - 1]! >= (list[i]!.size + list[i - 1]!.size) / 2 + 1,
            ) &&
            moved[0]! - list[0]!.size / 2 >= -40 &&
            moved.at(-1)! + list.at(-1)!.size / 2 <= 110;
          if (allowed) expect(shift(list, moved)).toBeGreaterThanOrEqual(shift(list, places) - 1e-6);
        },
      ),
    );
  });
});
