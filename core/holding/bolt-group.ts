import type { Mm } from '../units';

/** One fastener of a group; `k` is its stiffness, any unit (all 1: equal bolts). */
export interface Fastener {
  readonly x: Mm;
  readonly y: Mm;
  readonly k: number;
}

/** A load in the plane of the group and its moment about the origin, anticlockwise. */
export interface PlaneLoad {
  readonly x: number;
  readonly y: number;
  readonly moment: number;
}

export interface GroupForces {
  readonly centroid: { readonly x: Mm; readonly y: Mm };
  /** Polar second moment about the centroid, Σ k r². */
  readonly J: number;
  /** Moment about the centroid, anticlockwise. */
  readonly M: number;
  /** On each fastener, in the units of the load: what it carries of it. */
  readonly forces: readonly { readonly x: number; readonly y: number }[];
}

/**
 * Load of each fastener of an eccentrically loaded group by the elastic method: direct shear shared by stiffness, shear from
 * the moment in proportion to stiffness and distance from the centroid and square to it, added as vectors. Fasteners all in
 * one place bear no moment: their forces then hold the direct part only, and `J` is 0.
 *
 * Source: R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-12, eq. 8-57 and example
 * 8-7; AISC Steel Construction Manual, part 7, elastic method (from memory).
 * @param fasteners at least one, with Σk > 0
 */
export function elasticGroup(fasteners: readonly Fastener[], load: PlaneLoad): GroupForces {
  const K = fasteners.reduce((sum, { k }) => sum + k, 0);
  const centroid = {
    x: fasteners.reduce((sum, { x, k }) => sum + k * x, 0) / K,
    y: fasteners.reduce((sum, { y, k }) => sum + k * y, 0) / K,
  };
  const J = fasteners.reduce(
    (sum, { x, y, k }) => sum + k * ((x - centroid.x) ** 2 + (y - centroid.y) ** 2),
    0,
  );
  const M = load.moment - (centroid.x * load.y - centroid.y * load.x);
  const turn = J > 0 ? M / J : 0;
  const forces = fasteners.map(({ x, y, k }) => ({
    x: k * (load.x / K - turn * (y - centroid.y)),
    y: k * (load.y / K + turn * (x - centroid.x)),
  }));
  return { centroid, J, M, forces };
}
