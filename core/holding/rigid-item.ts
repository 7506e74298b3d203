import type { Mm } from '../units';
import { elasticGroup } from './bolt-group';

/*
 * How a rigid item bears on its magnets. Frame: x to the right, y up from the item's lowest contact edge, reach out of the
 * wall; N and mm.
 */

export interface RigidLoad {
  /** N. `out`: away from the wall; `side`: to the right. */
  readonly down: number;
  readonly side: number;
  readonly out: number;
  /** Where it acts, mm; `reach` from the wall's face. */
  readonly x: Mm;
  readonly y: Mm;
  readonly reach: Mm;
}

export interface RigidMagnet {
  readonly x: Mm;
  /** Above the lowest contact edge; above 0. */
  readonly y: Mm;
  /** Half the width of its face. */
  readonly R: Mm;
  /** Pull, N. */
  readonly F: number;
  readonly mu: number;
}

export const modeNames = ['slip', 'turning', 'pull-off', 'tipping'] as const;
export type ModeName = (typeof modeNames)[number];

/** Capacity over demand in each mode; Infinity where nothing asks for it. */
export type ModeFactors = Readonly<Record<ModeName, number>>;

export interface RigidState {
  readonly factors: ModeFactors;
  /** The least of them. */
  readonly factor: number;
  /** Which magnets are counted: the item may hold better without one that would let go first. */
  readonly counted: readonly boolean[];
  /** Tension that each magnet takes, N; 0 for those not counted. */
  readonly T: readonly number[];
  readonly tensionFormula: string;
  /** ΣT less what pulls outward: the press of the lower edge on the wall, N. */
  readonly C: number;
  /** Slip capacity Σ μ (F − T), N. */
  readonly slipCapacity: number;
  /** In-plane force, N, and its moment about the centroid of the slip capacities, N·mm. */
  readonly shear: number;
  readonly torque: number;
  /** Moment that turns the item off the wall about its lowest edge, N·mm. */
  readonly tip: number;
}

/**
 * The item under its loads with all magnets, or with those counted absent that let go first (least pull for their height),
 * whichever holds more: what holds without a magnet holds with it.
 *
 * Source: note on holding force, section 4 (turning about the lowest contact edge, Tᵢ = W e yᵢ / Σy²; slip with C taken off;
 * both with T at the load itself); in the plane of the wall `elasticGroup`, with the slip capacity of each magnet for its
 * stiffness, so that without eccentricity slip is the note's.
 * @param magnets may be empty: factor 0
 */
export function holdRigid(loads: readonly RigidLoad[], magnets: readonly RigidMagnet[]): RigidState {
  const order = magnets
    .map((_, i) => i)
    .filter((i) => magnets[i]!.F > 0)
    .sort((a, b) => magnets[b]!.F / magnets[b]!.y - magnets[a]!.F / magnets[a]!.y);
  let best = bear(loads, magnets, order);
  for (let kept = order.length - 1; kept >= 1; kept--) {
    const state = bear(loads, magnets, order.slice(0, kept));
    if (state.factor > best.factor * (1 + 1e-9)) best = state;
  }
  return best;
}

/** With the magnets of these places only. */
function bear(
  loads: readonly RigidLoad[],
  magnets: readonly RigidMagnet[],
  places: readonly number[],
): RigidState {
  const group = places.map((i) => magnets[i]!);
  const sum = (of: (load: RigidLoad) => number) => loads.reduce((total, load) => total + of(load), 0);
  const out = sum((load) => load.out);
  const tip = sum((load) => load.down * load.reach + load.out * load.y);
  const { T, formula } = tensions(group, {
    out,
    tip,
    yaw: sum((load) => load.side * load.reach + load.out * load.x),
  });
  const held = group.map(({ F }, i) => Math.max(0, F - Math.max(0, T[i]!)));
  const slips = group.map(({ mu }, i) => mu * held[i]!);
  const slipCapacity = slips.reduce((total, q) => total + q, 0);

  const plane = {
    x: sum((load) => load.side),
    y: -sum((load) => load.down),
    moment: sum((load) => -load.down * load.x - load.side * load.y),
  };
  const shear = Math.hypot(plane.x, plane.y);
  const { torque, use } = inPlane(group, slips, plane);

  const lifts = group.flatMap(({ F }, i) => (T[i]! > 0 ? [F / T[i]!] : []));
  const moments = group.reduce((total, { F, y }) => total + F * y, 0);
  const factors = {
    slip: ratio(slipCapacity, shear),
    turning: Math.abs(torque) > 1e-9 * (1 + shear) ? ratio(1, use) : Infinity,
    'pull-off': group.length === 0 && (out > 0 || tip > 0) ? 0 : Math.min(Infinity, ...lifts),
    tipping: ratio(moments, tip),
  };
  const counted = magnets.map((_, i) => places.includes(i));
  const at = new Map(places.map((place, i) => [place, T[i]!]));
  return {
    factors,
    factor: Math.min(...modeNames.map((name) => factors[name])),
    counted,
    T: magnets.map((_, i) => at.get(i) ?? 0),
    tensionFormula: formula,
    C: Math.max(0, T.reduce((total, t) => total + t, 0) - out),
    slipCapacity,
    shear,
    torque,
    tip,
  };
}

interface OffWall {
  readonly out: number;
  /** About the lowest contact edge, N·mm. */
  readonly tip: number;
  /** About the upright through x = 0, N·mm. */
  readonly yaw: number;
}

/**
 * Tension of each magnet. While the lower edge presses, in proportion to height above it; where the pull outward lifts the
 * edge too, direct share and moment about the centroid of the magnets. A moment that magnets in one line cannot bear by their
 * distance is borne by each about its own rim.
 */
function tensions(
  group: readonly RigidMagnet[],
  { out, tip, yaw }: OffWall,
): { readonly T: number[]; readonly formula: string } {
  const n = group.length;
  if (n === 0) return { T: [], formula: '' };
  const rims = group.reduce((total, { R }) => total + R, 0);
  const meanX = group.reduce((total, { x }) => total + x, 0) / n;
  const meanY = group.reduce((total, { y }) => total + y, 0) / n;

  const byHeight = tip / group.reduce((total, { y }) => total + y * y, 0);
  const pressed = group.map(({ y }) => byHeight * y);
  const isPressed = pressed.reduce((total, t) => total + t, 0) >= out - 1e-12;
  const lifted = () =>
    spread(
      group.map(({ y }) => y - meanY),
      tip - out * meanY,
      rims,
    ).map((t) => t + out / n);
  const upright = isPressed ? pressed : lifted();
  const sideways = spread(
    group.map(({ x }) => x - meanX),
    yaw - out * meanX,
    rims,
  );
  return {
    T: upright.map((t, i) => t + sideways[i]!),
    formula:
      (isPressed ? 'M y / Σy²' : 'P / n + (M − P ȳ)(y − ȳ) / Σ(y − ȳ)²') +
      (sideways.some((t) => t !== 0) ? ' + My (x − x̄) / Σ(x − x̄)²' : ''),
  };
}

/** Shares of a moment by distance from the centroid; about the rims where there is no distance. */
function spread(arms: readonly number[], moment: number, rims: Mm): number[] {
  if (Math.abs(moment) < 1e-12) return arms.map(() => 0);
  const second = arms.reduce((total, arm) => total + arm * arm, 0);
  if (second < 1e-6) return arms.map(() => Math.abs(moment) / rims);
  return arms.map((arm) => (moment * arm) / second);
}

/** Moment about the centroid of the slip capacities, and the largest share of its own capacity that a magnet needs. */
function inPlane(
  group: readonly RigidMagnet[],
  slips: readonly number[],
  load: { readonly x: number; readonly y: number; readonly moment: number },
): { readonly torque: number; readonly use: number } {
  const total = slips.reduce((sum, q) => sum + q, 0);
  const shear = Math.hypot(load.x, load.y);
  if (total <= 0) return { torque: load.moment, use: shear > 0 || load.moment !== 0 ? Infinity : 0 };
  const places = group.map(({ x, y }, i) => ({ x, y, k: slips[i]! }));
  const { M, J, forces } = elasticGroup(places, load);
  const torque = Math.abs(M) < 1e-9 * (1 + Math.abs(load.moment)) ? 0 : M;
  // One disc against turning on its spot: uniform pressure, ⅔ μ F R, as of a disc clutch; added to slip in full.
  const spot = group.reduce((sum, { R }, i) => sum + (2 / 3) * slips[i]! * R, 0);
  if (J / total < 1e-6) return { torque, use: shear / total + Math.abs(torque) / spot };
  const shares = forces.map((force, i) => (slips[i]! > 0 ? Math.hypot(force.x, force.y) / slips[i]! : 0));
  return { torque, use: Math.max(...shares) };
}

function ratio(capacity: number, demand: number): number {
  return demand > 1e-12 ? capacity / demand : Infinity;
}
