/**
 * The fewest stock sheets, and the least money, whose loads together reach `weight`. Several formats may be
 * mixed: then the number is by the largest load, the money by the best price for a load, rounded up to whole
 * minor units.
 *
 * @param most what a sheet of each format carries; further entries are ignored
 */
export function leastCover(
  weight: number,
  formats: readonly { readonly price: number }[],
  most: readonly number[],
): { newSheets: number; cost: number } {
  if (weight <= 0) return { newSheets: 0, cost: 0 };
  let largest = 0;
  let rate = Infinity;
  let cheapest = Infinity;
  formats.forEach(({ price }, i) => {
    const load = most[i]!;
    if (load > largest) largest = load;
    if (load > 0 && price / load < rate) rate = price / load;
    if (price < cheapest) cheapest = price;
  });
  // Rounding of the sums may leave a weight where there is none.
  if (largest === 0) return { newSheets: 0, cost: 0 };
  const newSheets = roundUp(weight / largest);
  const byRate = formats.length === 1 ? 0 : roundUp(weight * rate);
  return { newSheets, cost: Math.max(newSheets * cheapest, byRate) };
}

/** Up to a whole number, but never because of the last digits of a division. */
function roundUp(value: number): number {
  return Math.ceil(value - 1e-9 * Math.max(1, value));
}
