import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outsideLimits } from '../../core/holding/limits';
import { pullOnSheet } from '../../core/holding/pull';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Within the limits of the note; lengths in mm. */
const situations = fc
  .record({
    D: between(6, 40),
    slenderness: between(0.1, 0.6),
    Br: between(0.39, 1.3),
    t: fc.oneof(between(0.3, 2), fc.constant(10)),
    g: between(0.1, 3),
  })
  .map(({ D, slenderness, ...rest }) => ({ D, H: D * slenderness, ...rest }));

interface Situation {
  readonly D: number;
  readonly H: number;
  readonly Br: number;
  readonly t: number;
  readonly g: number;
}

function force({ D, H, Br, t, g }: Situation): number {
  return pullOnSheet({ Br, mur: 1.05, R: D / 2000, H: H / 1000, t: t / 1000, g: g / 1000 }).F;
}

function check(name: string, change: (situation: Situation, by: number) => Situation) {
  it(name, () => {
    fc.assert(
      fc.property(situations, between(0, 1), (situation, by) => {
        const before = force(situation);
        expect(before).toBeGreaterThan(0);
        expect(force(change(situation, by))).toBeGreaterThanOrEqual(before * (1 - 1e-12));
      }),
      { numRuns: 2000, seed: 4 },
    );
  });
}

describe('the pull of a magnet within the limits', () => {
  check('is never weaker on a thicker sheet', (s, by) => ({ ...s, t: s.t + by * (s.t > 2 ? 0 : 2 - s.t) }));
  check('is never weaker on thick steel', (s) => ({ ...s, t: 10 }));
  check('is never stronger behind a larger gap', (s, by) => ({ ...s, g: 0.1 + (s.g - 0.1) * (1 - by) }));
  check('is never weaker with more remanence', (s, by) => ({ ...s, Br: s.Br + by * (1.3 - s.Br) }));
  check('is never weaker for a taller magnet', (s, by) => ({ ...s, H: s.H + by * (0.6 * s.D - s.H) }));

  it('is that of the sheet or of the magnet, whichever is less, at most', () => {
    fc.assert(
      fc.property(situations, ({ D, H, Br, t, g }) => {
        const { F, Fthick, Fsat } = pullOnSheet({
          Br,
          mur: 1.05,
          R: D / 2000,
          H: H / 1000,
          t: t / 1000,
          g: g / 1000,
        });
        expect(F).toBeLessThanOrEqual(Math.min(Fthick, Fsat));
        expect(F).toBeGreaterThanOrEqual(Math.min(Fthick, Fsat) * 2 ** (-1 / 2.5) * (1 - 1e-12));
      }),
      { numRuns: 500, seed: 5 },
    );
  });
});

describe('the limits of the pull', () => {
  const inside = { diameter: 20, height: 5, Br: 1.3, mur: 1.05, thickness: 0.5, gap: 1 };

  it('are kept by every situation that the properties draw', () => {
    fc.assert(
      fc.property(situations, ({ D, H, Br, t, g }) => {
        const said = outsideLimits({ diameter: D, height: H, Br, mur: 1.05, thickness: t, gap: g });
        expect(said).toEqual([]);
      }),
      { numRuns: 500, seed: 6 },
    );
  });

  it.each([
    [{ diameter: 5.9, height: 2 }, 'mm across'],
    [{ diameter: 41, height: 10 }, 'mm across'],
    [{ height: 1.9 }, 'of its diameter'],
    [{ height: 12.1 }, 'of its diameter'],
    [{ thickness: 0.29 }, 'mm thick'],
    [{ thickness: 2.1 }, 'mm thick'],
    [{ thickness: 9.9 }, 'mm thick'],
    [{ gap: 0.05 }, 'gap'],
    [{ gap: 3.01 }, 'gap'],
    [{ gap: NaN }, 'gap'],
    [{ Br: 0.2 }, 'remanence'],
    [{ mur: 1.3 }, 'recoil'],
  ])('%o is outside, and the sentence names the limit', (change, words) => {
    const said = outsideLimits({ ...inside, ...change });
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(words);
    expect(said[0]).toContain('the pull is known');
  });

  it('hold with both ends, also where layers add up to them', () => {
    expect(outsideLimits({ ...inside, thickness: 0.3, gap: 0.1 + 0.2 })).toEqual([]);
    expect(outsideLimits({ ...inside, thickness: 0.1 + 0.2, gap: 3 })).toEqual([]);
    expect(outsideLimits({ ...inside, thickness: 10 })).toEqual([]);
  });
});
