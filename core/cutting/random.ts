/** Numbers in [0, 1), the same for the same seed. */
export type Random = () => number;

/**
 * A small generator with 32 bits of state; good enough to disturb orders, not for anything secret.
 * Source: mulberry32 by Tommy Ettinger (public domain), written from memory.
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
