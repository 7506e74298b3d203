import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkItem } from '../../core/holding/check-item';
import type { HoldingGround } from '../../core/holding/ground';
import { flatItem, hook, pulledItem, shelf, type HeldItem, type PlacedMagnet } from '../../core/holding/item';
import { disc, withRubber } from '../../core/holding/magnet';
import type { Consequence } from '../../core/holding/safety';
import { coatingGround, steelGround } from './grounds';

const n42 = disc('N42', 20, 5);
const corners = [
  [0, 20],
  [200, 20],
  [0, 220],
  [200, 220],
] as const;

function board(
  weight: number,
  change: (place: PlacedMagnet, i: number) => Partial<PlacedMagnet> = () => ({}),
  rest: Partial<HeldItem> = {},
  consequence: Consequence = 'light-at-reach',
): HeldItem {
  const magnets = corners.map(([x, y], i) => {
    const place = { magnet: n42, ground: steelGround() as HoldingGround, x, y };
    return { ...place, ...change(place, i) };
  });
  return { ...flatItem(weight, 5, { x: 100, y: 120 }, { magnets, consequence }), ...rest };
}

describe('the verdict', () => {
  it('holds with its factor where every case does', () => {
    const { verdict, factor, reasons, largestWeight } = checkItem(board(3));
    expect(verdict).toBe('holds');
    expect(factor).toBeGreaterThan(3);
    expect(reasons).toEqual([]);
    expect(largestWeight).toBeGreaterThan(3);
  });

  it('does not hold below its factor, and says in which mode and by how much', () => {
    const { verdict, reasons, factor } = checkItem(board(5));
    expect(verdict).toBe('does not hold');
    expect(factor).toBeLessThan(3);
    expect(reasons[0]).toMatch(/^The item slips down: it holds 2\.\d+ times over where 3 are asked for\.$/);
  });

  it('asks for 5 where it is handled', () => {
    expect(checkItem(board(3, undefined, {}, 'handled'))).toMatchObject({
      verdict: 'does not hold',
      asked: 5,
    });
    expect(checkItem(board(2, undefined, {}, 'handled')).verdict).toBe('holds');
  });

  it('asks for a test on this wall where a fall could hurt', () => {
    expect(checkItem(board(2, undefined, {}, 'could-hurt')).verdict).toBe('holds only if tested');
    const tests = [{ magnet: n42, between: 0, readings: [15, 15.2, 15.1] }];
    const tested = board(2, () => ({ ground: steelGround({ tests }) }), {}, 'could-hurt');
    expect(checkItem(tested).verdict).toBe('holds');
  });

  it('is plain once the item bore what is asked for on its very place; a no stays a no', () => {
    const proven = (weight: number, proofLoad: number) =>
      checkItem(board(weight, undefined, { proofLoad }, 'could-hurt')).verdict;
    expect(proven(2, 10)).toBe('holds');
    expect(proven(2, 9.9)).toBe('holds only if tested');
    expect(proven(5, 100)).toBe('does not hold');
    const coated = board(2, () => ({ ground: coatingGround() }), { proofLoad: 100 });
    expect(checkItem(coated).verdict).toBe('cannot be judged');
  });

  it('over people is no without a mechanical stop, whatever the magnets', () => {
    const tests = [{ magnet: n42, between: 0, readings: [15, 15.2, 15.1] }];
    const over = board(1, () => ({ ground: steelGround({ tests }) }), {}, 'above-people');
    expect(checkItem(over)).toMatchObject({ verdict: 'does not hold', largestWeight: 0 });
    expect(checkItem(over).reasons[0]).toContain('mechanical stop');
    expect(checkItem({ ...over, hasStop: true }).verdict).toBe('holds');
  });

  it('is dusty on a writable or chalk surface unless somebody says otherwise', () => {
    const on = (surface: 'writable' | 'chalk' | 'plain') =>
      board(3, () => ({ ground: steelGround({ surface }) }));
    expect(checkItem(on('plain')).verdict).toBe('holds');
    for (const surface of ['writable', 'chalk'] as const) {
      expect(checkItem(on(surface)).verdict).toBe('does not hold');
      expect(checkItem({ ...on(surface), condition: 'clean-dry' }).verdict).toBe('holds');
    }
  });

  it('wants a test where the tolerances of the place eat up what the factor leaves them', () => {
    const loose = board(3.95, () => ({ ground: steelGround({ gapMost: 2.8 }) }));
    const { verdict, reasons, modes } = checkItem(loose);
    expect(verdict).toBe('holds only if tested');
    expect(reasons.join(' ')).toContain('every tolerance against it');
    expect(modes[0]!.utilisation).toBeGreaterThan(1);
  });

  it('wants a test for magnets nearer than three diameters, of which half is counted', () => {
    const near = checkItem(board(1, (_, i) => (i === 1 ? { x: 59 } : {})));
    expect(near.verdict).toBe('holds only if tested');
    expect(near.magnets.map(({ derating }) => derating.share)).toEqual([0.5, 0.5, 1, 1]);
    expect(checkItem(board(1, (_, i) => (i === 1 ? { x: 60 } : {}))).magnets[0]!.derating.share).toBe(1);
    expect(checkItem(board(1, () => ({ otherItem: 50 }))).verdict).toBe('holds only if tested');
  });

  it('counts half within 1.5 diameters of an edge, joint, hole or screw, and nothing over it', () => {
    const F = (clearance: number) =>
      checkItem(board(0.5, (_, i) => (i === 0 ? { clearance } : {}))).magnets[0]!.derating.share;
    expect([F(30), F(29), F(0), F(-0.1)]).toEqual([1, 0.5, 0.5, 0]);
  });

  it('takes each magnet of an item over two panels or zones by its own ground', () => {
    const thin = checkItem(
      board(2, (_, i) => (i < 2 ? { ground: steelGround({ thickness: 0.3, gap: 2 }) } : {})),
    );
    expect(thin.magnets[0]!.pull.nominal).toBeLessThan(thin.magnets[2]!.pull.nominal);
    const beyond = checkItem(board(1.4, (_, i) => (i < 2 ? { ground: { kind: 'none' } } : {})));
    expect(beyond.state!.counted).toEqual([false, false, true, true]);
    expect(beyond.verdict).toBe('holds');
    expect(beyond.reasons.join(' ')).toContain('no steel');
  });

  it('counts what it does not know as absent: the rest holds, or nothing can be said', () => {
    const half = (weight: number) => board(weight, (_, i) => (i < 2 ? { ground: coatingGround() } : {}));
    expect(checkItem(half(1.4)).verdict).toBe('holds');
    expect(checkItem(half(3)).verdict).toBe('cannot be judged');
  });

  it('on an untested coating is none above light duty, and a test at most below', () => {
    const coated = (weight: number) => board(weight, () => ({ ground: coatingGround() }));
    expect(checkItem(coated(0.4)).verdict).toBe('holds only if tested');
    expect(checkItem(coated(0.6)).verdict).toBe('cannot be judged');
    expect(checkItem(coated(0.6)).factor).toBeUndefined();
    expect(checkItem(coated(0.6)).reasons.join(' ')).toContain('three places');
  });

  it('cannot be given outside the limits of the pull, with the limit named', () => {
    const { verdict, reasons, factor } = checkItem(board(0.1, () => ({ ground: steelGround({ gap: 4 }) })));
    expect(verdict).toBe('cannot be judged');
    expect(reasons.join(' ')).toContain('0.1 to 3 mm');
    expect(factor).toBeUndefined();
  });

  it('is never plain where the gap may be beyond the limits, as over a hollow, until it bore its test there', () => {
    const loose = board(0.1, () => ({ ground: steelGround({ gapMost: 4 }) }));
    const { verdict, reasons, largestWeight, factor } = checkItem(loose);
    expect(verdict).toBe('holds only if tested');
    expect(reasons.join(' ')).toContain('up to 4 mm');
    expect(factor).toBeGreaterThan(3);
    expect(largestWeight).toBe(0);
    expect(checkItem({ ...loose, proofLoad: 0.31 }).verdict).toBe('holds');
    const measured = { magnet: disc('N42', 20, 5), between: 0, readings: [13, 13.5, 14] };
    expect(
      checkItem(board(0.1, () => ({ ground: steelGround({ gapMost: 4, tests: [measured] }) }))).verdict,
    ).toBe('holds');
  });

  it('cannot be given for steel that only a test tells of, but wants the test', () => {
    const ferritic = board(1, () => ({ ground: steelGround({ steel: 'ferritic-stainless' }) }));
    expect(checkItem(ferritic).verdict).toBe('holds only if tested');
    const austenitic = board(1, () => ({ ground: steelGround({ steel: 'austenitic-stainless' }) }));
    expect(checkItem(austenitic).verdict).toBe('does not hold');
  });
});

describe('figures that nothing follows from', () => {
  it.each([
    ['no weight', board(0), 'weighs nothing'],
    ['a weight that is no number', board(NaN), 'figure is missing'],
    ['a negative weight', board(-3), 'pushes up'],
    ['no magnets', { ...board(1), magnets: [] }, 'no magnets'],
    ['a magnet below the contact edge', board(1, () => ({ y: -5 })), 'lowest contact edge'],
    ['a magnet without a place', board(1, () => ({ x: NaN })), 'no place'],
    ['a sheet of no thickness', board(1, () => ({ ground: steelGround({ thickness: 0 }) })), 'thickness'],
    ['a proof that is no weight', board(1, undefined, { proofLoad: NaN }), 'bore in a test'],
    [
      'a maker’s pull without its conditions',
      board(1, () => ({ magnet: { ...n42, rated: { force: 60, thickness: NaN, gap: 0 } } })),
      'maker',
    ],
    ['friction of 0', board(1, undefined, { measuredFriction: 0 }), 'friction'],
    [
      'a reading that is no force',
      board(1, () => ({ ground: steelGround({ tests: [{ magnet: n42, between: 0, readings: [-1] }] }) })),
      'no force',
    ],
  ])('%s', (_, item, words) => {
    const { verdict, reasons } = checkItem(item);
    expect(verdict).toBe('cannot be judged');
    expect(reasons.join(' ')).toContain(words);
  });
});

describe('the largest safe weight', () => {
  it('is just held, and a hundredth more is not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), (weight) => {
        const largest = checkItem(board(weight)).largestWeight!;
        expect(checkItem(board(largest * 0.999)).verdict).toBe('holds');
        expect(checkItem(board(largest * 1.01)).verdict).not.toBe('holds');
      }),
      { numRuns: 30, seed: 31 },
    );
  });

  it('of a shelf is what may stand at its front edge, its own weight being there already', () => {
    const magnets = corners.map(([x, y]) => ({
      magnet: withRubber(disc('N42', 30, 10), 1),
      ground: steelGround(),
      x: x - 100,
      y,
    }));
    const places = { magnets, consequence: 'light-at-reach' as const };
    const of = (own: number) =>
      checkItem(shelf({ own, ownReach: 60, load: 1, depth: 120 }, places)).largestWeight!;
    expect(of(2)).toBeLessThan(of(0));
    expect(of(100)).toBe(0);
    // At one end of the shelf less may stand than in the middle.
    const end = checkItem(shelf({ own: 2, ownReach: 60, load: 1, depth: 120, x: 150 }, places));
    expect(end.largestWeight!).toBeLessThan(of(2));
  });
});

describe('pulled items', () => {
  const places = {
    magnets: corners.map(([x, y]) => ({ magnet: n42, ground: steelGround(), x, y })),
    consequence: 'handled' as const,
  };
  const own = { weight: 1, reach: 5, x: 100, y: 120 };
  const pull = (force: number, angle: number) =>
    checkItem(pulledItem({ force, angle, x: 100, y: 120, reach: 5 }, own, places));

  it('straight off in the middle hold ΣF over the pull; straight down they slip', () => {
    const off = pull(5, 90);
    const F = off.magnets[0]!.pull.nominal;
    expect(off.modes.find(({ name }) => name === 'pull-off')!.factor).toBeCloseTo(
      // The weight of 1 N at 5 mm turns a little, too: T = 5/4 + 5 · 100 / (4 · 100²).
      F / (5 / 4 + (1 * 5 * 100) / (4 * 100 ** 2)),
      6,
    );
    expect(pull(5, 0).governs).toBe('slip');
    expect(pull(1, 0).modes.find(({ name }) => name === 'slip')!.factor).toBeLessThan(
      pull(1, 90).modes.find(({ name }) => name === 'slip')!.factor,
    );
  });
});

describe('every line of the calculation', () => {
  const { lines } = checkItem(board(3));

  it('has a symbol, words, a figure and a source', () => {
    expect(lines.length).toBeGreaterThan(25);
    for (const line of lines) {
      expect(line.symbol).not.toBe('');
      expect(line.words).not.toBe('');
      expect(line.source).not.toBe('');
      expect(Number.isFinite(line.value)).toBe(true);
    }
  });

  it('stands in the order of the work, alike magnets once', () => {
    const parts = lines.map(({ part }) => part);
    const firsts = ['wall', 'magnet', 'pull', 'tolerances', 'friction', 'loads', 'modes'].map((part) =>
      parts.indexOf(part as (typeof parts)[number]),
    );
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
    expect(lines.filter(({ symbol }) => symbol === 'F')).toHaveLength(1);
    expect(lines.filter(({ symbol }) => symbol === 'T')).toHaveLength(4);
  });

  it('tells magnets on two grounds apart', () => {
    const two = checkItem(board(2, (_, i) => (i < 2 ? { ground: steelGround({ gap: 2 }) } : {})));
    expect(two.lines.filter(({ symbol }) => symbol === 'F')).toHaveLength(2);
    expect(two.lines.filter(({ symbol }) => symbol === 'g').map(({ value }) => value)).toEqual([2, 1]);
  });

  it('says friction, pull and factor as they were used', () => {
    const of = (symbol: string) => lines.find((line) => line.symbol === symbol)!.value;
    expect(of('μ')).toBe(0.2);
    expect(of('S slip')).toBeCloseTo(of('Q') / of('V'), 12);
    expect(of('ΣF')).toBeCloseTo(4 * of('F'), 12);
    expect(of('SF')).toBe(3);
  });

  it('is there for a hook, too', () => {
    const result = checkItem(
      hook(0.5, 30, { magnet: n42, ground: steelGround({ gap: 0.5 }) }, 'light-at-reach'),
    );
    expect(result.verdict).toBe('holds');
    expect(result.lines.find(({ symbol }) => symbol === 'M')!.value).toBeCloseTo(15, 12);
  });
});
