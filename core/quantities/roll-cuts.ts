import type { Product } from '../job/product-schema';
import type { Hundredth } from '../units';
import { rollLength, type MaterialLine } from './material-lines';
import type { Need } from './need';
import { cutFromRolls } from './rolls';

/** Which roll every piece of a film comes from. */
export interface RollCuts {
  /** Bought, the shortest first; hundredths. */
  readonly rolls: readonly { readonly length: Hundredth; readonly left: Hundredth }[];
  /** Number of its roll, from 1, for each piece of each need that has pieces, in their order. */
  readonly ofNeed: ReadonlyMap<Need, readonly number[]>;
}

/**
 * The pieces of a film dealt out to the rolls that are ordered, over all zones.
 *
 * @param needs of the film, of the whole job
 * @returns null where no rolls are known that hold the pieces
 */
export function rollCuts(product: Product, line: MaterialLine, needs: readonly Need[]): RollCuts | null {
  if (!line.packs) return null;
  const lengths = line.packs.packs
    .flatMap(({ size, count }) => Array.from({ length: count }, () => rollLength(product, line.unit, size)))
    .sort((a, b) => a - b);
  const own = needs.filter(({ item, pieces }) => item === line.item && pieces);
  const all = own.flatMap(({ pieces }) => pieces!);
  const places = cutFromRolls(all, lengths);
  if (!places) return null;
  const left = [...lengths];
  places.forEach((roll, i) => (left[roll]! -= all[i]!));
  let next = 0;
  return {
    rolls: lengths.map((length, i) => ({ length, left: left[i]! })),
    ofNeed: new Map(own.map((need) => [need, need.pieces!.map(() => places[next++]! + 1)])),
  };
}
