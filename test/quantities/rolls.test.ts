import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseRolls } from '../../core/quantities/rolls';

const metre = 100_000;
const lengthOf = (size: number) => size * metre;

describe('rolls for strips of film', () => {
  it('are as many as the strips want, not their length alone', () => {
    const choice = chooseRolls([3, 3, 3].map(lengthOf), 9, [{ size: 5, price: 10 }], lengthOf)!;
    expect(choice.packs).toEqual([{ size: 5, price: 10, count: 3 }]);
    expect(choice.leftOver).toBe(6);
  });

  it('are the longer one where the shorter have no room for a strip', () => {
    const packs = [
      { size: 5, price: 10 },
      { size: 10, price: 21 },
    ];
    expect(chooseRolls([3, 3, 3].map(lengthOf), 9, packs, lengthOf)!.packs).toEqual([
      { size: 10, price: 21, count: 1 },
    ]);
  });

  it('are none where a strip is longer than every roll', () => {
    expect(chooseRolls([lengthOf(6)], 6, [{ size: 5, price: 10 }], lengthOf)).toBeNull();
  });

  it('hold every strip whole', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 9 }),
        fc.array(fc.integer({ min: 9, max: 25 }), { minLength: 1, maxLength: 3 }),
        (pieces, sizes) => {
          const packs = sizes.map((size) => ({ size, price: 10 + size }));
          const need = pieces.reduce((sum, piece) => sum + piece, 0);
          const choice = chooseRolls(pieces.map(lengthOf), need, packs, lengthOf)!;
          const rolls = choice.packs.flatMap(({ size, count }) => Array.from({ length: count }, () => size));
          expect(
            canHold(
              [...pieces].sort((a, b) => b - a),
              rolls,
            ),
          ).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });
});

/** Whether the pieces can be cut from the rolls, every way tried. */
function canHold([piece, ...others]: readonly number[], rolls: readonly number[]): boolean {
  if (piece === undefined) return true;
  return rolls.some(
    (roll, i) =>
      roll >= piece &&
      rolls.indexOf(roll) === i &&
      canHold(
        others,
        rolls.map((one, k) => (k === i ? one - piece : one)),
      ),
  );
}
