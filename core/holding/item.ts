import type { Mm } from '../units';
import type { Condition } from './friction';
import type { HoldingGround } from './ground';
import type { Magnet } from './magnet';
import type { Temperatures } from './pull-at-place';
import type { RigidLoad } from './rigid-item';
import type { Consequence } from './safety';

/** A load of an item. `payload`: what "the largest safe weight" asks about; the rest of the item stays as it is. */
export interface ItemLoad extends RigidLoad {
  readonly words: string;
  readonly payload: boolean;
}

/** A magnet of the item and what lies behind it; x, y in the item's frame, y above its lowest contact edge. */
export interface PlacedMagnet {
  readonly magnet: Magnet;
  readonly x: Mm;
  readonly y: Mm;
  /** Its own: an item may reach over two panels or zones. */
  readonly ground: HoldingGround;
  /** Paper or card between magnet and wall. */
  readonly between?: Mm;
  /** From the magnet's rim to the nearest panel edge, joint, hole or screw head; below 0: over it. Absent: none is near. */
  readonly clearance?: Mm;
  /** Centre to centre to the nearest magnet of another item; absent: none is near. */
  readonly otherItem?: Mm;
}

export interface HeldItem {
  readonly loads: readonly ItemLoad[];
  readonly magnets: readonly PlacedMagnet[];
  readonly consequence: Consequence;
  /**
   * Weight that the item bore on this very place at the same reach, N, itself counted: the test that a verdict asks for. Of
   * hanging loads only.
   */
  readonly proofLoad?: number;
  /** Something mechanical catches the item should the magnets let go. */
  readonly hasStop?: boolean;
  /** Absent: as the surface usually is. */
  readonly condition?: Condition;
  /** Friction as measured on this wall, in place of the table. */
  readonly measuredFriction?: number;
  /** Absent: 20 °C. */
  readonly temperatures?: Temperatures;
  /** Sentences on what of its place only a test can settle. */
  readonly doubts?: readonly string[];
}

interface Places {
  readonly magnets: readonly PlacedMagnet[];
  readonly consequence: Consequence;
}

/**
 * A picture, board or sheet that lies against the wall.
 *
 * @param weight N, at `reach` mm from the wall's face and `x`, `y` in the item's frame
 */
export function flatItem(
  weight: number,
  reach: Mm,
  at: { readonly x: Mm; readonly y: Mm },
  places: Places,
): HeldItem {
  return { loads: [down('weight', weight, reach, at, true)], ...places };
}

/**
 * A shelf or tray with what stands on it taken at its front edge, and at one end if it can stand there.
 *
 * @param own weight of the shelf, N, at `ownReach` mm; `load` N at `depth` mm from the wall and `x` mm from the middle
 */
export function shelf(
  shelf: {
    readonly own: number;
    readonly ownReach: Mm;
    readonly load: number;
    readonly depth: Mm;
    readonly x?: Mm;
  },
  places: Places,
): HeldItem {
  const loads = [
    down('shelf', shelf.own, shelf.ownReach, { x: 0, y: 0 }, false),
    down('load at the front edge', shelf.load, shelf.depth, { x: shelf.x ?? 0, y: 0 }, true),
  ];
  return { loads, ...places };
}

/** One disc with a hook: it turns about its own lower rim, y = R. `reach` from the wall's face to the load, mm. */
export function hook(
  weight: number,
  reach: Mm,
  place: Omit<PlacedMagnet, 'x' | 'y'>,
  consequence: Consequence,
): HeldItem {
  const y = place.magnet.diameter / 2;
  return {
    loads: [down('weight on the hook', weight, reach, { x: 0, y }, true)],
    magnets: [{ ...place, x: 0, y }],
    consequence,
  };
}

/**
 * Something that is pulled: a cord, a blind, a drawer.
 *
 * @param pull N; `angle` degrees from straight down (0) to straight off the wall (90); own weight as of a flat item
 */
export function pulledItem(
  pull: {
    readonly force: number;
    readonly angle: number;
    readonly x: Mm;
    readonly y: Mm;
    readonly reach: Mm;
  },
  own: { readonly weight: number; readonly reach: Mm; readonly x: Mm; readonly y: Mm },
  places: Places,
): HeldItem {
  const radians = (pull.angle * Math.PI) / 180;
  const pulled: ItemLoad = {
    words: 'pull',
    payload: true,
    down: pull.force * Math.cos(radians),
    out: pull.force * Math.sin(radians),
    side: 0,
    x: pull.x,
    y: pull.y,
    reach: pull.reach,
  };
  return { loads: [down('weight', own.weight, own.reach, own, false), pulled], ...places };
}

function down(
  words: string,
  weight: number,
  reach: Mm,
  { x, y }: { readonly x: Mm; readonly y: Mm },
  payload: boolean,
): ItemLoad {
  return { words, payload, down: weight, side: 0, out: 0, x, y, reach };
}
