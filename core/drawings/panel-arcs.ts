import type { Arc } from '../geometry/outline';
import type { Point, Ring } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { PanelPlace } from './placed-panels';

/*
 * Panels are polygons; what was drawn as an arc is found again here by the circles the wall knows, so that a
 * drawing gives a radius and not a hundred corners.
 */

/** A true circle an edge may follow; hundredths, not rounded. */
export interface KnownArc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A corner; `arc` is set where the edge that leads from it to the next corner is an arc. */
export interface Corner extends Point {
  readonly arc?: KnownArc;
}

/** Corners of a polygon lie this close to the arc they stand for: 0.02 mm of chord, rounding, and mitring. */
const nearness = 6;

/** Every circle that may have shaped a panel at this place, moved by (dx, dy), hundredths. */
export function wallArcs(
  { wall, zone }: Pick<PanelPlace, 'wall' | 'zone'>,
  dx: number,
  dy: number,
): KnownArc[] {
  const known: KnownArc[] = [];
  const add = ({ centre, radius }: Arc, growth: number) => {
    if (radius + growth > 0) known.push({ x: centre.x + dx, y: centre.y + dy, radius: radius + growth });
  };
  for (const keepOut of wall.keepOuts) {
    const clearance = clearanceOf(wall.wall, keepOut.kind, keepOut.id);
    for (const arc of keepOut.bare.arcs) for (const sign of [1, -1]) add(arc, sign * clearance);
  }
  const rim = Object.values(wall.wall.rim).filter((value) => typeof value === 'number');
  for (const arc of wall.outline.arcs) {
    for (const clearance of new Set([0, ...rim]))
      for (const sign of [1, -1]) add(arc, sign * clearance * 100);
  }
  for (const arc of zone.shape.arcs) add(arc, 0);
  return known;
}

/** The one round fitting or opening that causes a cutout, with its clearance; undefined if it is anything else. */
export function trueCircleOf(
  causes: readonly EdgeCause[],
  { wall }: PanelPlace,
  dx: number,
  dy: number,
): { x: number; y: number; diameter: number } | undefined {
  const [cause] = causes;
  if (causes.length !== 1 || !cause || (cause.kind !== 'fitting' && cause.kind !== 'opening'))
    return undefined;
  const keepOut = wall.keepOuts.find(({ kind, id }) => kind === cause.kind && id === cause.id);
  const arc = keepOut?.bare.arcs[0];
  if (!keepOut || !arc || arc.edges !== keepOut.bare.ring.length) return undefined;
  const radius = arc.radius + clearanceOf(wall.wall, keepOut.kind, keepOut.id);
  return { x: arc.centre.x + dx, y: arc.centre.y + dy, diameter: 2 * radius };
}

/** The ring with each run of two or more edges along one known arc drawn together into one. */
export function collapseArcs(ring: Ring, arcs: readonly KnownArc[]): Corner[] {
  const onArc = ring.map((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    return arcs.find((arc) => follows(from, to, arc));
  });
  const corners = ring.map((point, i): Corner => (onArc[i] ? { ...point, arc: onArc[i] } : point));
  const kept = corners.filter((_, i) => {
    const before = onArc[(i + ring.length - 1) % ring.length];
    return !before || before !== onArc[i];
  });
  // A full circle has no corner to begin at; its first point stands for it.
  return kept.length > 0 ? kept : corners.slice(0, 1);
}

function follows(from: Point, to: Point, arc: KnownArc): boolean {
  const off = (x: number, y: number) => Math.abs(Math.hypot(x - arc.x, y - arc.y) - arc.radius);
  return (
    off(from.x, from.y) <= nearness &&
    off(to.x, to.y) <= nearness &&
    off((from.x + to.x) / 2, (from.y + to.y) / 2) <= nearness
  );
}

/** Hundredths. */
function clearanceOf(wall: PanelPlace['wall']['wall'], kind: 'opening' | 'fitting', id: string): number {
  const objects = kind === 'opening' ? wall.openings : wall.fittings;
  return (objects.find((object) => object.id === id)?.clearance ?? 0) * 100;
}
