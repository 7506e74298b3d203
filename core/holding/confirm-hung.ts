import type { Job, Wall } from '../job/schema';
import { confirmPull, type ConfirmedPull } from './confirmed-pull';
import type { PullFinder } from './counted-magnet';
import type { HoldingGround } from './ground';
import { judgeItem } from './judge-item';
import { judgeAlone, judgeHung, wallOfItems, type HungVerdict } from './judge-wall';
import type { Magnet } from './magnet';
import type { HoldingZone } from './zone-ground';

/** A kind of magnet of an item where it lies, with its pull by both ways. */
export interface ConfirmedMagnet extends ConfirmedPull {
  readonly name: string;
  /** How many of the item's magnets it stands for. */
  readonly count: number;
}

/** An item with the pulls of its magnets confirmed by finite elements. */
export interface ConfirmedHung {
  readonly id: string;
  /** A magnet on two grounds is two; [] where the item cannot be put to the calculation. */
  readonly magnets: readonly ConfirmedMagnet[];
  /** What follows from the lower of both; of a ring or cup without test or maker's pull, from the finite elements. */
  readonly verdict: HungVerdict;
}

/**
 * Solves the field of every kind of magnet of an item and judges it anew. Changes no verdict of the job: what is shown on the wall
 * and on paper stays with tests, makers' pulls and the closed form.
 *
 * Takes some seconds: for a worker. Undefined if the wall has no item of that id.
 */
export function confirmHung(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  id: string,
): ConfirmedHung | undefined {
  const on = wallOfItems(job, wall, zones);
  const item = (wall.hung ?? []).find((one) => one.id === id);
  if (!item) return undefined;
  const { placed, judgement } = judgeAlone(on, item);
  const kinds: Kind[] = [];
  const pullOf: PullFinder = (magnet, ground, between, temperatures) => {
    const same = kinds.find((kind) => kind.magnet === magnet && kind.ground === ground);
    if (same) {
      same.count++;
      return same.confirmed.counted;
    }
    const confirmed = confirmPull(magnet, ground, between, temperatures);
    kinds.push({ magnet, ground, count: 1, confirmed });
    return confirmed.counted;
  };
  const confirmed = placed.held ? judgeItem(placed.held, pullOf) : judgement;
  const judged = judgeHung(on, new Map([[item, { item, placed, judgement: confirmed }]]));
  return {
    id,
    magnets: kinds.map(({ magnet, count, confirmed: pulls }) => ({ name: magnet.name, count, ...pulls })),
    verdict: judged.find((one) => one.item === item)!.verdict,
  };
}

/** Of one item, what lies between is the same everywhere, and so are the temperatures. */
interface Kind {
  readonly magnet: Magnet;
  readonly ground: HoldingGround;
  count: number;
  readonly confirmed: ConfirmedPull;
}
