import { changeWall, moved } from '../../../core/job/changes';
import { defaultLayout } from '../../../core/job/defaults';
import { bringKinds, ownKindsOf } from '../../../core/job/fitting-kinds';
import { findKind } from '../../../core/job/kind-names';
import { boxAboutBoxes, extentOf } from '../../../core/job/extent';
import type { HungItem } from '../../../core/job/hung-schema';
import { findPhoto } from '../../../core/job/photos';
import type { ReadObject } from '../../../core/job/read-objects-text';
import type { Fitting, Job, Layout, Opening, OwnKind, Wall, Zone } from '../../../core/job/schema';
import { allObjects, idsFor, prefixOf } from '../../../core/job/several';
import { findObject, type ObjectRef, type WallObject } from '../../../core/job/shape';
import type { NamedChange } from './named-change';

/**
 * Objects read from a text, put on a wall at the place they have in it, or beside it where the same things are there
 * already. Each gets an id that the wall has not, is not locked, and lays a stock sheet that this job has. Kinds of fitting
 * come along; one that this job has by that name stays as it is here.
 *
 * @returns the change, what the objects are called after it, and what was done to fit them in, in sentences
 */
export function pasteObjects(
  job: Job,
  wall: Wall,
  read: readonly ReadObject[],
  kinds: readonly OwnKind[] = [],
): NamedChange & { pasted: ObjectRef[]; notes: string[] } {
  const by = freePlace(wall, read);
  const takeId = idsFor(wall);
  const notes = new Set<string>();
  for (const kind of kinds) {
    const here = findKind(ownKindsOf(job), kind.name);
    if (here && JSON.stringify({ ...here, ...kind }) !== JSON.stringify(here))
      notes.add(`The kind “${here.name}” keeps the figures that it has in this job.`);
  }
  const made = read.map(({ as, object, sheet }) => {
    const { locked: _, runsOn: __, ...free } = moved(object as Zone, by, 0);
    const { layout } = free;
    const laid = layout ? layoutHere(job, layout, sheet) : null;
    if (laid?.note) notes.add(laid.note);
    const id = takeId(prefixOf(object.id, as));
    const { markings } = free;
    const here = markings?.filter(({ photo }) => photo === undefined || findPhoto(job, photo));
    if (markings && here!.length < markings.length)
      notes.add('This job has not the picture that is marked on a zone: put that on again.');
    return {
      as,
      object: {
        ...free,
        ...(markings && { markings: here!.length > 0 ? here : undefined }),
        ...(layout && { layout: laid?.layout }),
        id,
      } as WallObject,
    };
  });
  const of = <T>(kind: ObjectRef['kind']) =>
    made.filter(({ as }) => as === kind).map(({ object }) => withoutNothing(object) as T);
  return {
    name: pasteName(read.length, kinds.length),
    change: (start) =>
      changeWall(bringKinds(start, kinds), wall.id, (found) => {
        const hung = of<HungItem>('hung');
        return {
          ...found,
          openings: [...found.openings, ...of<Opening>('opening')],
          fittings: [...found.fittings, ...of<Fitting>('fitting')],
          zones: [...found.zones, ...of<Zone>('zone')],
          ...(hung.length > 0 && { hung: [...(found.hung ?? []), ...hung] }),
        };
      }),
    pasted: made.map(({ as, object }) => ({ kind: as, id: object.id })),
    notes: [...notes],
  };
}

function pasteName(objects: number, kinds: number): string {
  if (objects === 0 && kinds > 0) return 'Paste kinds of fitting';
  return `Paste ${objects === 1 ? '1 object' : `${objects} objects`}`;
}

/** How far to the right they have to go so that none lies on its like. */
function freePlace(wall: Wall, read: readonly ReadObject[]): number {
  const placeOf = (as: string, object: WallObject, by = 0) => {
    const { x, y, width, height } = extentOf(object);
    return [as, Math.round((x + by) * 100), Math.round(y * 100), width, height].join(' ');
  };
  const taken = new Set(allObjects(wall).map((ref) => placeOf(ref.kind, findObject(wall, ref)!)));
  if (read.length === 0) return 0;
  const step = Math.round(boxAboutBoxes(read.map(({ object }) => extentOf(object))).width) + 100;
  let by = 0;
  while (by < 50 * step && read.some(({ as, object }) => taken.has(placeOf(as, object, by)))) by += step;
  return by;
}

/** The layout with stock sheets of this job: the same by id and size, else by size, else the one that a new zone has. */
function layoutHere(
  job: Job,
  layout: Layout,
  sheet: ReadObject['sheet'],
): { layout: Layout | undefined; note: string | null } {
  const isAlike = (width: number, height: number) =>
    !sheet || (sheet.width === width && sheet.height === height);
  const alike = job.stock.filter(({ width, height }) => isAlike(width, height));
  const stock = (alike.find(({ id }) => id === layout.stock) ?? (sheet ? alike[0] : undefined))?.id;
  const size = sheet ? `${sheet.width} × ${sheet.height}` : layout.stock;
  if (stock === undefined) {
    const usual = defaultLayout(job);
    const instead = usual ? `it takes ${usual.stock} instead` : 'it has no panels';
    return {
      layout: usual && { ...layout, ...without(usual.stock) },
      note: `This job has no stock sheet ${size}: ${instead}.`,
    };
  }
  return stock === layout.stock && !refersElsewhere(job, layout)
    ? { layout, note: null }
    : { layout: { ...layout, ...without(stock) }, note: null };
}

/** Mixed formats are chosen anew among the stock sheets of this job. */
function without(stock: string): Partial<Layout> {
  return { stock, stocks: undefined, cutFrom: undefined };
}

function refersElsewhere(job: Job, { stocks = [], cutFrom = [] }: Layout): boolean {
  return [...stocks, ...cutFrom].some((id) => !job.stock.some((sheet) => sheet.id === id));
}

/** A field that is not there is not written as nothing. */
function withoutNothing<T extends object>(object: T): T {
  const cleaned = Object.entries(object).flatMap(([field, value]: [string, unknown]) => {
    if (value === undefined) return [];
    return [[field, field === 'layout' ? withoutNothing(value as object) : value]];
  });
  return Object.fromEntries(cleaned) as T;
}
