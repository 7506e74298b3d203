import type { Mm } from '../units';
import { useOf } from '../job/hung-kinds';
import type { HungItem, PeopleBelow } from '../job/hung-schema';
import { nameOfHung } from '../job/names';
import { kindWordsOfPeople } from '../job/people-below';
import { liesOn, markingOf } from '../job/pieces';
import type { Job, Wall } from '../job/schema';
import { standardGravity } from './force-units';
import type { HeldItem, ItemLoad, PlacedMagnet } from './item';
import { across, type Magnet } from './magnet';
import type { MagnetCrowd } from './magnet-crowd';
import type { Temperatures } from './pull-at-place';
import { heaviestLight } from './safety';
import type { ItemAt } from './item-places';
import { overMarking } from './over-marking';
import { isUneven, levelOf, type WallContact } from './wall-contact';
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
  readonly contact: WallContact;
  /** Which item, but for the one asked about, reaches over a point of the wall. */
  readonly itemAt: ItemAt;
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

  const beside = places.find(([x, y]) => !isOn(item, x, y));
  if (beside)
    return {
      ...none,
      faults: [
        `One of its magnets lies beside it, at ${beside.join(', ')} mm from its lower left corner: bring it behind the item.`,
      ],
    };
  const foot = footOf(on, item, magnet);
  const found = places.map(([x, y]) => placedMagnet(on, item, magnet, { x, y }, foot));
  const doubts = doubtsOf(on, item, found, foot);
  const temperatures = temperaturesOf(job);
  const people = peopleUnder(item, wall.peopleBelow ?? []);
  const use = useOf(item, kinds);
  const isHeavy = use === 'light-at-reach' && total > heaviestLight;
  const held: HeldItem = {
    loads: loadsOf(item, foot),
    magnets: found.map(({ placed }) => placed),
    consequence: people.length > 0 ? 'above-people' : isHeavy ? 'could-hurt' : use,
    ...(item.proof !== undefined && { proofLoad: item.proof * standardGravity }),
    ...(item.stop && { hasStop: true }),
    ...(item.condition && { condition: item.condition }),
    ...(item.friction !== undefined && { measuredFriction: item.friction }),
    ...(temperatures && { temperatures }),
    ...(doubts.length > 0 && { doubts }),
  };
  return {
    held,
    behind: found.map(({ face }) => face),
    faults: [],
    notes: [
      ...(people.length > 0
        ? [`Under it is a ${people.map(({ kind }) => kindWordsOfPeople[kind]).join(' and a ')}.`]
        : []),
      ...(isHeavy
        ? [
            `With what it carries it weighs more than ${heaviestLight} kg: its fall could hurt, whatever its use says.`,
          ]
        : []),
      ...new Set(found.flatMap(({ note }) => note ?? [])),
      ...(item.pieces !== undefined && item.pieces > 1 ? [`Judged as one of ${item.pieces} alike.`] : []),
    ],
  };
}

/** Whether a place of its own is on an item, but for what rounding leaves. */
function isOn({ width, height }: HungItem, x: Mm, y: Mm): boolean {
  return x >= -0.05 && y >= -0.05 && x <= width + 0.05 && y <= height + 0.05;
}

/**
 * Where the item turns off the wall, mm above its lower edge: that edge itself, if it rests on the wall all along, or the
 * lowest rim of its magnets. What hangs before an opening or beyond the wall rests on nothing.
 */
function footOf(on: WallOfItems, item: HungItem, magnet: Magnet): Mm {
  if (item.restsOnWall && lowerEdge(item).every((at) => on.contact.isWall(at))) return 0;
  const places = item.magnets!.places;
  const touching = item.marking
    ? places
    : places.filter(([x, y]) => on.contact.isWall({ x: item.x + x, y: item.y + y }));
  const lowest = Math.min(...(touching.length > 0 ? touching : places).map(([, y]) => y));
  return lowest - magnet.diameter / 2;
}

/** Its ends and its middle, in the wall's frame. */
function lowerEdge({ x, y, width }: HungItem): { readonly x: Mm; readonly y: Mm }[] {
  return [0, 0.5, 1].map((share) => ({ x: x + share * width, y }));
}

/** What only a test can settle of the place: whether it lies flat, and what is between. */
function doubtsOf(on: WallOfItems, item: HungItem, found: readonly FoundMagnet[], foot: Mm): string[] {
  if (found.some(({ note }) => note !== undefined)) return [];
  const { contact, itemAt } = on;
  const at = ({ placed: { x, y } }: FoundMagnet) => ({ x: item.x + x, y: item.y + y + foot });
  const touching = found.filter((one) => contact.isWall(at(one)));
  const levels = [
    ...touching.map((one) => (one.face ? levelOf(one.face.zone) : contact.levelAt(at(one)))),
    ...(item.restsOnWall ? lowerEdge(item).filter(contact.isWall).map(contact.levelAt) : []),
  ];
  const over = new Set(found.flatMap((one) => itemAt(item.id, at(one)) ?? []));
  return [
    ...(isUneven(levels)
      ? [
          'It bears on parts of the wall that stand out differently far: whether its magnets lie flat only a test at its place tells.',
        ]
      : []),
    ...[...over].map(
      (other) =>
        `Its magnets and ${nameOfHung(other)} lie over each other: what is between magnet and wall only a test at its place tells.`,
    ),
  ];
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
  const otherItem = moved ? nextPiece(on.wall, item) : on.crowd.nearest(item.id, own, across(magnet));
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

/** How near a piece's magnet may come to that of the next one, mm: as near as they can lie side by side. */
function nextPiece(
  { hung = [] }: Wall,
  { id, pieces = 1, width, height, marking }: HungItem,
): Mm | undefined {
  const isOne = pieces === 1 && !hung.some((other) => other.id !== id && isSame(other.marking, marking));
  return isOne ? undefined : Math.min(width, height);
}

function isSame(one: HungItem['marking'], other: HungItem['marking']): boolean {
  return one !== undefined && one.zone === other?.zone && one.marking === other.marking;
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
