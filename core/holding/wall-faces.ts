import { distanceToBoundary, locate, type Box, type Polygon, boxOf } from '../geometry/polygon';
import type { Job, Wall } from '../job/schema';
import { toHundredth, toMm, type Mm } from '../units';
import type { HoldingGround } from './ground';
import type { Magnet } from './magnet';
import { groundOfZone, type HoldingZone } from './zone-ground';

/** A connected piece of what magnets find on a wall: a panel, or a coated area. */
export interface Face {
  readonly zone: HoldingZone;
  readonly ground: HoldingGround;
  /** Mark of the panel; undefined on a coating. */
  readonly panel?: string;
  /** Wall frame, hundredths. */
  readonly outline: Polygon;
  readonly box: Box;
}

/** The head of a screw through the steel, mm, wall frame. */
export interface Screw {
  readonly x: Mm;
  readonly y: Mm;
  readonly diameter: Mm;
}

/** Everything on a wall that a magnet may sit on. */
export interface WallFaces {
  readonly faces: readonly Face[];
  readonly screws: readonly Screw[];
}

/** @param magnets of the job, by id */
export function facesOf(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  magnets: ReadonlyMap<string, Magnet>,
): WallFaces {
  const faces = zones.flatMap((zone): Face[] => {
    const ground = groundOfZone(job, zone, magnets);
    if (ground.kind === 'none') return [];
    const face = (outline: Polygon, panel?: string): Face => {
      const shared = { zone, ground, outline, box: boxOf(outline.outer) };
      return panel === undefined ? shared : { ...shared, panel };
    };
    return zone.layout && ground.kind !== 'coating'
      ? zone.layout.panels.map(({ mark, outline }) => face(outline, mark))
      : zone.area.area.map((outline) => face(outline));
  });
  const holes = (wall.fixingPoints ?? []).filter(({ kind }) => kind === 'hole');
  return { faces, screws: holes.map(({ x, y, width }) => ({ x, y, diameter: width })) };
}

/** What is behind a magnet, and how far its rim stays from whatever ends it. */
export interface BehindMagnet<F = Face> {
  /** Undefined: the magnet's centre is over nothing that draws it. */
  readonly face?: F;
  /** From the magnet's rim to the nearest edge, joint, hole or screw head, mm; below 0: over it. */
  readonly clearance: Mm;
}

/**
 * @param centre, diameter of the magnet, mm, wall frame; joints are edges of both their panels
 */
export function behindMagnet<F extends Pick<Face, 'outline' | 'box'>>(
  { faces, screws }: { readonly faces: readonly F[]; readonly screws: readonly Screw[] },
  centre: { readonly x: Mm; readonly y: Mm },
  diameter: Mm,
): BehindMagnet<F> {
  const point = { x: toHundredth(centre.x), y: toHundredth(centre.y) };
  const face = faces.find(({ box, outline }) => isIn(box, point) && locate(point, outline) !== 'outside');
  if (!face) return { clearance: -diameter / 2 };
  const edge = toMm(distanceToBoundary(point, face.outline)) - diameter / 2;
  const heads = screws.map(
    (screw) => Math.hypot(screw.x - centre.x, screw.y - centre.y) - screw.diameter / 2 - diameter / 2,
  );
  return { face, clearance: Math.min(edge, ...heads) };
}

function isIn({ left, right, bottom, top }: Box, { x, y }: { x: number; y: number }): boolean {
  return x >= left && x <= right && y >= bottom && y <= top;
}
