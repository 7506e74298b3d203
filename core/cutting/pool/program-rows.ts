import type { PooledSet, SetPool } from './set-pool';

export type Rows = ReturnType<typeof rowsOf>;

/** A row a kind, then one a format or rack piece that can be had only so many times. */
export function rowsOf({ nestTask: { task, kinds } }: SetPool) {
  const demand = kinds.map(({ members }) => members.length);
  const row = new Map<string, number>();
  task.stock.forEach(({ available }, stock) => {
    if (available === undefined) return;
    row.set(`${stock}/-1`, demand.length);
    demand.push(-available);
  });
  task.rack.forEach((_, rack) => {
    row.set(`rack/${rack}`, demand.length);
    demand.push(-1);
  });
  const limitOf = ({ stock, rack }: PooledSet) => row.get(rack < 0 ? `${stock}/-1` : `rack/${rack}`);
  return {
    demand,
    entriesOf(set: PooledSet): number[] {
      const limit = limitOf(set);
      return limit === undefined ? [...set.kinds] : [...set.kinds, ~limit];
    },
    worthOf(set: PooledSet, prices: Float64Array): number {
      let worth = 0;
      for (let i = 0; i < set.kinds.length; i++) worth += prices[set.kinds[i]!]!;
      if (row.size === 0) return worth;
      const limit = limitOf(set);
      return limit === undefined ? worth : worth - prices[limit]!;
    },
  };
}
