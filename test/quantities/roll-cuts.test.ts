import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { productsOf } from '../../core/build-up/resolve';
import { piecesOfPlan } from '../../core/quantities/film-pieces';
import { rollCuts } from '../../core/quantities/roll-cuts';
import { cutFromRolls } from '../../core/quantities/rolls';
import { box, jobOf, wallOf, workedTakeOff } from './worked-jobs';

describe('pieces from rolls of given lengths', () => {
  it('go to the shortest roll that has them, the longest first', () => {
    // 6 fits in the roll of 10 alone, 4 into what is left of it as little as into 5: the 5 comes first.
    expect(cutFromRolls([4, 6, 1], [5, 10])).toEqual([0, 1, 0]);
  });

  it('are not cut where one finds no room', () => {
    expect(cutFromRolls([6, 6], [5, 10])).toBeNull();
    expect(cutFromRolls([1], [])).toBeNull();
  });

  it('never take more of a roll than it holds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 12 }),
        fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 5 }),
        (pieces, rolls) => {
          const lengths = [...rolls].sort((a, b) => a - b);
          const places = cutFromRolls(pieces, lengths);
          if (!places) return;
          expect(places).toHaveLength(pieces.length);
          lengths.forEach((length, roll) => {
            const taken = pieces.filter((_, i) => places[i] === roll).reduce((sum, piece) => sum + piece, 0);
            expect(taken).toBeLessThanOrEqual(length);
          });
        },
      ),
    );
  });
});

describe('the rolls of a job', () => {
  const job = (size: number) =>
    jobOf({
      products: [
        {
          id: 'w',
          name: 'Test film',
          layer: 'writable-film',
          unit: 'm2',
          rollWidth: 1220,
          packs: [{ size, price: 100 }],
        },
      ],
      quantities: { filmDirection: 'upright', filmTrim: 25, filmOverlap: 20 },
      buildUps: [{ id: 'own', kind: 'writable-film', layers: [{ kind: 'writable-film', product: 'w' }] }],
      walls: ['A', 'B'].map((id) =>
        wallOf({
          id,
          zones: [{ id: 'Z1', buildUp: 'writable-film', layers: 'own', shape: box(0, 0, 3000, 2500) }],
        }),
      ),
    });
  const cutsOf = (size: number) => {
    const made = job(size);
    const { off } = workedTakeOff(made);
    const line = off.lines.find(({ item }) => item === 'product w')!;
    return { off, cuts: rollCuts(productsOf(made).get('w')!, line, off.needs) };
  };

  it('serve all walls: six strips of 2.55 m from two rolls of 10 m', () => {
    const { off, cuts } = cutsOf(12.2);
    expect([...cuts!.ofNeed.values()].flat().sort()).toEqual([1, 1, 1, 2, 2, 2]);
    expect(cuts!.rolls.map(({ length, left }) => [length, left])).toEqual([
      [1_000_000, 235_000],
      [1_000_000, 235_000],
    ]);
    // Each need has as many places as its plan has pieces, so that the list can name a roll for every strip.
    for (const { wall, plan } of off.films) {
      const [need] = [...cuts!.ofNeed.keys()].filter((one) => one.wall === wall);
      expect(cuts!.ofNeed.get(need!)).toHaveLength(piecesOfPlan(plan, { overlap: 0, trim: 0 }).length);
    }
  });

  it('are not known where no roll holds a strip', () => {
    expect(cutsOf(2.44).cuts).toBeNull();
  });
});
