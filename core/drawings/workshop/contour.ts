import type { Point, Ring } from '../../geometry/polygon';
import type { Mm } from '../../units';
import type { KnownArc } from '../panel-arcs';

/*
 * Closed lines as a machine follows them: straight edges and arcs, not the hundred corners of a polygon.
 */

/** A corner in mm, and how the edge that leads from it to the next one bends. */
export interface ContourVertex {
  readonly x: Mm;
  readonly y: Mm;
  /** The tangent of a quarter of the arc's angle, above 0 anticlockwise; 0: straight. */
  readonly bulge: number;
}

export type Contour =
  | { readonly kind: 'chain'; readonly vertices: readonly ContourVertex[] }
  | { readonly kind: 'circle'; readonly x: Mm; readonly y: Mm; readonly radius: Mm };

/** Corners of a polygon lie this close to the arc they stand for, hundredths: 0.02 mm of chord, rounding, and mitring. */
const nearness = 6;
/** An arc that rises less over its chord is straight, hundredths. */
const flat = 2;

/**
 * A ring as a machine is to follow it: each run of two or more edges along one of the circles is one arc (two, where it goes
 * more than half round), a ring that is all one circle is that circle, every other edge stays straight.
 *
 * @param ring hundredths, either direction, which is kept
 * @param arcs true circles in the frame of the ring
 * @returns mm; corners are corners of the ring, arcs within 0.06 mm of its edges
 */
export function contourOf(ring: Ring, arcs: readonly KnownArc[]): Contour {
  const at = (i: number) => ring[i % ring.length]!;
  const on = ring.map((from, i) => arcs.findIndex((arc) => follows(from, at(i + 1), arc)));
  const [whole] = on;
  if (ring.length > 4 && whole !== undefined && whole >= 0 && on.every((arc) => arc === whole)) {
    const { x, y, radius } = arcs[whole]!;
    return { kind: 'circle', x: fine(x / 100), y: fine(y / 100), radius: fine(radius / 100) };
  }
  const first = Math.max(
    0,
    on.findIndex((arc, i) => arc < 0 || arc !== on.at(i - 1)),
  );
  const vertices: ContourVertex[] = [];
  for (let done = 0; done < ring.length;) {
    const start = first + done;
    const known = on[start % ring.length]!;
    let edges = 1;
    while (known >= 0 && done + edges < ring.length && on[(start + edges) % ring.length] === known) edges++;
    const chain = Array.from({ length: edges + 1 }, (_, k) => at(start + k));
    vertices.push(...(known >= 0 && edges > 1 ? bend(chain, arcs[known]!) : straight(chain)));
    done += edges;
  }
  return { kind: 'chain', vertices };
}

/** Area inside a contour, mm²: the polygon through its corners and the segments of its arcs. */
export function contourArea(contour: Contour): number {
  if (contour.kind === 'circle') return Math.PI * contour.radius ** 2;
  const { vertices } = contour;
  const [origin] = vertices;
  let area = 0;
  vertices.forEach((a, i) => {
    const b = vertices[(i + 1) % vertices.length]!;
    area += ((a.x - origin!.x) * (b.y - origin!.y) - (b.x - origin!.x) * (a.y - origin!.y)) / 2;
    if (a.bulge === 0) return;
    const sweep = 4 * Math.atan(a.bulge);
    const radius = radiusOf(a, b);
    area += (radius * radius * (sweep - Math.sin(sweep))) / 2;
  });
  return Math.abs(area);
}

/** Of the arc between two corners, mm. */
export function radiusOf(from: ContourVertex, to: { readonly x: Mm; readonly y: Mm }): Mm {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  return (chord * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge));
}

/** Moved and turned as `place` does; `mirrors` where that turns it over. */
export function moveContour(contour: Contour, place: (point: Point) => Point, mirrors: boolean): Contour {
  // `place` counts in hundredths.
  const to = ({ x, y }: { readonly x: Mm; readonly y: Mm }) => {
    const moved = place({ x: x * 100, y: y * 100 });
    return { x: fine(moved.x / 100), y: fine(moved.y / 100) };
  };
  if (contour.kind === 'circle') return { ...contour, ...to(contour) };
  const vertices = contour.vertices.map((vertex) => ({
    ...to(vertex),
    bulge: (mirrors ? -vertex.bulge : vertex.bulge) + 0,
  }));
  return { kind: 'chain', vertices };
}

function follows(from: Point, to: Point, arc: KnownArc): boolean {
  const off = (x: number, y: number) => Math.abs(Math.hypot(x - arc.x, y - arc.y) - arc.radius);
  return (
    off(from.x, from.y) <= nearness &&
    off(to.x, to.y) <= nearness &&
    off((from.x + to.x) / 2, (from.y + to.y) / 2) <= nearness
  );
}

function straight(chain: readonly Point[]): ContourVertex[] {
  return chain.slice(0, -1).map(({ x, y }) => ({ x: x / 100, y: y / 100, bulge: 0 }));
}

function bend(chain: readonly Point[], arc: KnownArc): ContourVertex[] {
  const angle = ({ x, y }: Point) => Math.atan2(y - arc.y, x - arc.x);
  let sweep = 0;
  for (let k = 0; k + 1 < chain.length; k++) {
    const step = angle(chain[k + 1]!) - angle(chain[k]!);
    sweep += step - 2 * Math.PI * Math.round(step / (2 * Math.PI));
  }
  if (Math.abs(sweep) > Math.PI) {
    const middle = Math.floor((chain.length - 1) / 2);
    return [...bend(chain.slice(0, middle + 1), arc), ...bend(chain.slice(middle), arc)];
  }
  if (2 * arc.radius * Math.sin(sweep / 4) ** 2 < flat) return straight(chain);
  const { x, y } = chain[0]!;
  return [{ x: x / 100, y: y / 100, bulge: Math.tan(sweep / 4) }];
}

/** mm to a ten-thousandth. */
function fine(length: number): Mm {
  return Math.round(length * 1e4) / 1e4 + 0;
}
