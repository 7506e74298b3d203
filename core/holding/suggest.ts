import type { Job } from '../job/schema';
import type { WallOfItems } from './held-item';
import { withMagnets } from './advise-magnets';
import type { HungVerdict } from './judge-wall';
import { across, type Magnet } from './magnet';
import { arrange, counts, type Places } from './magnet-layouts';
import { applyTrial, rankOf, trialsOf, type Trials } from './trials';
import type { Mm } from '../units';

export interface Suggestion {
  readonly magnet: Magnet;
  readonly count: number;
  /** In the job's currency; undefined without a price of the magnet. */
  readonly price?: number;
  /** Centres from the item's lower left corner, mm. */
  readonly places: Places;
  /** As the wall is judged once `change` is applied. */
  readonly verdict: HungVerdict;
  readonly change: (job: Job) => Job;
}

export interface Suggestions {
  /** Fewest magnets; of those the least magnet. */
  readonly fewest?: Suggestion;
  /** Of those that have a price. */
  readonly cheapest?: Suggestion;
  /** Thinnest, cover and all; of those the fewest. */
  readonly thinnest?: Suggestion;
}

interface Found {
  readonly magnet: Magnet;
  readonly places: Places;
  readonly isSure: boolean;
}

/**
 * Which magnets of the job's list carry a hung item where it hangs, with its load, reach and pull, by its factor: of each kind the
 * fewest that do, in a top row and a bottom row at the item's edges, three diameters apart. Plain `holds` only, or where none
 * does, what holds if it is tested; {} if nothing does.
 */
export function suggestMagnets(on: WallOfItems, id: string): Suggestions {
  const trials = trialsOf(on, id);
  if (!trials || trials.now.verdict.isScrewed) return {};
  const found = [...on.magnets.values()].flatMap((magnet) => fewestOf(trials, magnet));
  const sure = found.filter(({ isSure }) => isSure);
  const choice = sure.length > 0 ? sure : found;
  const fewest = best(trials, choice, ({ magnet, places }) => [
    places.length,
    volume(magnet),
    thickness(magnet),
  ]);
  const cheapest = best(
    trials,
    choice.filter(({ magnet }) => magnet.price !== undefined),
    ({ magnet, places }) => [magnet.price! * places.length, places.length],
  );
  const thinnest = best(trials, choice, ({ magnet, places }) => [
    thickness(magnet),
    places.length,
    volume(magnet),
  ]);
  return { ...(fewest && { fewest }), ...(cheapest && { cheapest }), ...(thinnest && { thinnest }) };
}

/** The smallest number of one magnet that holds, and the smallest that holds if tested, where that is fewer. */
function fewestOf(trials: Trials, magnet: Magnet): Found[] {
  const found: Found[] = [];
  for (const count of counts) {
    const places = arrange(count, across(magnet), trials.item.width, trials.item.height);
    if (!places) continue;
    const { verdict } = trials.alone(trialOf(trials, magnet, places)).judgement;
    if (verdict === 'holds') return [...found, { magnet, places, isSure: true }];
    if (verdict === 'holds only if tested' && found.length === 0)
      found.push({ magnet, places, isSure: false });
  }
  return found;
}

/** The first in an order that still holds with all that hangs on the wall, the adhesive behind it and the others' magnets. */
function best(
  trials: Trials,
  all: readonly Found[],
  order: (one: Found) => readonly number[],
): Suggestion | undefined {
  const sorted = [...all].sort((a, b) => {
    const [left, right] = [order(a), order(b)];
    const i = left.findIndex((value, k) => value !== right[k]);
    return i < 0 ? 0 : left[i]! - right[i]!;
  });
  for (const { magnet, places, isSure } of sorted) {
    const trial = trialOf(trials, magnet, places);
    const verdict = trials.onWall(trial);
    const least = rankOf[isSure ? 'holds' : 'holds only if tested'];
    if (!verdict || rankOf[verdict.verdict] < least) continue;
    const count = places.length;
    return {
      magnet,
      count,
      ...(magnet.price !== undefined && { price: magnet.price * count }),
      places,
      verdict,
      change: (job) => applyTrial(job, trials.on.wall.id, trials.item.id, trial),
    };
  }
  return undefined;
}

function trialOf({ item }: Trials, magnet: Magnet, places: Places) {
  return { patch: withMagnets(item, { magnet: magnet.id!, places }) };
}

function thickness({ height, cover }: Magnet): Mm {
  return height + cover;
}

function volume({ diameter, height }: Magnet): number {
  return diameter * diameter * height;
}
