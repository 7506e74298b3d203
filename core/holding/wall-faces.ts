import { boxesHolding } from '../geometry/box-index';
import { boxOf, distanceToBoundary, locate, type Box, type Point, type Polygon } from '../geometry/polygon';
import type { Job, Wall } from '../job/schema';
import { stocksOfPanel } from '../panels/stocks-of-panel';
import { toHundredth, toMm, type Mm } from '../units';
import type { HoldingGround } from './ground';
import type { Magnet } from './magnet';
import { groundOfZone, type HoldingZone } from './zone-ground';

/** A connected piece of what magnets find on a wall: a panel, or a coated area. */
export interface Face {
  readonly zone: HoldingZone;
  /** One and the same for all faces that are alike. */
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
export interface WallFaces<F = Face> {
  readonly faces: readonly F[];
  readonly screws: readonly Screw[];
  /** The face at a point of the wall, hundredths; of two that share an edge the first. */
  faceAt(point: Point): F | undefined;
}

/** @param magnets of the job, by id */
export function facesOf(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  magnets: ReadonlyMap<string, Magnet>,
): WallFaces {
  const faces = zones.flatMap((zone) => facesOfZone(job, zone, magnets));
  const holes = (wall.fixingPoints ?? []).filter(({ kind }) => kind === 'hole');
  return wallFaces(
    faces,
    holes.map(({ x, y, width }) => ({ x, y, diameter: width })),
  );
}

function facesOfZone(job: Job, zone: HoldingZone, magnets: ReadonlyMap<string, Magnet>): Face[] {
  const whole = groundOfZone(job, zone, magnets);
  if (whole.kind === 'none') return [];
  if (!zone.layout || whole.kind === 'coating')
    return zone.area.area.map((outline) => ({ zone, ground: whole, outline, box: boxOf(outline.outer) }));
  const grounds = new Map<string, HoldingGround>();
  return zone.layout.panels.map((panel): Face => {
    const stocks = stocksOfPanel(panel, zone.area.zone.layout);
    const key = JSON.stringify(stocks);
    const ground = grounds.get(key) ?? groundOfZone(job, zone, magnets, stocks);
    grounds.set(key, ground);
    const { mark, outline } = panel;
    return { zone, ground, panel: mark, outline, box: boxOf(outline.outer) };
  });
}

/** Faces with the means to find the one at a point. */
export function wallFaces<F extends Pick<Face, 'outline' | 'box'>>(
  faces: readonly F[],
  screws: readonly Screw[],
): WallFaces<F> {
  const holding = boxesHolding(faces.map(({ box }) => box));
  return {
    faces,
    screws,
    faceAt(point) {
      const i = holding(point).find((one) => locate(point, faces[one]!.outline) !== 'outside');
      return i === undefined ? undefined : faces[i];
    },
  };
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
export function behindMagnet<F extends Pick<Face, 'outline'>>(
  { faceAt, screws }: Pick<WallFaces<F>, 'faceAt' | 'screws'>,
  centre: { readonly x: Mm; readonly y: Mm },
  diameter: Mm,
): BehindMagnet<F> {
  const point = { x: toHundredth(centre.x), y: toHundredth(centre.y) };
  const face = faceAt(point);
  if (!face) return { clearance: -diameter / 2 };
  const edge = toMm(distanceToBoundary(point, face.outline)) - diameter / 2;
  const heads = screws.map(
    (screw) => Math.hypot(screw.x - centre.x, screw.y - centre.y) - screw.diameter / 2 - diameter / 2,
  );
  return { face, clearance: Math.min(edge, ...heads) };
}
