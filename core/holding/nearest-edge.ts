import { distanceToBoundary, locate, type Polygon } from '../geometry/polygon';
import { toHundredth, toMm, type Mm } from '../units';

/** The panel under a magnet, and how far its rim stays from whatever ends the steel. */
export interface UnderMagnet {
  /** Index of the panel that the magnet's centre is over; undefined: over none. */
  readonly panel: number | undefined;
  /** From the magnet's rim to the nearest edge or hole of a panel, or to a screw head; below 0: over it. */
  readonly clearance: Mm;
}

/**
 * @param centre, diameter of the magnet, mm, wall frame
 * @param panels as fixed on the wall, hundredths, wall frame; joints are the edges of both
 * @param screws centres and diameters of screw heads, mm, wall frame
 */
export function underMagnet(
  centre: { readonly x: Mm; readonly y: Mm },
  diameter: Mm,
  panels: readonly Polygon[],
  screws: readonly { readonly x: Mm; readonly y: Mm; readonly diameter: Mm }[] = [],
): UnderMagnet {
  const point = { x: toHundredth(centre.x), y: toHundredth(centre.y) };
  const panel = panels.findIndex((polygon) => locate(point, polygon) !== 'outside');
  if (panel < 0) return { panel: undefined, clearance: -diameter / 2 };
  const edge = toMm(distanceToBoundary(point, panels[panel]!)) - diameter / 2;
  const heads = screws.map(
    (screw) => Math.hypot(screw.x - centre.x, screw.y - centre.y) - screw.diameter / 2 - diameter / 2,
  );
  return { panel, clearance: Math.min(edge, ...heads) };
}
