import type { Finding } from '../finding';
import type { Outline } from '../geometry/outline';
import type { Box, Polygon, Region } from '../geometry/polygon';
import type { Zone } from '../job/schema';
import type { EdgeCause } from '../survey/surveyed-wall';

export interface ZoneArea {
  readonly zone: Zone;
  /** The zone's own shape with its holes, as drawn. */
  readonly shape: Outline;
  readonly shapePolygon: Polygon;
  /** Bounding box of the shape; corner and centre starts refer to it. */
  readonly box: Box;
  /** usable ∩ shape − zones listed before it. */
  readonly area: Region;
  /**
   * Everything that may have cut the area, with its cause: an edge of the area lies on the boundary of one of
   * these. Zones listed earlier stand here as causes of kind 'zone'.
   */
  readonly boundaries: readonly { readonly cause: EdgeCause; readonly polygon: Polygon }[];
  readonly findings: readonly Finding[];
}
