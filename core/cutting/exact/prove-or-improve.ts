import type { FilledPlace } from '../fill-sheet';
import type { Bounds } from '../lower-bound';
import type { NestedSheet, NestTask } from '../nest';
import { chargesOf } from '../pool/charge';
import { slicingsOf, type Slicing } from './slicings';

/** More panels than this make too many sets. */
const MOST_PANELS = 10;
const MOST_WORK = 30_000_000;

/** What certainty brought: a better plan where there is one, and bounds that nothing undercuts. */
export interface Certainty {
  /** Charged less than every other plan (see `chargesOf`); absent where the plan given is as good. */
  readonly sheets?: readonly NestedSheet[];
  readonly bounds: Bounds;
}

/**
 * Looks through every plan of a small task of rectangles cut edge to edge: which sets of panels come out of which
 * sheet, and which sets together make the cheapest plan. Stock counts bind where they can be kept.
 *
 * Each `next()` is one bounded step. The last one brings the certainty, unless the task is too large, has a panel that
 * is no rectangle, or is cut freely: then it ends without.
 */
export function* proveOrImprove(
  nestTask: NestTask,
  best: readonly NestedSheet[],
): Generator<Certainty | undefined, void, void> {
  const { task, kinds } = nestTask;
  const panels = kinds.flatMap(({ members }, kind) => members.map(() => kind));
  if (task.method !== 'edge-to-edge' || panels.length === 0 || panels.length > MOST_PANELS) return;
  if (kinds.some(({ isRectangle }) => !isRectangle)) return;
  const sheets = [...task.stock, ...task.rack];
  const slicings = slicingsOf(
    kinds,
    panels,
    task.kerf,
    Math.max(...sheets.map(({ width, height }) => Math.max(width, height))) + task.kerf,
    Math.max(...sheets.map(({ width, height }) => Math.min(width, height))) + task.kerf,
  );
  let work = 0;
  let step = slicings.next();
  for (; !step.done; step = slicings.next()) {
    work += step.value;
    if (work > MOST_WORK) return;
    yield undefined;
  }
  const sets = step.value;
  const chargeOf = chargesOf(task);
  const carriers = carriersOf(nestTask, panels, sets);
  const all = (1 << panels.length) - 1;
  const byCharge = yield* cheapest(carriers, all, ({ stock, rack }) => chargeOf(stock, rack));
  const byNumber = yield* cheapest(carriers, all, ({ rack }) => (rack < 0 ? 1 : 0));
  const byMoney = yield* cheapest(carriers, all, ({ stock, rack }) =>
    rack < 0 ? task.stock[stock]!.price : 0,
  );
  if (byCharge.cost === Infinity) return;
  const bounds = { newSheets: byNumber.cost, cost: byMoney.cost };
  const charged = best.reduce((sum, { stock, rack }) => sum + chargeOf(stock, rack), 0);
  if (byCharge.cost >= charged) yield { bounds };
  else {
    const plan = byCharge.chosen.map(({ carrier, set }): NestedSheet => {
      const slicing = sets[set]!.find((one) => lies(one, carrier))!;
      const places: FilledPlace[] = [];
      place(slicing, 0, 0, panels, places);
      const area = places.reduce((sum, { kind }) => sum + kinds[kind]!.area, 0);
      return { stock: carrier.stock, rack: carrier.rack, filled: { places, spaces: [], area } };
    });
    yield { sheets: plan, bounds };
  }
}

/** A stock format or rack piece, kerf included, and the sets of panels that come out of it. */
interface Carrier {
  readonly stock: number;
  readonly rack: number;
  readonly width: number;
  readonly height: number;
  readonly available: number;
  readonly holds: readonly number[];
}

function carriersOf({ task, kinds }: NestTask, panels: readonly number[], sets: Slicing[][]): Carrier[] {
  const { kerf, stock, rack } = task;
  const carrier = (number: number, piece: number, width: number, height: number, available: number) => {
    const size = { width: width + kerf, height: height + kerf };
    const barred = panels.reduce(
      (bits, kind, i) => (kinds[kind]!.allowed.includes(number) ? bits : bits | (1 << i)),
      0,
    );
    const holds = sets.flatMap((slicings, set) =>
      (set & barred) === 0 && slicings.some((slicing) => lies(slicing, size)) ? [set] : [],
    );
    return { stock: number, rack: piece, ...size, available, holds };
  };
  return [
    ...stock.map(({ width, height, available = Infinity }, i) => carrier(i, -1, width, height, available)),
    ...rack.flatMap(({ stock: id, width, height }, i) => {
      const number = stock.findIndex((format) => format.id === id);
      return number < 0 ? [] : [carrier(number, i, width, height, 1)];
    }),
  ];
}

function lies(slicing: Slicing, { width, height }: { width: number; height: number }): boolean {
  return slicing.width <= width && slicing.height <= height;
}

interface Choice {
  readonly cost: number;
  readonly chosen: readonly { readonly carrier: Carrier; readonly set: number }[];
}

/** Carrier after carrier: the least that every set of panels costs with those so far. */
function* cheapest(
  carriers: readonly Carrier[],
  all: number,
  price: (carrier: Carrier) => number,
): Generator<undefined, Choice, void> {
  let least: (Choice | undefined)[] = Array.from({ length: all + 1 });
  least[0] = { cost: 0, chosen: [] };
  for (const carrier of carriers) {
    const cost = price(carrier);
    const times = Math.min(carrier.available, 32 - Math.clz32(all));
    for (let time = 0; time < times; time++) {
      const next = [...least];
      let isBetter = false;
      least.forEach((before, set) => {
        if (!before) return;
        for (const held of carrier.holds) {
          if (held & set) continue;
          const total = before.cost + cost;
          if (total >= (next[set | held]?.cost ?? Infinity)) continue;
          next[set | held] = { cost: total, chosen: [...before.chosen, { carrier, set: held }] };
          isBetter = true;
        }
      });
      least = next;
      yield undefined;
      if (!isBetter) break;
    }
  }
  return least[all] ?? { cost: Infinity, chosen: [] };
}

function place(
  slicing: Slicing,
  x: number,
  y: number,
  panels: readonly number[],
  places: FilledPlace[],
): void {
  if ('panel' in slicing) {
    places.push({ kind: panels[slicing.panel]!, pose: slicing.pose, x, y, space: 0 });
    return;
  }
  const { along, first, second } = slicing;
  place(first, x, y, panels, places);
  if (along === 'x') place(second, x + first.width, y, panels, places);
  else place(second, x, y + first.height, panels, places);
}
