import { derating, type Derating } from './derating';
import { designFriction, measuredFriction, usualCondition, type Friction } from './friction';
import { surfaceOf, type HoldingGround } from './ground';
import type { Magnet } from './magnet';
import type { Mm } from '../units';
import type { HeldItem, PlacedMagnet } from './item';
import { pullAtPlace, type PullAtPlace, type Temperatures } from './pull-at-place';
import type { RigidMagnet } from './rigid-item';

/** A magnet of an item as it is counted. */
export interface CountedMagnet {
  readonly place: PlacedMagnet;
  readonly pull: PullAtPlace;
  readonly derating: Derating;
  readonly friction: Friction;
}

/** What is taken where no temperatures are given. */
export const room: Temperatures = { hottest: 20, coldest: 20 };

/** How the pull of a magnet at a place is found. */
export type PullFinder = typeof pullAtPlace;

export function countMagnets(item: HeldItem, pullOf: PullFinder = knownPull): CountedMagnet[] {
  return item.magnets.map((place, i) => {
    const { magnet, ground, between = 0 } = place;
    const pull = pullOf(magnet, ground, between, item.temperatures ?? room);
    const condition = item.condition ?? usualCondition(surfaceOf(ground));
    const contact = between > 0 ? 'paper' : magnet.contact;
    const friction =
      item.measuredFriction === undefined
        ? designFriction(contact, condition)
        : measuredFriction(item.measuredFriction, contact);
    return { place, pull, derating: derating(item.magnets, i), friction };
  });
}

/** By ground and magnet, which are never changed: most magnets of a wall are alike and on the same ground. */
const known = new WeakMap<HoldingGround, WeakMap<Magnet, Map<string, PullAtPlace>>>();

function knownPull(
  magnet: Magnet,
  ground: HoldingGround,
  between: Mm,
  temperatures: Temperatures,
): PullAtPlace {
  const ofGround = known.get(ground) ?? new WeakMap<Magnet, Map<string, PullAtPlace>>();
  known.set(ground, ofGround);
  const ofMagnet = ofGround.get(magnet) ?? new Map<string, PullAtPlace>();
  ofGround.set(magnet, ofMagnet);
  const key = `${between} ${temperatures.hottest} ${temperatures.coldest}`;
  const pull = ofMagnet.get(key) ?? pullAtPlace(magnet, ground, between, temperatures);
  ofMagnet.set(key, pull);
  return pull;
}

/** As designed, or with every tolerance against them. */
export function rigidMagnets(magnets: readonly CountedMagnet[], which: 'nominal' | 'least'): RigidMagnet[] {
  return magnets.map(({ place, pull, derating: { share }, friction }) => ({
    x: place.x,
    y: place.y,
    R: place.magnet.diameter / 2,
    F: pull[which] * share,
    mu: friction.mu,
  }));
}
