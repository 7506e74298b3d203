import { describe, expect, it } from 'vitest';
import { hardestPull } from '../../core/holding/hardest-pull';
import { blockShares, disc, discFor, isSameMagnet, type Magnet } from '../../core/holding/magnet';
import { imageIntegral } from '../../core/holding/pull';
import type { PullTest } from '../../core/holding/ground';
import { flatItem, type HeldItem } from '../../core/holding/item';
import { judgeItem } from '../../core/holding/judge-item';
import { derating } from '../../core/holding/derating';
import { pullAtPlace } from '../../core/holding/pull-at-place';
import { pullTestInWords } from '../../core/holding/pull-test-words';
import { coatingGround, steelGround } from './grounds';

const room = { hottest: 20, coldest: 20 };
const round = disc('N42', 20, 5);
const block: Magnet = { ...round, name: 'block', shape: 'block', diameter: 15, length: 20 };
const foil: Magnet = {
  ...{ ...round, name: 'foil', shape: 'foil', diameter: 50, length: 100, height: 0.8 },
  ...{ material: 'ferrite', Br: 0.2, ratedPerArea: 0.4, rated: { force: 20, thickness: 0.5, gap: 1 } },
};
const on = (magnet: Magnet, gap: number) => pullAtPlace(magnet, steelGround({ gap }), 0, room);

describe('a block', () => {
  it('counts as nine tenths of a disc of the same face, says so, and wants a test', () => {
    const diameter = Math.sqrt((4 * 15 * 20) / Math.PI);
    const asDisc = on({ ...round, diameter }, 1);
    const pull = on(block, 1);
    expect(pull.by).toBe('model');
    expect(pull.nominal).toBeCloseTo(0.9 * asDisc.nominal, 9);
    expect(pull.least).toBeCloseTo(0.9 * asDisc.least, 9);
    expect(pull.lines.find(({ symbol }) => symbol === 'Fb')!.value).toBeCloseTo(pull.nominal, 12);
    expect(asDisc.testWanted).toEqual([]);
    expect(pull.testWanted).toEqual([expect.stringContaining('same face, 19.5 mm across')]);
    expect(pull.lines.find(({ symbol }) => symbol === 'D')!.words).toContain('same face as the block');
  });

  it('never plainly holds what the disc plainly holds', () => {
    const held = (magnet: Magnet) =>
      judgeItem(
        flatItem(
          1,
          1,
          { x: 100, y: 100 },
          {
            magnets: [20, 180].map((x) => ({ magnet, x, y: 180, ground: steelGround({ gap: 1 }) })),
            consequence: 'light-at-reach',
          },
        ),
      ).verdict;
    expect(held(round)).toBe('holds');
    expect(held(block)).toBe('holds only if tested');
  });

  it('holds once the item bore its test there, or its own pull was measured; a no by its disc stays a no', () => {
    const verdict = (weight: number, changes: Partial<HeldItem>, tests: readonly PullTest[] = []) => {
      const magnets = [20, 180].map((x) => ({
        magnet: block,
        x,
        y: 180,
        ground: steelGround({ gap: 1, tests }),
      }));
      const item = flatItem(weight, 1, { x: 100, y: 100 }, { magnets, consequence: 'light-at-reach' });
      return judgeItem({ ...item, ...changes }).verdict;
    };
    expect(verdict(1, {})).toBe('holds only if tested');
    expect(verdict(1, { proofLoad: 2.9 })).toBe('holds only if tested');
    expect(verdict(1, { proofLoad: 3 })).toBe('holds');
    expect(verdict(2, { proofLoad: 100 })).toBe('does not hold');
    expect(verdict(1, {}, [{ magnet: block, between: 0, readings: [13, 13, 13] }])).toBe('holds');
  });

  it.each([
    [1, 6, 0.6, 0.1],
    [1, 10, 0.1, 3],
    [1.5, 6, 0.25, 2],
    [2, 6, 0.1, 3],
    [2, 40, 0.6, 3],
  ])(
    'of sides 1 : %d, as wide as a disc of %d mm, %d of that high, across %d mm: its image force on thick iron is counted at no more',
    (ratio, D, slenderness, gap) => {
      const R = D / 2000;
      const H = (slenderness * D) / 1000;
      const side = Math.sqrt((Math.PI * R * R) / ratio);
      const image = (force: (z: number) => number) => {
        const g = gap / 1000;
        return force(2 * g) - 2 * force(2 * g + H) + force(2 * g + 2 * H);
      };
      const ofDisc = image((z) => 4 * Math.PI ** 2 * R * R * imageIntegral(z / R));
      const ofBlock = image((z) => chargedPlates(side, side * ratio, z));
      expect(ofBlock / ofDisc).toBeGreaterThan(blockShares.counted);
      expect(ofBlock / ofDisc).toBeLessThan(blockShares.most);
    },
  );

  it('more than twice as long as wide is stood for by no disc', () => {
    expect(discFor({ ...block, length: 30 })).toBeDefined();
    expect(discFor({ ...block, length: 31 })).toBeUndefined();
    expect(on({ ...block, length: 31 }, 1).by).toBe('nothing');
  });

  it('is near an edge by its longer side', () => {
    const place = { magnet: block, x: 0, y: 0, ground: steelGround(), clearance: 25 };
    expect(derating([place], 0).isNearEdge).toBe(true);
    expect(derating([{ ...place, clearance: 30 }], 0).isNearEdge).toBe(false);
  });
});

/** Coulomb's force between two equal plates of unit charge by area, face to face, by Simpson's rule over their displacement. */
function chargedPlates(a: number, b: number, z: number): number {
  const n = 400;
  let sum = 0;
  for (let i = 0; i <= n; i++)
    for (let j = 0; j <= n; j++) {
      // Cubes of even steps: fine where the plates lie over each other.
      const [s, t] = [i / n, j / n];
      const [u, v] = [a * s ** 3, b * t ** 3];
      const weight = (k: number) => (k === 0 || k === n ? 1 : k % 2 === 1 ? 4 : 2) / (3 * n);
      const r = Math.hypot(u, v, z);
      sum += (weight(i) * weight(j) * 9 * a * b * s * s * t * t * (a - u) * (b - v) * z) / r ** 3;
    }
  return 4 * sum;
}

describe('foil', () => {
  it('pulls by its area where its maker measured under no easier conditions', () => {
    const pull = on(foil, 1);
    expect(pull.by).toBe('maker');
    expect(pull.nominal).toBeCloseTo(0.4 * 5 * 10, 12);
    expect(pull.lines[0]!.words).toContain('by its area');
  });

  it('wants a test where the gap may be larger than its maker’s: how its pull falls is not known', () => {
    expect(on(foil, 1).testWanted).toEqual([expect.stringContaining('up to 1.2 mm')]);
    expect(on(foil, 0.8).testWanted).toEqual([]);
    const overHollow = pullAtPlace(foil, steelGround({ gap: 0.8, gapMost: 1.7 }), 0, room);
    expect(overHollow).toMatchObject({ least: 0, testWanted: [expect.stringContaining('up to 1.7 mm')] });
  });

  it('is not known across a larger gap or on thinner steel', () => {
    expect(on(foil, 1.1).by).toBe('nothing');
    expect(pullAtPlace(foil, steelGround({ gap: 1, thickness: 0.45 }), 0, room).by).toBe('nothing');
  });
});

describe('a pot or ring', () => {
  it.each(['pot', 'ring'] as const)('%s: has its maker’s pull or none', (shape) => {
    const magnet: Magnet = { ...round, shape };
    expect(on(magnet, 1).by).toBe('nothing');
    expect(on({ ...magnet, rated: { force: 30, thickness: 0.5, gap: 1 } }, 1).nominal).toBe(30);
    expect(on({ ...magnet, rated: { force: 300, thickness: 10, gap: 0 } }, 1).by).toBe('nothing');
  });
});

describe('a figure that no face of its size can pull (Maxwell’s stress B² A / 2μ₀)', () => {
  it('1 cm² at 1 T: 39.8 N (1 / 2μ₀ = 397.9 kN/m², exact to the figures shown)', () => {
    expect(hardestPull({ ...block, diameter: 10, length: 10, Br: 1 })).toBeCloseTo(39.79, 2);
  });

  it('is not believed of a pot’s maker, of a test on a coating, or on steel the model does not know', () => {
    const pot = (force: number): Magnet => ({
      ...round,
      shape: 'pot',
      rated: { force, thickness: 0.5, gap: 1.2 },
    });
    expect(on(pot(500), 1).by).toBe('maker');
    expect(on(pot(600), 1)).toMatchObject({ by: 'nothing', nominal: 0 });
    expect(on(pot(600), 1).refused.join(' ')).toContain('maker’s pull gives 600 N');
    const tested = (readings: number[]) => [{ magnet: round, between: 0, readings }];
    const coated = coatingGround({ tests: tested([5000, 5000, 5000]) });
    expect(pullAtPlace(round, coated, 0, room)).toMatchObject({ by: 'nothing', nominal: 0 });
    const unknown = steelGround({ steel: 'unknown', tests: tested([500, 500, 500]) });
    expect(pullAtPlace(round, unknown, 0, room)).toMatchObject({ by: 'nothing', nominal: 0 });
  });
});

describe('a test on a magnetic coating', () => {
  const ground = coatingGround({ tests: [{ magnet: block, between: 0, readings: [4, 5, 6] }] });

  it('counts for the same magnet across the same gap alone', () => {
    expect(pullAtPlace(block, ground, 0, room).nominal).toBe(4);
    for (const other of [
      { ...block, length: 21 },
      { ...block, cover: 1 },
      { ...block, bore: 4 },
      { ...block, contact: 'rubber' as const },
    ]) {
      expect(isSameMagnet(block, other)).toBe(false);
      expect(pullAtPlace(other, ground, 0, room).by).toBe('nothing');
    }
    expect(pullAtPlace(block, ground, 0.2, room).by).toBe('nothing');
  });
});

describe('a pull test in words', () => {
  const ground = steelGround({ gap: 1 });
  const says = (readings: number[], magnet = round) =>
    pullTestInWords(ground, { magnet, between: 0, readings }).join(' ');

  it('says the true gap; the note has 13.8 N of this magnet across 1.5 mm', () => {
    expect(says([13.8, 14.2, 15])).toMatch(/as if 1\.5\d? mm lay over the steel; its layers give 1 mm/);
  });

  it('says why there is none, and what readings are too few', () => {
    expect(says([13.8])).toContain('Only 1 of at least 3 readings');
    expect(says([15.9])).toContain('the larger of the two is counted');
    expect(says([40, 41, 42])).toContain('more than the model gives');
    expect(says([2, 2, 2])).toContain('less than the model gives');
    expect(says([13, 13, 13], block)).toContain('bare discs only');
  });
});
