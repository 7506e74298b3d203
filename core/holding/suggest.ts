import type { Mm } from '../units';
import type { Condition } from './friction';
import type { HoldingGround } from './ground';
import { neighbourDistance } from './derating';
import { flatItem, type HeldItem, type PlacedMagnet } from './item';
import { judgeItem, type Judgement } from './judge-item';
import type { Magnet } from './magnet';
import type { Temperatures } from './pull-at-place';
import type { Consequence } from './safety';

/** A rectangular item that lies or hangs on one ground. */
export interface ItemToCarry {
  /** N, at half its width and height. */
  readonly weight: number;
  /** Of its centre of mass from the wall's face. */
  readonly reach: Mm;
  /** Of its back, where magnets can sit. */
  readonly width: Mm;
  readonly height: Mm;
  readonly ground: HoldingGround;
  readonly consequence: Consequence;
  readonly condition?: Condition;
  readonly temperatures?: Temperatures;
}

export interface Suggestion {
  readonly magnet: Magnet;
  readonly count: number;
  /** In the job's currency; undefined without a price of the magnet. */
  readonly price?: number;
  /** Centres from the item's lower left corner, mm. */
  readonly places: readonly { readonly x: Mm; readonly y: Mm }[];
  /** As it was judged: y from the rim of the lowest magnet, as nobody knows whether the item's own edge rests on the wall. */
  readonly item: HeldItem;
  readonly judgement: Judgement;
}

export interface Suggestions {
  /** Fewest magnets; of those the least magnet. */
  readonly fewest?: Suggestion;
  /** Of those that have a price. */
  readonly cheapest?: Suggestion;
  /** Thinnest, cover and all; of those the fewest. */
  readonly thinnest?: Suggestion;
}

/** How many are tried: one or two in the top row, then two rows. */
const counts = [1, 2, 4, 6, 8, 10, 12, 16, 20] as const;

/**
 * Which magnets carry an item with its factor: of each kind the fewest that do, in a top row and a bottom row at the item's
 * edges, three diameters apart. Plain `holds` only, or where none does, what holds if it is tested; {} if nothing does.
 */
export function suggestMagnets(toCarry: ItemToCarry, catalogue: readonly Magnet[]): Suggestions {
  const found = catalogue.flatMap((magnet) => fewestOf(toCarry, magnet));
  const sure = found.filter(({ judgement }) => judgement.verdict === 'holds');
  const choice = sure.length > 0 ? sure : found;
  const fewest = best(choice, ({ count, magnet }) => [count, volume(magnet), thickness(magnet)]);
  const cheapest = best(
    choice.filter(({ price }) => price !== undefined),
    ({ price, count }) => [price!, count],
  );
  const thinnest = best(choice, ({ magnet, count }) => [thickness(magnet), count, volume(magnet)]);
  return { ...(fewest && { fewest }), ...(cheapest && { cheapest }), ...(thinnest && { thinnest }) };
}

/** The smallest number of one magnet that holds, and the smallest that holds if tested, where that is fewer. */
function fewestOf(toCarry: ItemToCarry, magnet: Magnet): Suggestion[] {
  const found: Suggestion[] = [];
  for (const count of counts) {
    const places = arrange(count, magnet.diameter, toCarry.width, toCarry.height);
    if (!places) continue;
    const { weight, reach, width, height, ground, consequence, condition, temperatures } = toCarry;
    const lowest = Math.min(...places.map(({ y }) => y)) - magnet.diameter / 2;
    const magnets = places.map(({ x, y }): PlacedMagnet => ({ x, y: y - lowest, magnet, ground }));
    const item: HeldItem = {
      ...flatItem(weight, reach, { x: width / 2, y: height / 2 }, { magnets, consequence }),
      ...(condition && { condition }),
      ...(temperatures && { temperatures }),
    };
    const judgement = judgeItem(item);
    const price = magnet.price === undefined ? {} : { price: magnet.price * count };
    if (judgement.verdict === 'holds')
      return [...found, { magnet, count, places, item, judgement, ...price }];
    if (judgement.verdict === 'holds only if tested' && found.length === 0)
      found.push({ magnet, count, places, item, judgement, ...price });
  }
  return found;
}

/**
 * Places of so many magnets, from the item's lower left corner, mm: rims on the item's edges, three diameters apart or
 * further. Undefined where they do not fit.
 */
export function arrange(
  count: number,
  diameter: Mm,
  width: Mm,
  height: Mm,
): readonly { readonly x: Mm; readonly y: Mm }[] | undefined {
  if (diameter > Math.min(width, height)) return undefined;
  const [low, high] = [diameter / 2, height - diameter / 2];
  if (count === 1) return [{ x: width / 2, y: high }];
  const rows = count === 2 ? [high] : [high, low];
  const columns = count / rows.length;
  const step = (width - diameter) / (columns - 1);
  const least = neighbourDistance * diameter - 1e-9;
  if (step < least || (rows.length > 1 && high - low < least)) return undefined;
  return rows.flatMap((y) => Array.from({ length: columns }, (_, i) => ({ x: diameter / 2 + i * step, y })));
}

function best<T>(all: readonly T[], order: (one: T) => readonly number[]): T | undefined {
  return [...all].sort((a, b) => {
    const [left, right] = [order(a), order(b)];
    const i = left.findIndex((value, k) => value !== right[k]);
    return i < 0 ? 0 : left[i]! - right[i]!;
  })[0];
}

function thickness({ height, cover }: Magnet): Mm {
  return height + cover;
}

function volume({ diameter, height }: Magnet): number {
  return diameter * diameter * height;
}
