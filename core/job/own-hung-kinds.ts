import { tidy, withoutUndefined } from './changes';
import { isSame } from './differences/difference';
import { hungFigures, hungKindInWords, isPiece, readyHungKinds, useOf, type HungFigures } from './hung-kinds';
import { placesIn, untested, withPlaces } from './hung-places';
import type { HungItem, HungKind } from './hung-schema';
import { faultOfName, findKind, isSameName, withMissing } from './kind-names';
import { mostHungKinds } from './limits';
import type { Alternative, Job, Wall } from './schema';
import { isLocked } from './several';

/*
 * Kinds of hung item that the user has made, by their names: an item says the name of its kind. The ready kinds and their
 * figures stand in `hung-kinds.ts`.
 */

export interface HungPlace {
  readonly wallId: string;
  readonly item: HungItem;
  /** Not of the alternative on the walls. */
  readonly isElsewhere: boolean;
}

export function ownHungKindsOf({ hungKinds = [] }: Job): readonly HungKind[] {
  return hungKinds;
}

/**
 * Why a kind cannot be called so, in a sentence, or null.
 *
 * @param others the kinds it has to differ from
 */
export function faultOfHungKindName(name: string, others: readonly HungKind[]): string | null {
  return faultOfName(name, usualNames, others);
}

const usualNames: readonly string[] = [...readyHungKinds.map(hungKindInWords), 'hung item', 'kind'];

/** An item as a kind of the job's own: what a new one is; its place, name, tests and fixing points are its own. */
export function kindOfItem(name: string, item: HungItem, own: readonly HungKind[]): HungKind {
  const { width, height, depth, weight, reach, load, pull, magnets, restsOnWall } = item;
  const use = useOf(item, own);
  const figures = { width, height, depth, weight, reach, load, pull, magnets, restsOnWall, use };
  const piece = item.marking !== undefined || isPiece(item.kind, own);
  return { name, item: withoutUndefined(figures), ...(piece && { piece }) };
}

/** Figures of a kind in another size: its magnets as far from the middle, in proportion, as they were. */
export function sizedFigures(
  figures: HungFigures,
  size: Partial<Pick<HungFigures, 'width' | 'height' | 'depth'>>,
): HungFigures {
  const to = { ...figures, ...size };
  return withPlaces(to, placesIn(figures, to));
}

/** Every item of a kind, wall by wall, those of the other alternatives last. */
export function hungOfKind(job: Job, name: string): HungPlace[] {
  const of = (wallId: string, items: readonly HungItem[], isElsewhere: boolean): HungPlace[] =>
    items.filter(({ kind }) => isSameName(kind, name)).map((item) => ({ wallId, item, isElsewhere }));
  return [
    ...job.walls.flatMap(({ id, hung = [] }) => of(id, hung, false)),
    ...(job.alternatives ?? []).flatMap(({ hung = {} }) =>
      Object.entries(hung).flatMap(([id, items]) => of(id, items, true)),
    ),
  ];
}

/** Those that the job has not, after its own; one that it has by that name stays as it is. */
export function bringHungKinds(job: Job, kinds: readonly HungKind[]): Job {
  const own = ownHungKindsOf(job);
  const brought = withMissing(own, kinds, mostHungKinds);
  return brought === own ? job : { ...job, hungKinds: [...brought] };
}

/** Fields of a kind replaced (undefined takes one out); under another name its items follow. What hangs stays as it is. */
export function changeHungKind(job: Job, name: string, patch: Partial<HungKind>): Job {
  const kind = findKind(ownHungKindsOf(job), name);
  if (!kind) return job;
  const changed = withoutUndefined({ ...kind, ...patch });
  const next = { ...changed, item: withoutUndefined(changed.item) };
  const kinds = ownHungKindsOf(job).map((one) => (one === kind ? next : one));
  const named = { ...job, hungKinds: kinds };
  if (kind.name === next.name) return named;
  return mapHung(named, (item) => (isSameName(item.kind, kind.name) ? { ...item, kind: next.name } : item));
}

/** Items of the kind must have been given another before. */
export function removeHungKind(job: Job, name: string): Job {
  const { hungKinds: own = [], ...rest } = job;
  const left = own.filter((one) => !isSameName(one.name, name));
  if (left.length === own.length) return job;
  return left.length > 0 ? { ...job, hungKinds: left } : (rest as Job);
}

/** Every item of a kind on the walls with the figures of its kind, about its own middle; locked ones stay. */
export function giveHungFigures(job: Job, name: string): Job {
  const figures = hungFigures(name, ownHungKindsOf(job));
  if (!figures) return job;
  const given = (item: HungItem): HungItem => {
    if (!isSameName(item.kind, name) || isLocked(item)) return item;
    const { width, height, weight, reach, load, pull, magnets, restsOnWall } = figures;
    const x = tidy(item.x + (item.width - width) / 2);
    const y = tidy(item.y + (item.height - height) / 2);
    const rest = { weight, reach, load, pull, magnets, restsOnWall, use: undefined };
    const next = withoutUndefined({ ...untested(item), ...figures, ...rest, x, y }) as HungItem;
    return isSame(item, next, 0) ? item : next;
  };
  const walls = job.walls.map((wall) => mapWall(wall, given));
  return walls.some((wall, i) => wall !== job.walls[i]) ? { ...job, walls } : job;
}

/** On the walls and in every other alternative. */
function mapHung(job: Job, change: (item: HungItem) => HungItem): Job {
  const walls = job.walls.map((wall) => mapWall(wall, change));
  const alternatives = job.alternatives?.map((alternative) => {
    const { hung } = alternative;
    if (!hung) return alternative;
    const lists = Object.entries(hung).map(([id, items]) => [id, mapped(items, change)] as const);
    return { ...alternative, hung: Object.fromEntries(lists) } as Alternative;
  });
  return { ...job, walls, ...(alternatives && { alternatives }) };
}

function mapWall(wall: Wall, change: (item: HungItem) => HungItem): Wall {
  const hung = wall.hung && mapped(wall.hung, change);
  return hung === wall.hung ? wall : ({ ...wall, hung } as Wall);
}

function mapped(items: HungItem[], change: (item: HungItem) => HungItem): HungItem[] {
  const next = items.map(change);
  return next.every((item, i) => item === items[i]) ? items : next;
}
