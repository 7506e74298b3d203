import { describe, expect, it } from 'vitest';
import { checkItem, type HoldingResult } from '../../core/holding/check-item';
import { flatItem, hook, shelf, type PlacedMagnet } from '../../core/holding/item';
import { disc, withRubber } from '../../core/holding/magnet';
import { holdRigid } from '../../core/holding/rigid-item';
import { steelGround } from './grounds';

/* Note on holding force, section 4, examples 1–3, to the digits it prints. The note takes the pulls of its table, rounded to
 * 0.1 N; what follows from them is compared with one unit of the last digit printed. */

function at(places: readonly (readonly [x: number, y: number])[], rest: Omit<PlacedMagnet, 'x' | 'y'>) {
  return places.map(([x, y]) => ({ ...rest, x, y }));
}

function factorOf({ modes }: HoldingResult, name: string): number {
  return modes.find((mode) => mode.name === name)!.factor;
}

describe('note on holding force, example 1: picture board, W = 4 N, e = 5, four 20 × 5 N42', () => {
  const magnets = at(
    [
      [0, 20],
      [200, 20],
      [0, 220],
      [200, 220],
    ],
    { magnet: disc('N42', 20, 5), ground: steelGround({ gap: 1 }) },
  );
  const result = checkItem(flatItem(4, 5, { x: 100, y: 120 }, { magnets, consequence: 'light-at-reach' }));

  it('F = 15.3, T 0.045 and 0.004, C = 0.098', () => {
    expect(result.magnets[0]!.pull.nominal.toFixed(1)).toBe('15.3');
    expect(result.state!.T.map((t) => t.toFixed(3))).toEqual(['0.004', '0.004', '0.045', '0.045']);
    expect(result.state!.C.toFixed(3)).toBe('0.098');
  });

  it('slip 12.22 N, 3.06 ≥ 3; pull-off 339; slip decides; it holds', () => {
    expect(Math.abs(result.state!.slipCapacity - 12.22)).toBeLessThan(0.05);
    expect(Math.abs(factorOf(result, 'slip') - 3.06)).toBeLessThanOrEqual(0.011);
    expect(Math.abs(factorOf(result, 'pull-off') - 339)).toBeLessThan(2);
    expect(result.governs).toBe('slip');
    expect(result.verdict).toBe('holds');
    expect(result.modes.map(({ name }) => name)).not.toContain('turning');
  });
});

describe('note on holding force, example 2: pen shelf, W = 10 N, e = 60, four 30 × 10 N42', () => {
  const places = [
    [0, 10],
    [200, 10],
    [0, 110],
    [200, 110],
  ] as const;
  const bare = disc('N42', 30, 10);
  function check(magnet: typeof bare) {
    const magnets = at(places, { magnet, ground: steelGround({ gap: 1 }) });
    const load = { own: 0, ownReach: 60, load: 10, depth: 60, x: 100 };
    return checkItem(shelf(load, { magnets, consequence: 'light-at-reach' }));
  }

  it('T 2.705 and 0.246, C = 5.90; slip 21.8, 2.2 < 3: does not hold', () => {
    const result = check(bare);
    expect(result.magnets[0]!.pull.nominal.toFixed(1)).toBe('28.7');
    expect(result.state!.T.map((t) => t.toFixed(3))).toEqual(['0.246', '0.246', '2.705', '2.705']);
    expect(result.state!.C.toFixed(2)).toBe('5.90');
    expect(result.state!.slipCapacity.toFixed(1)).toBe('21.8');
    expect(factorOf(result, 'slip').toFixed(1)).toBe('2.2');
    expect(result.verdict).toBe('does not hold');
    expect(result.governs).toBe('slip');
  });

  it('with 1 mm rubber: F = 24.8, 37.3 → 3.7; pull-off 9.2; whole 5952/600 = 9.9: holds', () => {
    const result = check(withRubber(bare, 1));
    expect(result.magnets[0]!.pull.nominal.toFixed(1)).toBe('24.8');
    expect(Math.abs(result.state!.slipCapacity - 37.3)).toBeLessThanOrEqual(0.1);
    expect(factorOf(result, 'slip').toFixed(1)).toBe('3.7');
    expect(factorOf(result, 'pull-off').toFixed(1)).toBe('9.2');
    expect(factorOf(result, 'tipping').toFixed(1)).toBe('9.9');
    expect(result.verdict).toBe('holds');
  });
});

describe('note on holding force, example 3: one hook, disc 20 × 5 N42, gap 0.5, e = 30', () => {
  const result = checkItem(
    hook(1.5, 30, { magnet: disc('N42', 20, 5), ground: steelGround({ gap: 0.5 }) }, 'light-at-reach'),
  );

  it('W = 1.5: T = C = 4.5, slip 2.62, 1.7 < 3: does not hold', () => {
    expect(result.magnets[0]!.pull.nominal.toFixed(1)).toBe('17.6');
    expect(result.state!.T[0]!.toFixed(1)).toBe('4.5');
    expect(result.state!.C.toFixed(1)).toBe('4.5');
    expect(Math.abs(result.state!.slipCapacity - 2.62)).toBeLessThanOrEqual(0.011);
    expect(factorOf(result, 'slip').toFixed(1)).toBe('1.7');
    expect(result.verdict).toBe('does not hold');
  });

  it('Wmax = 0.98 N, by slip', () => {
    expect(result.largestWeight!.toFixed(2)).toBe('0.98');
    expect(result.governs).toBe('slip');
  });
});

describe('the same examples from the pulls as the note prints them, digit for digit', () => {
  const load = (down: number, reach: number, x = 0) => ({ down, side: 0, out: 0, x, y: 0, reach });
  const four = (low: number, high: number, F: number, mu: number) =>
    [low, low, high, high].map((y, i) => ({ x: i % 2 === 0 ? 0 : 200, y, R: 10, F, mu }));

  it('example 1: 12.22 N, 3.06, 339', () => {
    const { slipCapacity, factors } = holdRigid([load(4, 5, 100)], four(20, 220, 15.3, 0.2));
    expect(slipCapacity.toFixed(2)).toBe('12.22');
    expect(factors.slip.toFixed(2)).toBe('3.06');
    // 15.3 over the rounded 0.045 is 340; unrounded 339.
    expect(factors['pull-off'].toFixed(0)).toBe('339');
  });

  it('example 2: 21.8 N and 2.2; with rubber 37.3 N, 3.7, 9.2, 9.9', () => {
    const bare = holdRigid([load(10, 60, 100)], four(10, 110, 28.7, 0.2));
    expect(bare.slipCapacity.toFixed(1)).toBe('21.8');
    expect(bare.factors.slip.toFixed(1)).toBe('2.2');
    const rubber = holdRigid([load(10, 60, 100)], four(10, 110, 24.8, 0.4));
    expect(rubber.slipCapacity.toFixed(1)).toBe('37.3');
    expect(rubber.factors.slip.toFixed(1)).toBe('3.7');
    expect(rubber.factors['pull-off'].toFixed(1)).toBe('9.2');
    expect(rubber.factors.tipping.toFixed(1)).toBe('9.9');
  });

  it('example 3: 2.62 N and 1.7; 0.98 N slips, 1.96 N pulls off, three times over', () => {
    const one = [{ x: 0, y: 10, R: 10, F: 17.6, mu: 0.2 }];
    const at = (W: number) => holdRigid([load(W, 30)], one).factors;
    expect(holdRigid([load(1.5, 30)], one).slipCapacity.toFixed(2)).toBe('2.62');
    expect(at(1.5).slip.toFixed(1)).toBe('1.7');
    expect(at(0.975).slip).toBeGreaterThan(3);
    expect(at(0.985).slip).toBeLessThan(3);
    expect(at(1.955)['pull-off']).toBeGreaterThan(3);
    expect(at(1.965)['pull-off']).toBeLessThan(3);
  });
});
