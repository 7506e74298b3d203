import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostPull } from '../../core/holding/coating-bound';
import { hook, shelf, type HeldItem } from '../../core/holding/item';
import { judgeItem } from '../../core/holding/judge-item';
import { disc, withRubber, type Magnet } from '../../core/holding/magnet';
import { pullRange } from '../../core/holding/pull-range';
import { coatingGround, steelGround } from './grounds';

describe('the most that a disc can pull (F₀ of the note on holding force, section 2, check values)', () => {
  it('is the image force to ideal iron, with remanence and steel at the good end of their tolerances (section 3)', () => {
    // 1.30 T, 20 × 5 mm across 1 mm: F₀ = 40.265 N; the remanence 3 % up counts squared.
    expect(mostPull(disc('N42', 20, 5), 1)).toBeCloseTo(40.265 * 1.03 ** 2 * 1.05, 2);
    expect(mostPull(withRubber(disc('N42', 20, 5), 1), 0)).toBeCloseTo(40.265 * 1.03 ** 2 * 1.05, 2);
  });

  it('is not known of what is no bare disc', () => {
    expect(mostPull({ ...disc('N42', 20, 5), shape: 'pot' }, 0)).toBe(Infinity);
  });

  it('is more than any sheet of steel pulls, with every tolerance for it', () => {
    const anything = fc.record({
      diameter: fc.double({ min: 6, max: 40, noNaN: true }),
      slender: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
      thickness: fc.double({ min: 0.3, max: 2, noNaN: true }),
      gap: fc.double({ min: 0.1, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(anything, ({ diameter, slender, thickness, gap }) => {
        const magnet = disc('N42', diameter, diameter * slender);
        const situation = { ...magnet, thickness, gap };
        expect(mostPull(magnet, 0)).toBeGreaterThanOrEqual(
          pullRange(situation, steelGround({ thickness, gap })).most,
        );
      }),
      { numRuns: 300, seed: 71 },
    );
  });
});

describe('on a coating that nobody has tested', () => {
  const onCoating = (magnet: Magnet, rows = [20, 220]) => ({
    magnets: rows.flatMap((y) => [0, 80].map((x) => ({ magnet, ground: coatingGround(), x, y }))),
    consequence: 'could-hurt' as const,
  });
  const bicycleHook = (load: number, magnet: Magnet): HeldItem =>
    shelf({ own: 8, ownReach: 165, load, depth: 300 }, onCoating(magnet));

  it('a bicycle of 9 kg does not hold, whatever the coating: no test could change that', () => {
    const { verdict, reasons, factor } = judgeItem(bicycleHook(9 * 9.81, disc('N42', 30, 10)));
    expect(verdict).toBe('does not hold');
    expect(factor).toBeUndefined();
    expect(reasons).toHaveLength(1);
    expect(reasons[0]).toMatch(
      /even if the coating pulled as hard as thick iron, it would hold \d\.\d\d times over where 5 are asked for/,
    );
  });

  it('what thick iron would hold is left to a test', () => {
    expect(judgeItem(bicycleHook(0, disc('N42', 30, 10))).reasons.join(' ')).toContain(
      'How much iron a magnetic coating holds is not known',
    );
    expect(judgeItem(bicycleHook(9 * 9.81, { ...disc('N42', 30, 10), shape: 'pot' })).verdict).toBe(
      'cannot be judged',
    );
  });

  it('a no of the bound is a no on steel of any thickness, with the same hook', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (weight, reach, thickness) => {
          const magnet = disc('N42', 20, 5);
          const on = (ground: ReturnType<typeof coatingGround> | ReturnType<typeof steelGround>) =>
            judgeItem(hook(weight, reach, { magnet, ground, clearance: Infinity }, 'handled')).verdict;
          if (on(coatingGround()) === 'does not hold')
            expect(on(steelGround({ thickness, gap: 0.1 }))).toBe('does not hold');
        },
      ),
      { numRuns: 300, seed: 72 },
    );
  });
});
