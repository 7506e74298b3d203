import { changeHung, putMagnet } from '../job/hung';
import type { HungItem } from '../job/hung-schema';
import type { MagnetRecord } from '../job/magnet-schema';
import { findWall } from '../job/shape';
import type { Job } from '../job/schema';
import type { WallOfItems } from './held-item';
import {
  amongItems,
  judgeAlone,
  judgeHung,
  type HungVerdict,
  type JudgedAlone,
  type JudgedHung,
} from './judge-wall';
import { across, magnetOf } from './magnet';
import { neighbourDistance } from './derating';
import type { Verdict } from './judge-item';

/** What an item would be instead. */
export interface Trial {
  /** Fields of the item replaced; undefined takes one out. */
  readonly patch: Partial<HungItem>;
  /** Not in the job's list yet: put there by the change. */
  readonly magnet?: MagnetRecord;
}

/** How good a verdict is; 0 the worst. */
export const rankOf: Readonly<Record<Verdict, number>> = {
  'does not hold': 0,
  'cannot be judged': 1,
  'holds only if tested': 2,
  holds: 3,
};

/** An item of a wall as it is judged, and what it would be judged instead; nothing of the job is changed. */
export interface Trials {
  readonly on: WallOfItems;
  readonly item: HungItem;
  readonly now: JudgedHung;
  /** By itself: quick, for choosing among many. */
  alone(trial: Trial): JudgedAlone;
  /** With all that hangs on the wall, as the wall is judged; undefined if another item would then hold worse. */
  onWall(trial: Trial): HungVerdict | undefined;
}

/** @returns undefined if the wall has no item of that id */
export function trialsOf(on: WallOfItems, id: string): Trials | undefined {
  const all = judgeHung(on);
  const now = all.find(({ item }) => item.id === id);
  if (!now) return undefined;
  const { item } = now;
  return {
    on,
    item,
    now,
    alone: (trial) => judgeAlone(withMagnet(on, trial), patched(item, trial)),
    onWall(trial) {
      const changed = applyTrial(on.job, on.wall.id, id, trial);
      const wall = findWall(changed, on.wall.id)!;
      const after = wall.hung!.find((one) => one.id === id)!;
      const magnets = withMagnet(on, trial).magnets;
      const known = new Map(
        all
          .filter((other) => other !== now && !isNear(other.item, item, on) && !isNear(other.item, after, on))
          .map((other) => [other.item, other] as const),
      );
      const among = amongItems(wall.hung!, magnets);
      const judged = judgeHung({ ...on, job: changed, wall, magnets, ...among }, known);
      const isWorse = judged.some(({ verdict }, i) => {
        const before = all[i]!.verdict;
        return verdict.id !== id && rankOf[verdict.verdict] < rankOf[before.verdict];
      });
      return isWorse ? undefined : judged.find(({ verdict }) => verdict.id === id)!.verdict;
    },
  };
}

/** The pure change behind a trial. */
export function applyTrial(job: Job, wallId: string, id: string, { patch, magnet }: Trial): Job {
  return changeHung(magnet ? putMagnet(job, magnet) : job, wallId, id, patch);
}

function withMagnet(on: WallOfItems, { magnet }: Trial): WallOfItems {
  return magnet ? { ...on, magnets: new Map([...on.magnets, [magnet.id, magnetOf(magnet)]]) } : on;
}

function patched(item: HungItem, { patch }: Trial): HungItem {
  const all = Object.entries({ ...item, ...patch }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(all) as HungItem;
}

/** Whether two items may lie over each other or share steel; the widest of all magnets sets how near that is. */
function isNear(a: HungItem, b: HungItem, { magnets }: WallOfItems): boolean {
  const reach = neighbourDistance * Math.max(...[...magnets.values()].map(across)) + 1;
  const [one, other] = [spanOf(a), spanOf(b)];
  return [0, 1].every((axis) => {
    const [from, to] = [one[axis]!, other[axis]!];
    return from.least <= to.most + reach && to.least <= from.most + reach;
  });
}

function spanOf({ x, y, width, height }: HungItem): { readonly least: number; readonly most: number }[] {
  return [
    { least: x, most: x + width },
    { least: y, most: y + height },
  ];
}
