import { addHung, changeHung } from '../../../core/job/hung';
import { useOf } from '../../../core/job/hung-kinds';
import type { HungItem, HungKind } from '../../../core/job/hung-schema';
import { placesIn, spreadPlaces, withPlaces, type Places } from '../../../core/job/hung-places';
import type { Job, Wall } from '../../../core/job/schema';
import type { MmBox } from '../../../core/job/shape';
import { bringHungKind } from './hung-kinds';
import type { NamedChange } from './named-change';
import { nameOfObject } from './names';

/** @param offered kinds that the job may not have yet; it gets the item's */
export function putInHung(wall: Wall, item: HungItem, offered: readonly HungKind[] = []): NamedChange {
  const on = { ...wall, hung: [item] };
  return {
    name: `Put in ${nameOfObject(on, { kind: 'hung', id: item.id })}`,
    change: (job) => addHung(bringHungKind(job, item.kind, offered), wall.id, item),
  };
}

/** @param what what is changed, as the name of the change says it: "weight" */
export function setHung(wall: Wall, item: HungItem, patch: Partial<HungItem>, what: string): NamedChange {
  return {
    name: `Set ${what} of ${nameOfObject(wall, { kind: 'hung', id: item.id })}`,
    change: (job) => changeHung(job, wall.id, item.id, patch),
  };
}

/** So many of them, spread over the item; none takes them off. @param magnet id of those it gets if it has none */
export function countMagnets(wall: Wall, item: HungItem, count: number, magnet: string): NamedChange {
  const held = { ...item, magnets: item.magnets ?? { magnet, places: [] } };
  const { magnets } = count === 0 ? { magnets: undefined } : withPlaces(held, spreadPlaces(item, count));
  return setHung(wall, item, { magnets }, 'magnets');
}

export function placeMagnets(wall: Wall, item: HungItem, places: Places): NamedChange {
  return setHung(wall, item, { magnets: withPlaces(item, places).magnets }, 'magnet places');
}

/** With its magnets spread as they are. */
export function hungInto(item: HungItem, { x, y, width, height }: MmBox): HungItem {
  const placed = withPlaces(item, placesIn(item, { width, height }));
  return { ...placed, x, y, width, height };
}

/** Another kind of item; what was entered of it stays, and so does what its fall would mean unless that came with the kind. */
export function setHungKind(
  job: Job,
  wall: Wall,
  item: HungItem,
  kind: string,
  offered: readonly HungKind[] = [],
): NamedChange {
  const usual = useOf({ ...item, use: undefined }, job.hungKinds);
  const use = item.use === usual ? undefined : item.use;
  const { name, change } = setHung(wall, item, { kind, use }, 'the kind');
  return { name, change: (start) => change(bringHungKind(start, kind, offered)) };
}
