import { describe, expect, it } from 'vitest';
import { disc, discFor, isSameMagnet, type Magnet } from '../../core/holding/magnet';
import { flatItem } from '../../core/holding/item';
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
  it('pulls as a disc of the same face, says so, and wants a test', () => {
    const diameter = Math.sqrt((4 * 15 * 20) / Math.PI);
    const asDisc = on({ ...round, diameter }, 1);
    const pull = on(block, 1);
    expect(pull.by).toBe('model');
    expect(pull.nominal).toBeCloseTo(asDisc.nominal, 9);
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

describe('foil', () => {
  it('pulls by its area where its maker measured under no easier conditions', () => {
    const pull = on(foil, 1);
    expect(pull.by).toBe('maker');
    expect(pull.nominal).toBeCloseTo(0.4 * 5 * 10, 12);
    expect(pull.lines[0]!.words).toContain('by its area');
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
