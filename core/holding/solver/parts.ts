import type { BhCurve } from './bh-curve';

/*
 * What stands in the field, as rings of rectangular section round the axis, metres. z runs up; the magnet's face (of a cup, its
 * rim) is at z = 0, the steel's at z = −g:
 *
 *      axis
 *      │      ┌───────────┐ z = H
 *      │      │ magnet    │             a cup round a magnet:   ┌───────────────┐ z = H
 *      │      └───────────┘ z = 0                               │ ┌───────────┐ │ z = H − floor
 *      │    bore          R                                     │ │  magnet   │ │
 *      ├───────────────────────────────┐ z = −g                 │ └───────────┘ │ z = recess
 *      └───────────────────────────────┘ z = −g − t             └─┘           └─┘ z = 0
 *        sheet, to r = plate
 */

/** Steel round a magnet, open towards the sheet; lengths in m. */
export interface Cup {
  /** Radius of the magnet in it, which stands on its floor. */
  readonly magnetR: number;
  readonly wall: number;
  readonly floor: number;
  /** How far the magnet's face lies behind the rim. */
  readonly recess: number;
  /** Absent: the steel of the sheet. */
  readonly curve?: BhCurve;
}

export interface MagnetAboveSheet {
  /** Outer radius and height, of a cup its own. */
  readonly R: number;
  readonly H: number;
  /** Radius of the hole through a ring; absent: none. */
  readonly bore?: number;
  readonly cup?: Cup;
  readonly t: number;
  readonly g: number;
  /** Radius of the sheet. */
  readonly plate: number;
}

export type Substance =
  | { readonly is: 'air' }
  | { readonly is: 'magnet'; readonly Br: number; readonly mur: number }
  | { readonly is: 'steel'; readonly curve: BhCurve };

export interface Part {
  readonly r: readonly [inner: number, outer: number];
  readonly z: readonly [lower: number, upper: number];
  readonly of: Substance;
}

/**
 * @param magnet remanence along the axis, T, and recoil permeability
 * @throws Error if a bore or cup does not fit into its magnet
 */
export function partsOf(
  { R, H, bore = 0, cup, t, g, plate }: MagnetAboveSheet,
  magnet: { readonly Br: number; readonly mur: number },
  curve: BhCurve,
): Part[] {
  const sheet: Part = { r: [0, plate], z: [-g - t, -g], of: { is: 'steel', curve } };
  const of: Substance = { is: 'magnet', ...magnet };
  if (!cup) {
    if (!(bore >= 0 && bore < R)) throw new Error('The bore is as wide as the ring.');
    return [{ r: [bore, R], z: [0, H], of }, sheet];
  }
  const { magnetR, wall, floor, recess } = cup;
  const steel: Substance = { is: 'steel', curve: cup.curve ?? curve };
  if (
    !(magnetR > 0 && wall > 0 && floor > 0 && magnetR + wall <= R + 1e-12 && recess + floor < H) ||
    bore > 0
  )
    throw new Error('The magnet does not fit into its cup.');
  return [
    { r: [0, magnetR], z: [recess, H - floor], of },
    { r: [R - wall, R], z: [0, H - floor], of: steel },
    { r: [0, R], z: [H - floor, H], of: steel },
    sheet,
  ];
}
