/** Two lists of things: which is the same in both, which came, which went. */
export interface Matched<T> {
  readonly pairs: readonly (readonly [before: T, after: T])[];
  readonly removed: readonly T[];
  readonly added: readonly T[];
}

/**
 * Things of two lists that are the same one: first by their ids, then, as another program or a copy may have given new
 * ids, the nearest of those left over, the closest pair first.
 *
 * @param distance how far two things are from being the same; undefined: they cannot be
 * @returns pairs in the order of the later list
 */
export function matchLists<T extends { readonly id: string }>(
  before: readonly T[],
  after: readonly T[],
  distance: (before: T, after: T) => number | undefined,
): Matched<T> {
  const partner = new Map<T, T>();
  const byId = new Map(before.map((thing) => [thing.id, thing]));
  for (const thing of after) {
    const same = byId.get(thing.id);
    if (same) partner.set(thing, same);
  }
  const ids = new Set(after.map(({ id }) => id));
  const left = before.filter(({ id }) => !ids.has(id));
  const come = after.filter((thing) => !partner.has(thing));
  const candidates = left.flatMap((from) =>
    come.flatMap((to) => {
      const far = distance(from, to);
      return far === undefined ? [] : [{ from, to, far }];
    }),
  );
  // Of equal distances the same pair wins, whichever of the lists is called the earlier.
  const names = ({ from, to }: (typeof candidates)[number]) => [from.id, to.id].sort().join('\n');
  candidates.sort((a, b) => a.far - b.far || (names(a) < names(b) ? -1 : 1));
  const taken = new Set<T>();
  for (const { from, to } of candidates) {
    if (taken.has(from) || partner.has(to)) continue;
    taken.add(from);
    partner.set(to, from);
  }
  return {
    pairs: after.flatMap((to) => (partner.has(to) ? [[partner.get(to)!, to] as const] : [])),
    removed: left.filter((thing) => !taken.has(thing)),
    added: after.filter((thing) => !partner.has(thing)),
  };
}
