import { addHung, changeHung, setPeopleBelow } from '../../../core/job/hung';
import { useOf } from '../../../core/job/hung-kinds';
import type { HungItem, PeopleBelow } from '../../../core/job/hung-schema';
import { placesIn, spreadPlaces, withPlaces, type Places } from '../../../core/job/hung-places';
import { boxOfMarking } from '../../../core/job/markings';
import type { Job, Wall } from '../../../core/job/schema';
import type { MmBox } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfObject, nameOfWall } from './names';

export function putInHung(wall: Wall, item: HungItem): NamedChange {
  const on = { ...wall, hung: [item] };
  return {
    name: `Put in ${nameOfObject(on, { kind: 'hung', id: item.id })}`,
    change: (job) => addHung(job, wall.id, item),
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
  const placed = withPlaces(item, placesIn(item, { x, y, width, height }));
  return { ...placed, x, y, width, height };
}

/** The board on which a game piece lies, if it lies on one. */
export function boardUnder(wall: Wall, { x, y, width, height }: MmBox): HungItem['marking'] {
  const at = { x: x + width / 2, y: y + height / 2 };
  for (const zone of wall.zones) {
    const found = zone.markings?.find((marking) => {
      if (marking.kind !== 'board') return false;
      const box = boxOfMarking(zone, marking);
      return at.x > box.x && at.x < box.x + box.width && at.y > box.y && at.y < box.y + box.height;
    });
    if (found) return { zone: zone.id, marking: found.id };
  }
  return undefined;
}

/** @param below [] says that nobody is there, undefined that nobody has said */
export function sayPeopleBelow(
  wall: Wall,
  below: readonly PeopleBelow[] | undefined,
  name = `Say who is below ${nameOfWall(wall.id)}`,
): NamedChange {
  return { name, change: (job) => setPeopleBelow(job, wall.id, below) };
}

/** Another kind of item; what was entered of it stays, and so does what its fall would mean unless that came with the kind. */
export function setHungKind(job: Job, wall: Wall, item: HungItem, kind: string): NamedChange {
  const usual = useOf({ ...item, use: undefined }, job.hungKinds);
  const use = item.use === usual ? undefined : item.use;
  return setHung(wall, item, { kind, use }, 'the kind');
}
