import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittingShifts, type GrowingSide } from '../../core/panels/fitting-shifts';

describe('shifts at which panels side by side just fit', () => {
  it('are found by hand for two, for three and with kerf', () => {
    const side = (length: number, grows: number, count = 1): GrowingSide => ({ length, grows, count });
    // 200 + 240 leaves 60 of 500: both grow, so 30 more fit; less a kerf of 4, 28.
    expect(fittingShifts([side(200, 1), side(240, 1)], [500], 0, [-100, 100])).toEqual([30]);
    expect(fittingShifts([side(200, 1), side(240, 1)], [500], 4, [-100, 100])).toEqual([28]);
    // Three of 180 are 40 too long: each must shrink by 13.33, rounded to where they fit.
    expect(fittingShifts([side(180, -1, 3)], [500], 0, [-100, 100])).toContain(14);
    // One that grows beside one that shrinks: their sum never changes.
    expect(fittingShifts([side(260, 1), side(250, -1)], [500], 0, [-50, 50])).toEqual([]);
  });

  it('leave out nothing: which pairs and triples fit changes at no other shift', () => {
    const sides = fc.array(
      fc.record({
        length: fc.integer({ min: 60, max: 320 }),
        grows: fc.constantFrom(-1, 0, 1),
        count: fc.constant(1),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(sides, fc.constantFrom(0, 3), (all, kerf) => {
        const [low, high] = [-40, 40];
        const shifts = new Set(fittingShifts(all, [400], kerf, [low, high]));
        const fitting = (shift: number) => {
          const at = all.map(({ length, grows }) => length + grows * shift);
          const sets: string[] = [];
          for (let i = 0; i < at.length; i++) {
            for (let j = i + 1; j < at.length; j++) {
              if (at[i]! + at[j]! + kerf <= 400) sets.push(`${i} ${j}`);
              for (let k = j + 1; k < at.length; k++)
                if (at[i]! + at[j]! + at[k]! + 2 * kerf <= 400) sets.push(`${i} ${j} ${k}`);
            }
          }
          return sets.join(', ');
        };
        for (let shift = low + 2; shift < high - 1; shift++) {
          if (fitting(shift) !== fitting(shift - 1))
            expect(shifts.has(shift) || shifts.has(shift - 1)).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });
});
