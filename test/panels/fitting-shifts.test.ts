import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittingShifts, type GrowingSide } from '../../core/panels/fitting-shifts';

const side = (length: number, grows: number, count = 1): GrowingSide => ({ length, grows, count });

const areAllIn = (some: Set<number>, all: Set<number>) => [...some].every((one) => all.has(one));

describe('shifts at which the most panels fit side by side', () => {
  it('are found by hand for two, for three and with kerf', () => {
    // 200 + 240 leaves 60 of 500: both grow, so 30 more fit; less a kerf of 4, 28.
    expect(fittingShifts([side(200, 1), side(240, 1)], [500], 0, [-100, 100])).toEqual([30]);
    expect(fittingShifts([side(200, 1), side(240, 1)], [500], 4, [-100, 100])).toEqual([28]);
    // Three of 180 are 40 too long: each must shrink by 13.33, so that they fit from 14 on, and at the end too.
    expect(fittingShifts([side(180, -1, 3)], [500], 0, [-100, 100])).toEqual([99]);
    expect(fittingShifts([side(180, -1, 3)], [500], 0, [-100, 14])).toEqual([13]);
    // One that grows beside one that shrinks: their sum never changes, and any shift will do.
    expect(fittingShifts([side(260, 1), side(250, -1)], [500], 0, [-50, 50])).toHaveLength(1);
    // Beside a slope, half as fast: 60 are left, at 1.5 for every hundredth, which 40 fill.
    expect(fittingShifts([side(200, 1), side(240, 0.5)], [500], 0, [-100, 100])).toEqual([40]);
    // A pair fits up to 30, another from 20 on: both do in between.
    const both = [side(200, 1), side(240, 1), side(360, -1), side(180, -1)];
    expect(fittingShifts(both, [500], 0, [-1, 100])[0]).toBe(30);
    expect(fittingShifts([side(200, 1)], [500], 0, [0, 1])).toEqual([]);
  });

  it('leave out nothing: what fits at any shift all fits at one of them, and at no two the same', () => {
    const sides = fc.array(
      fc.record({
        length: fc.integer({ min: 70, max: 320 }),
        grows: fc.constantFrom(-1, 0, 1, 0.5, -0.25),
        count: fc.constant(1),
      }),
      { minLength: 3, maxLength: 6 },
    );
    let several = 0;
    fc.assert(
      fc.property(sides, fc.constantFrom(0, 3), (all, kerf) => {
        const [low, high] = [-60, 60];
        /** Which of all sets of up to four fit, by their bits. */
        const fitting = (shift: number) => {
          const found = new Set<number>();
          for (let set = 1; set < 1 << all.length; set++) {
            const members = all.filter((_, i) => (set >> i) & 1);
            const length = members.reduce((sum, one) => sum + one.length + one.grows * shift, 0);
            if (members.length <= 4 && length + (members.length - 1) * kerf <= 400) found.add(set);
          }
          return found;
        };
        const kept = fittingShifts(all, [400], kerf, [low, high]).map(fitting);
        if (kept.length > 1) several++;
        for (let shift = low + 1; shift < high; shift++) {
          const here = fitting(shift);
          expect(kept.some((sets) => areAllIn(here, sets))).toBe(true);
        }
        kept.forEach((sets, i) => {
          for (const other of kept.slice(i + 1)) expect(areAllIn(sets, other)).toBe(false);
        });
      }),
      { numRuns: 200 },
    );
    expect(several).toBeGreaterThan(20);
  });
});
