/** A stock format as a bound sees it. */
export interface CoverFormat {
  readonly price: number;
  /** How many can be bought; as many as needed if not given. */
  readonly available?: number | undefined;
}

/** Mixes of formats looked through for one weighing; beyond, the best price for a load decides. */
const MOST_MIXES = 400;

/**
 * The fewest stock sheets, and the least money, whose loads together reach `weight`: the number by the largest
 * loads, the money by the cheapest mix of whole stock sheets. Where even all that can be had does not reach it, the
 * counts are ignored.
 *
 * @param most what a stock sheet of each format carries; further entries are ignored
 * @param enough money at or below this is of no interest: less may be said
 */
export function leastCover(
  weight: number,
  formats: readonly CoverFormat[],
  most: readonly number[],
  enough = 0,
): { newSheets: number; cost: number } {
  if (weight <= 0) return { newSheets: 0, cost: 0 };
  const loads = formats
    .map(({ price, available = Infinity }, i) => ({ price, load: most[i]!, left: available }))
    .filter(({ load, left }) => load > 0 && left > 0);
  // Rounding of the sums may leave a weight where there is none.
  if (loads.length === 0 || loads.every(({ load }) => weight <= SMALL * load))
    return { newSheets: 0, cost: 0 };
  const reach = loads.reduce((sum, { load, left }) => sum + load * left, 0);
  if (reach < weight) for (const load of loads) load.left = Infinity;
  const newSheets = fewest(weight, loads);
  if (loads.length === 1) return { newSheets, cost: newSheets * loads[0]!.price };
  const cheapest = Math.min(...loads.map(({ price }) => price));
  return { newSheets, cost: Math.max(newSheets * cheapest, leastMoney(weight, loads, enough)) };
}

interface Load {
  readonly price: number;
  readonly load: number;
  left: number;
}

function fewest(weight: number, loads: readonly Load[]): number {
  let number = 0;
  for (const { load, left } of [...loads].sort((a, b) => b.load - a.load)) {
    const wanted = roundUp(weight / load);
    if (wanted <= left) return number + wanted;
    number += left;
    weight -= left * load;
  }
  return number;
}

/** Tries mixes by depth first, the best price for a load first; what the rest costs at that price cuts off. */
function leastMoney(weight: number, loads: readonly Load[], enough: number): number {
  const sorted = [...loads].sort((a, b) => a.price / a.load - b.price / b.load);
  const byRate = (rest: number, from: number): number => {
    let money = 0;
    for (let i = from; i < sorted.length; i++) {
      const { price, load, left } = sorted[i]!;
      if (rest <= load * left) return money + (rest / load) * price;
      money += left * price;
      rest -= load * left;
    }
    return Infinity;
  };
  let best = Infinity;
  let mixes = 0;
  const slack = SMALL * Math.max(weight, ...loads.map(({ load }) => load));
  const mix = (rest: number, from: number, spent: number) => {
    if (rest <= slack) {
      best = Math.min(best, spent);
      return;
    }
    const last = sorted[from];
    if (!last || spent + byRate(rest, from) > best - 1 + SMALL * best || best <= enough) return;
    if (++mixes > MOST_MIXES) return;
    const { price, load, left } = last;
    for (let number = Math.min(left, roundUp(rest / load)); number >= 0; number--) {
      mix(rest - number * load, from + 1, spent + number * price);
    }
  };
  mix(weight, 0, 0);
  const rate = roundUp(byRate(weight, 0));
  return mixes > MOST_MIXES || best === Infinity ? rate : Math.max(rate, best);
}

const SMALL = 1e-9;

/** Up to a whole number, but never because of the last digits of a division. */
function roundUp(value: number): number {
  return Math.ceil(value - SMALL * Math.max(1, value));
}
