import type { OutlineVertex } from './arc';
import type { Circle } from './offset-outline';
import type { Point, Ring } from './polygon';

/** What chords and rounding may stand off the circle that they draw, hundredths. */
const near = 3.2;
/** An arc that rises less over its chord is straight, hundredths. */
const flat = 5;

/**
 * A ring as it is drawn in a job: runs of two or more edges that lie within 0.032 mm of one of the circles become one arc of
 * that circle; every other edge stays straight.
 *
 * @returns vertices in mm, in the ring's direction, whole hundredths but for the points that arcs pass
 * @example verticesOfRing(flattenCircle({ x: 0, y: 0 }, 100, 'inscribed').ring, [{ centre: { x: 0, y: 0 }, radius: 5000 }]).length // 4
 */
export function verticesOfRing(ring: Ring, circles: readonly Circle[]): OutlineVertex[] {
  const at = (i: number) => ring[(i + ring.length) % ring.length]!;
  const on = ring.map((point, i) => circles.findIndex((circle) => isChord(point, at(i + 1), circle)));
  const [whole] = on;
  if (whole !== undefined && whole >= 0 && on.every((circle) => circle === whole)) {
    return quarters(circles[whole]!);
  }
  const first = Math.max(
    0,
    on.findIndex((circle, i) => circle < 0 || circle !== on.at(i - 1)),
  );
  const vertices: OutlineVertex[] = [];
  for (let done = 0; done < ring.length;) {
    const start = first + done;
    const circle = circles[on[start % ring.length]!];
    let edges = 1;
    while (
      circle &&
      done + edges < ring.length &&
      on[(start + edges) % ring.length] === on[start % ring.length]
    )
      edges++;
    const arc = circle && edges > 1 ? arcBetween(ring, start, edges, circle) : null;
    if (arc) vertices.push(arc);
    else for (let k = 1; k <= edges; k++) vertices.push(inMm(at(start + k)));
    done += edges;
  }
  return vertices;
}

function isChord(a: Point, b: Point, { centre, radius }: Circle): boolean {
  const off = (x: number, y: number) => Math.abs(Math.hypot(x - centre.x, y - centre.y) - radius);
  return off(a.x, a.y) <= near && off(b.x, b.y) <= near && off((a.x + b.x) / 2, (a.y + b.y) / 2) <= near;
}

function arcBetween(
  ring: Ring,
  start: number,
  edges: number,
  { centre, radius }: Circle,
): OutlineVertex | null {
  const angle = (i: number) => {
    const { x, y } = ring[i % ring.length]!;
    return Math.atan2(y - centre.y, x - centre.x);
  };
  let sweep = 0;
  for (let k = 0; k < edges; k++) {
    const step = angle(start + k + 1) - angle(start + k);
    sweep += step - 2 * Math.PI * Math.round(step / (2 * Math.PI));
  }
  if (2 * radius * Math.sin(sweep / 4) ** 2 < flat) return null;
  const middle = angle(start) + sweep / 2;
  return {
    arcTo: inMm(ring[(start + edges) % ring.length]!),
    via: [fine(centre.x + radius * Math.cos(middle)), fine(centre.y + radius * Math.sin(middle))],
  };
}

/** As a job draws a whole circle: four arcs from its rightmost point. */
function quarters({ centre, radius }: Circle): OutlineVertex[] {
  const point = (angle: number): [number, number] => [
    fine(centre.x + radius * Math.cos(angle)),
    fine(centre.y + radius * Math.sin(angle)),
  ];
  return [0, 1, 2, 3].map((quarter) => ({
    arcTo: point((quarter * Math.PI) / 2),
    via: point(((quarter - 0.5) * Math.PI) / 2),
  }));
}

function inMm({ x, y }: Point): [number, number] {
  return [x / 100, y / 100];
}

/** mm to a ten-thousandth: rounding would bend a flat arc. */
function fine(length: number): number {
  return Math.round(length * 100) / 1e4 + 0;
}
