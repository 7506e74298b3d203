/** A pack as it is sold. */
export interface PackOffered {
  /** What it holds, > 0. */
  readonly size: number;
  /** Minor units of the currency, whole; 0: unknown. */
  readonly price: number;
}

export interface PackChoice {
  /** Largest first; only those that are bought. */
  readonly packs: readonly (PackOffered & { readonly count: number })[];
  /** What they hold together. */
  readonly total: number;
  /** Beyond the need. */
  readonly leftOver: number;
  /** Minor units; null where a price is unknown. */
  readonly cost: number | null;
  /** false: so much is needed that most of it is filled with the pack of the best price before the rest is chosen. */
  readonly exact: boolean;
}

/**
 * The packs that hold at least `need` and cost least; of equal cost those that leave least over, of these the fewest.
 * Where a price is unknown, least is left over first, then the fewest are taken.
 *
 * Exact, by dynamic programming on whole amounts: sizes are counted in thousandths (millionths where a size has more
 * decimals), the need is rounded up to the next. Needs beyond any that the packs' own arithmetic could still change are
 * filled with the pack of the best price first (see `base`).
 *
 * @param packs no pack: null
 * @example choosePacks(11.03, [{ size: 2.5, price: 3000 }, { size: 10, price: 9000 }])?.total // 12.5
 */
export function choosePacks(need: number, packs: readonly PackOffered[]): PackChoice | null {
  if (packs.length === 0) return null;
  const scale = scaleOf(packs);
  const isPriced = packs.every(({ price }) => price > 0);
  const whole = packs.map(({ size }) => Math.round(size * scale));
  const unit = whole.reduce(greatestDivisor);
  const sizes = whole.map((size) => size / unit);
  const goal = Math.max(0, Math.ceil(roundedUp(need * scale) / unit));
  const costs = isPriced ? packs.map(({ price }) => price) : sizes;
  const { first, firstCount, rest, exact } = base(goal, sizes, costs);
  const counts = cover(rest, sizes, costs);
  counts[first]! += firstCount;
  const bought = packs.map((pack, i) => ({ size: pack.size, price: pack.price, count: counts[i]! }));
  const held = sizes.reduce((sum, size, i) => sum + size * counts[i]!, 0) * unit;
  const chosen = bought.filter(({ count }) => count > 0).sort((a, b) => b.size - a.size || a.price - b.price);
  return {
    packs: chosen,
    total: held / scale,
    leftOver: Math.max(0, held - roundedUp(need * scale)) / scale,
    cost: chosen.every(({ price }) => price > 0)
      ? chosen.reduce((sum, { price, count }) => sum + price * count, 0)
      : null,
    exact,
  };
}

/** Largest table that is filled, states. */
const MOST_STATES = 2_000_000;

/**
 * How many packs of the best price per amount (the largest of them) can be bought before anything is weighed up.
 *
 * Among as many others as that pack is large, some together hold a multiple of it (pigeonhole on the remainders of
 * their running sums) and can be changed for it at no greater cost and no greater number. So some best choice has fewer
 * others than that, and they hold at most (size − 1) · largest.
 */
function base(goal: number, sizes: readonly number[], costs: readonly number[]) {
  let first = 0;
  for (let i = 1; i < sizes.length; i++) {
    const better = costs[i]! * sizes[first]! - costs[first]! * sizes[i]!;
    if (better < 0 || (better === 0 && sizes[i]! > sizes[first]!)) first = i;
  }
  const size = sizes[first]!;
  const mostByOthers = (size - 1) * Math.max(...sizes);
  const kept = Math.min(mostByOthers, MOST_STATES);
  const firstCount = Math.max(0, Math.floor((goal - kept) / size));
  const rest = goal - firstCount * size;
  return { first, firstCount, rest, exact: firstCount === 0 || mostByOthers <= MOST_STATES };
}

/** Counts of packs that hold `goal` or more: least cost, then least held, then fewest. */
function cover(goal: number, sizes: readonly number[], costs: readonly number[]): number[] {
  const cost = new Float64Array(goal + 1);
  const held = new Float64Array(goal + 1);
  const count = new Float64Array(goal + 1);
  const last = new Uint8Array(goal + 1);
  for (let amount = 1; amount <= goal; amount++) {
    let best = -1;
    for (let i = 0; i < sizes.length; i++) {
      const before = Math.max(0, amount - sizes[i]!);
      const [c, h, n] = [cost[before]! + costs[i]!, held[before]! + sizes[i]!, count[before]! + 1];
      if (best >= 0 && !isBefore(c, h, n, cost[amount]!, held[amount]!, count[amount]!)) continue;
      best = i;
      cost[amount] = c;
      held[amount] = h;
      count[amount] = n;
    }
    last[amount] = best;
  }
  const counts = sizes.map(() => 0);
  for (let left = goal; left > 0; left = Math.max(0, left - sizes[last[left]!]!)) counts[last[left]!]!++;
  return counts;
}

function isBefore(c: number, h: number, n: number, cost: number, held: number, count: number): boolean {
  return c < cost || (c === cost && (h < held || (h === held && n < count)));
}

function scaleOf(packs: readonly PackOffered[]): number {
  const isWhole = ({ size }: PackOffered) => Math.abs(size * 1000 - Math.round(size * 1000)) < 1e-6;
  return packs.every((pack) => isWhole(pack) && pack.size >= 0.001) ? 1000 : 1_000_000;
}

/** Up to the next whole, unless binary dust alone lies above the last. */
function roundedUp(amount: number): number {
  const near = Math.round(amount);
  return Math.abs(amount - near) <= 1e-9 * Math.max(1, near) ? near : Math.ceil(amount);
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
