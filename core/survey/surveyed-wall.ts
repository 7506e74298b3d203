import type { Finding } from '../finding';
import type { Outline } from '../geometry/outline';
import type { Point, Polygon, Region } from '../geometry/polygon';
import type { Wall } from '../job/schema';

/** Why an edge of a region or panel is where it is. */
export type EdgeCause =
  | { readonly kind: 'stock-edge' }
  | { readonly kind: 'zone'; readonly id: string }
  | { readonly kind: 'rim'; readonly side: RimSide }
  | { readonly kind: 'opening'; readonly id: string }
  | { readonly kind: 'fitting'; readonly id: string }
  | { readonly kind: 'movement-joint'; readonly id: string };

export type RimSide = 'floor' | 'ceiling' | 'left' | 'right';

/** An opening or fitting, in hundredths, wall frame. */
export interface KeepOut {
  readonly kind: 'opening' | 'fitting';
  readonly id: string;
  /** As drawn: arcs inscribed. */
  readonly bare: Outline;
  /** Grown by the clearance, circles and arcs circumscribed: no panel enters it. */
  readonly grown: Polygon;
}

/** A joint of the building that no panel bridges, in hundredths, wall frame. */
export interface MovementJoint {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  /** The width of the joint along the line: no panel enters it. */
  readonly strip: Polygon;
}

export interface SurveyedWall {
  readonly wall: Wall;
  readonly outline: Outline;
  readonly keepOuts: readonly KeepOut[];
  /** The band of the rim, per side, that no panel enters; may overlap. */
  readonly rim: readonly { readonly side: RimSide; readonly band: Polygon }[];
  readonly movementJoints: readonly MovementJoint[];
  /** Outline − rim − grown openings and fittings − movement joints. */
  readonly usable: Region;
  readonly findings: readonly Finding[];
}
