import { describe, expect, it } from 'vitest';
import { confirmPull } from '../../core/holding/confirmed-pull';
import { disc, type Magnet } from '../../core/holding/magnet';
import { solvePullOf } from '../../core/holding/solver/solve-pull';
import { coatingGround, steelGround } from './grounds';

const room = { hottest: 20, coldest: 20 };
const round = disc('N42', 20, 5);
const ring: Magnet = { ...round, name: 'ring', shape: 'ring', bore: 6 };
const cup = { magnet: 15, wall: 1, floor: 1.5, recess: 0.1 };
const pot: Magnet = { ...round, name: 'pot', shape: 'pot', height: 6, cup };
const confirm = (magnet: Magnet, ground = steelGround(), temperatures = room) =>
  confirmPull(magnet, ground, 0, temperatures);

describe('a disc', () => {
  const { known, solved, counted } = confirm(round);

  it('is solved as it is designed, beside the closed form', () => {
    const situation = { diameter: 20, height: 5, Br: 1.3, mur: 1.05, thickness: 0.5, gap: 1 };
    expect(solved!.nominal).toBeCloseTo(solvePullOf(situation).F, 9);
    expect(known.by).toBe('model');
    expect(confirm(round).closed).toBe(known.nominal);
    expect(Math.abs(solved!.nominal / known.nominal - 1)).toBeLessThan(0.08);
  });

  it('counts by the lower of both', () => {
    expect(counted.nominal).toBe(Math.min(solved!.nominal, known.nominal));
    expect(counted.least).toBe(Math.min(solved!.least, known.least));
    expect(counted.most).toBe(Math.max(solved!.most, known.most));
    expect(counted.testWanted).toEqual([]);
  });

  it('has its worst case with less remanence, a thinner sheet, a larger gap and weaker steel at once', () => {
    const worst = {
      ...{ diameter: 20, height: 5, mur: 1.05 },
      ...{ Br: 1.3 * 0.97, thickness: 0.5 * 0.92, gap: 1.2 },
    };
    expect(solved!.least).toBeCloseTo(0.9 * solvePullOf(worst).F, 9);
  });

  it('stronger than the data counts as the strongest of them, as by the closed form', () => {
    expect(confirm({ ...round, Br: 1.44 }).solved!.nominal).toBeCloseTo(solved!.nominal, 9);
  });
});

describe.each([
  ['ring', ring],
  ['pot', pot],
])('a %s', (_, magnet) => {
  const asUsual = confirm(magnet);

  it('is known by finite elements alone, and a test is wanted', () => {
    const { known, solved, counted } = asUsual;
    expect(known.by).toBe('nothing');
    expect(counted).toMatchObject({ by: 'model', refused: [], ...pick(solved!) });
    expect(counted.testWanted).toEqual([expect.stringContaining('finite elements alone')]);
    expect(counted.least).toBeLessThan(0.85 * counted.nominal);
    expect(counted.most).toBeGreaterThan(1.05 * counted.nominal);
  });

  it('with readings on this wall has those', () => {
    const tests = [{ magnet, between: 0, readings: [9, 10, 11] }];
    const { counted } = confirm(magnet, steelGround({ tests }));
    expect(counted).toMatchObject({ by: 'site-test', nominal: 9, testWanted: [] });
  });

  it('has its maker’s pull first, unless even the finite elements cannot explain it', () => {
    const rated = (force: number) => ({ ...magnet, rated: { force, thickness: 0.5, gap: 1 } });
    expect(confirm(rated(8)).counted).toMatchObject({ by: 'maker', nominal: 8 });
    const { solved, counted } = confirm(rated(150));
    expect(counted).toMatchObject({ by: 'model', ...pick(solved!) });
    expect(counted.testWanted).not.toEqual([]);
    expect(counted.notes.join(' ')).toContain('more than the finite elements can explain');
  });

  it.each([
    ['on a coating', coatingGround(), room, 'steel panels only'],
    ['on austenitic steel', steelGround({ steel: 'austenitic-stainless' }), room, 'mild steel'],
    ['on unknown steel', steelGround({ steel: 'unknown' }), room, 'mild steel'],
    ['on a sheet of 0.2 mm', steelGround({ thickness: 0.2 }), room, '0.2 mm thick'],
    ['across 4 mm', steelGround({ gap: 4 }), room, '4 mm; the pull is known'],
    ['at 90 °C', steelGround(), { hottest: 90, coldest: 20 }, 'lose its magnetism'],
    [
      'where a test found less than can be explained',
      steelGround({ tests: [{ magnet: round, between: 0, readings: [1, 1, 1] }] }),
      room,
      'less than the model gives',
    ],
  ] as const)('%s stays unknown', (_where, ground, temperatures, why) => {
    const { solved, unsolved, counted, known } = confirmPull(magnet, ground, 0, temperatures);
    expect(solved).toBeUndefined();
    expect(unsolved.join(' ')).toContain(why);
    expect(counted).toBe(known);
    expect(counted.nominal).toBe(0);
  });

  it('on ferritic steel pulls less, and a test is wanted for that too', () => {
    const { counted } = confirm(magnet, steelGround({ steel: 'ferritic-stainless' }));
    expect(counted.nominal).toBeLessThan(0.9 * asUsual.counted.nominal);
    expect(counted.testWanted.join(' ')).toContain('Ferritic');
  });

  it('over a hollow too deep to know counts nothing at worst', () => {
    const { counted } = confirm(magnet, steelGround({ gap: 1, gapMost: 4 }));
    expect(counted.nominal).toBeGreaterThan(0);
    expect(counted.least).toBe(0);
  });
});

describe('what has to be known of a shape', () => {
  const { bore: _, ...boreless } = ring;
  const { cup: __, ...cupless } = pot;
  it.each([
    [boreless, 'the bore is not known'],
    [{ ...ring, bore: 18.5 }, 'less than 1 mm of face'],
    [cupless, 'enter its magnet'],
    [{ ...pot, cup: { magnet: 15, wall: 1, floor: 1.5 } }, 'how far the face lies behind the rim'],
    [{ ...pot, cup: { ...cup, magnet: 19 } }, 'does not fit'],
    [{ ...pot, cup: { ...cup, floor: 5 } }, 'does not fit'],
    [{ ...pot, cup: { ...cup, wall: 0.3 } }, 'does not fit'],
    [{ ...pot, bore: 4 }, 'cup with a hole'],
    [{ ...ring, diameter: 50 }, '50 mm across'],
    [{ ...ring, height: 15 }, 'of its diameter'],
  ] as const)('%#: %s', (magnet, why) => {
    const { unsolved, counted } = confirm(magnet);
    expect(unsolved.join(' ')).toContain(why);
    expect(counted.by).toBe('nothing');
  });

  it('a deeper magnet, a thinner wall or floor each pull less', () => {
    const pull = (changes: Partial<typeof cup>) =>
      confirm({ ...pot, cup: { ...cup, ...changes } }).counted.nominal;
    const asDrawn = pull({});
    expect(pull({ recess: 0.4 })).toBeLessThan(asDrawn);
    expect(pull({ wall: 0.6 })).toBeLessThan(asDrawn);
    expect(pull({ recess: 0.1, floor: 0.6 })).toBeLessThan(asDrawn);
  });
});

function pick({ nominal, least, most }: { nominal: number; least: number; most: number }) {
  return { nominal, least, most };
}
