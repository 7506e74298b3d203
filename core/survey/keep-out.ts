import { flattenCircle, flattenVertices, type Flattening } from '../geometry/arc';
import { offsetMitred, union } from '../geometry/clip';
import type { Outline } from '../geometry/outline';
import { rectangle, type Polygon } from '../geometry/polygon';
import type { Fitting, Opening } from '../job/schema';
import { toHundredth, type Hundredth, type Mm } from '../units';
import type { KeepOut } from './surveyed-wall';

/**
 * An opening or fitting as it is drawn and as no panel may enter it.
 *
 * A circle grows to a circle. Rectangles and free shapes grow from their corners on whole hundredths, by the
 * clearance rounded up to one, with mitred corners (limit 2); arcs of free shapes are circumscribed first.
 */
export function keepOutOf(kind: KeepOut['kind'], placed: Opening | Fitting): KeepOut {
  const clearance = wholeClearance(placed.clearance);
  return {
    kind,
    id: placed.id,
    bare: outlineOf(placed, 'inscribed'),
    grown: grownShape(placed, clearance),
  };
}

/** A clearance in whole hundredths, never less than was asked for. */
export function wholeClearance(clearance: Mm): Hundredth {
  return Math.ceil(clearance * 100 - 1e-6) + 0;
}

/** An opening or fitting as it is drawn, without its clearance; hundredths, wall frame. */
export function outlineOf(
  { circle, shape, x = 0, y = 0, width = 0, height = 0 }: Opening | Fitting,
  how: Flattening,
): Outline {
  if (circle) return flattenCircle(circle, circle.diameter, how);
  if (shape) return flattenVertices(shape, how);
  const left = toHundredth(x);
  const bottom = toHundredth(y);
  // Ends are rounded, not sizes: two objects drawn against each other stay against each other.
  const box = rectangle(left, bottom, toHundredth(x + width) - left, toHundredth(y + height) - bottom);
  return { ring: box.outer, arcs: [] };
}

function grownShape(placed: Opening | Fitting, clearance: Hundredth): Polygon {
  if (placed.circle) {
    const { circle } = placed;
    return {
      outer: flattenCircle(circle, circle.diameter + 2 * placed.clearance, 'circumscribed').ring,
      holes: [],
    };
  }
  const { ring } = outlineOf(placed, 'circumscribed');
  if (!placed.shape) return grownRectangle(ring[0]!, ring[2]!, clearance);
  const shape = union([{ outer: ring, holes: [] }]);
  const [grown, ...more] = offsetMitred(shape, clearance);
  if (grown && more.length === 0) return grown;
  // A neck thinner than the rounding came apart; a hundredth more all round joins it again.
  return offsetMitred(shape, clearance + 1)[0] ?? { outer: ring, holes: [] };
}

function grownRectangle(
  lowerLeft: { x: Hundredth; y: Hundredth },
  upperRight: { x: Hundredth; y: Hundredth },
  clearance: Hundredth,
): Polygon {
  return rectangle(
    lowerLeft.x - clearance,
    lowerLeft.y - clearance,
    upperRight.x - lowerLeft.x + 2 * clearance,
    upperRight.y - lowerLeft.y + 2 * clearance,
  );
}
