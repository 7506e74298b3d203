import { useOf } from '../job/hung-kinds';
import type { HungItem, PeopleBelow } from '../job/hung-schema';
import { kindWordsOfPeople } from '../job/people-below';
import { liesOn, markingOf } from '../job/pieces';
import type { Job, Wall } from '../job/schema';
import { standardGravity } from './force-units';
import type { HeldItem, ItemLoad, PlacedMagnet } from './item';
import { across, type Magnet } from './magnet';
import type { MagnetCrowd } from './magnet-crowd';
import type { Temperatures } from './pull-at-place';
import { overMarking } from './over-marking';
import { behindMagnet, type Face, type WallFaces } from './wall-faces';

/** What an item is judged on. */
export interface WallOfItems {
  readonly job: Job;
  readonly wall: Wall;
  readonly faces: WallFaces;
  /** Of the job, by id. */
  readonly magnets: ReadonlyMap<string, Magnet>;
  /** All magnets of the wall's items. */
  readonly crowd: MagnetCrowd;
}

/** A hung item as the calculation takes it, or why it cannot be put to it. */
export interface PlacedItem {
  readonly held?: HeldItem;
  /** What each of its magnets lies on. */
  readonly behind: readonly (Face | undefined)[];
  readonly faults: readonly string[];
  /** What was taken for granted of its place. */
  readonly notes: readonly string[];
}

/** Above this, kg, somebody has to have said where people are under the wall. */
export const askedAbove = 1;

/** An item on its wall: its loads, and behind each of its magnets what is there. */
export function placeItem(on: WallOfItems, item: HungItem): PlacedItem {
  const { job, wall, magnets } = on;
  const kinds = job.hungKinds ?? [];
  const none = { behind: [], notes: [] };
  if (item.weight === undefined) return { ...none, faults: ['It has not been weighed: enter its weight.'] };
  const magnet = item.magnets && magnets.get(item.magnets.magnet);
  const places = item.magnets?.places ?? [];
  if (places.length === 0)
    return { ...none, faults: ['It has no magnets: add them, or have some suggested.'] };
  if (!magnet)
    return {
      ...none,
      faults: [`Its magnet “${item.magnets!.magnet}” is not among the job’s magnets: choose another.`],
    };
  const total = item.weight + (item.load?.weight ?? 0);
  if (total > askedAbove && wall.peopleBelow === undefined)
    return {
      ...none,
      faults: [
        `It weighs more than ${askedAbove} kg with what it carries: say first where people lie, sit, play or pass under this wall, or that nobody does.`,
      ],
    };

  const rim = magnet.diameter / 2;
  const foot = item.restsOnWall ? 0 : Math.min(...places.map(([, y]) => y)) - rim;
  const found = places.map(([x, y]) => placedMagnet(on, item, magnet, { x, y }, foot));
  const temperatures = temperaturesOf(job);
  const people = peopleUnder(item, wall.peopleBelow ?? []);
  const held: HeldItem = {
    loads: loadsOf(item, foot),
    magnets: found.map(({ placed }) => placed),
    consequence: people.length > 0 ? 'above-people' : useOf(item, kinds),
    ...(item.proof !== undefined && { proofLoad: item.proof * standardGravity }),
    ...(item.stop && { hasStop: true }),
    ...(item.condition && { condition: item.condition }),
    ...(item.friction !== undefined && { measuredFriction: item.friction }),
    ...(temperatures && { temperatures }),
  };
  return {
    held,
    behind: found.map(({ face }) => face),
    faults: [],
    notes: [
      ...(people.length > 0
        ? [`Under it is a ${people.map(({ kind }) => kindWordsOfPeople[kind]).join(' and a ')}.`]
        : []),
      ...new Set(found.flatMap(({ note }) => note ?? [])),
      ...(item.pieces !== undefined && item.pieces > 1 ? [`Judged as one of ${item.pieces} alike.`] : []),
    ],
  };
}

/** At the wall; undefined where the job says nothing of it. */
export function temperaturesOf({ temperatures }: Job): Temperatures | undefined {
  return (
    temperatures && { hottest: Math.max(20, temperatures.high), coldest: Math.min(20, temperatures.low) }
  );
}

/** Stretches of the wall with people under them that the item hangs over. */
export function peopleUnder(item: HungItem, below: readonly PeopleBelow[]): readonly PeopleBelow[] {
  return below.filter(
    ({ x, width, y = 0 }) => item.x < x + width && item.x + item.width > x && item.y + item.height > y,
  );
}

interface FoundMagnet {
  readonly placed: PlacedMagnet;
  readonly face: Face | undefined;
  readonly note?: string;
}

function placedMagnet(
  on: WallOfItems,
  item: HungItem,
  magnet: Magnet,
  { x, y }: { readonly x: number; readonly y: number },
  foot: number,
): FoundMagnet {
  const own = { x: item.x + x, y: item.y + y };
  const played = markingOf(on.wall, item);
  const moved = played && liesOn(item, played) ? overMarking(on.faces, played, across(magnet)) : undefined;
  const { face, clearance } = moved ?? behindMagnet(on.faces, own, across(magnet));
  const otherItem = moved ? undefined : on.crowd.nearest(item.id, own, across(magnet));
  const { between } = item.magnets!;
  return {
    face,
    ...(moved && { note: moved.note }),
    placed: {
      magnet,
      x,
      y: y - foot,
      ground: face?.ground ?? { kind: 'none' },
      clearance,
      ...(between !== undefined && { between }),
      ...(otherItem !== undefined && { otherItem }),
    },
  };
}

/** Loads in the item's frame: x from its left edge, y from its lowest contact. */
function loadsOf(item: HungItem, foot: number): ItemLoad[] {
  const { width, height, depth, weight = 0, reach = depth / 2, load, pull } = item;
  const middle = { x: width / 2, y: height / 2 - foot };
  const hangs = { side: 0, out: 0, ...middle };
  const loads: ItemLoad[] = [
    { ...hangs, words: 'weight', payload: !load, down: weight * standardGravity, reach },
  ];
  if (load)
    loads.push({
      ...hangs,
      words: 'load',
      payload: true,
      down: load.weight * standardGravity,
      reach: load.reach,
      x: width / 2 + (load.x ?? 0),
    });
  if (pull) {
    const angle = (pull.angle * Math.PI) / 180;
    loads.push({
      words: 'pull',
      payload: false,
      down: pull.force * Math.cos(angle),
      side: 0,
      out: pull.force * Math.sin(angle),
      x: width / 2 + (pull.x ?? 0),
      y: (pull.y ?? height / 2) - foot,
      reach: pull.reach,
    });
  }
  return loads;
}
