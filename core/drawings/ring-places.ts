import type { Mm } from '../units';
import type { PaperPoint } from './page';
import type { PaperBox } from './paper';
import { crosses } from './setting-out-view';

/*
 * Where boxes lie against shapes on paper. A shape is its rings by the even-odd rule.
 */

type Rings = readonly (readonly PaperPoint[])[];

/** Whether a box lies inside a shape, its edge a little way in. */
export function boxWithin(box: PaperBox, rings: Rings): boolean {
  const slack = 0.3;
  const inner = {
    left: box.left + slack,
    right: box.right - slack,
    bottom: box.bottom + slack,
    top: box.top - slack,
  };
  const cut = rings.some((ring) => ring.some((a, i) => crosses(a, ring[(i + 1) % ring.length]!, inner)));
  if (cut) return false;
  const x = (box.left + box.right) / 2;
  const y = (box.bottom + box.top) / 2;
  return crossingsAt(rings, y).filter((crossing) => crossing < x).length % 2 === 1;
}

/** Where a level line crosses the rings, ascending. */
export function crossingsAt(rings: Rings, y: Mm): Mm[] {
  return rings
    .flatMap((ring) =>
      ring.flatMap((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        return a.y <= y !== b.y <= y ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
      }),
    )
    .sort((a, b) => a - b);
}

/** Boxes that cover a ring: itself if it is a rectangle, else rows of about a millimetre. */
export function coverRing(ring: readonly PaperPoint[]): PaperBox[] {
  const bounds = boundsOf(ring);
  if (isUpright(ring)) return [bounds];
  const rows = Math.max(1, Math.ceil(bounds.top - bounds.bottom));
  const step = (bounds.top - bounds.bottom) / rows;
  return Array.from({ length: rows }, (_, row) => bounds.bottom + row * step).flatMap((bottom) => {
    const top = bottom + step;
    const xs = [
      ...crossingsAt([ring], bottom + step * 0.02),
      ...crossingsAt([ring], top - step * 0.02),
      ...ring.filter(({ y }) => bottom <= y && y <= top).map(({ x }) => x),
    ];
    return xs.length < 2 ? [] : [{ left: Math.min(...xs), right: Math.max(...xs), bottom, top }];
  });
}

/** Four corners, every edge level or plumb. */
export function isUpright(ring: readonly PaperPoint[]): boolean {
  return (
    ring.length === 4 &&
    ring.every((a, i) => {
      const b = ring[(i + 1) % 4]!;
      return Math.abs(a.x - b.x) < 1e-6 || Math.abs(a.y - b.y) < 1e-6;
    })
  );
}

export function boundsOf(points: readonly PaperPoint[]): PaperBox {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}
