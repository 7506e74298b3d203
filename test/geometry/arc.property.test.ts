import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenCircle, flattenVertices, type Flattening, type OutlineVertex } from '../../core/geometry/arc';
import { distanceToSegment, doubleSignedArea, type Ring } from '../../core/geometry/polygon';

/** Rounding of a double about a point 50 m away, with room. */
const NOISE = 1e-5;
/** 0.02 mm. */
const ALLOWED = 2;

const flattenings = fc.constantFrom<Flattening>('inscribed', 'circumscribed');
/** 1 mm to 50 m, as many small as large. */
const radii = fc.double({ min: 0, max: Math.log(50_000), noNaN: true }).map(Math.exp);
const coordinates = fc.double({ min: -20_000, max: 20_000, noNaN: true });
const angles = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

interface Circle {
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
}

/** Every edge of a run keeps to one side of a circle and within the allowed distance of it. */
function expectOn(
  side: 'inside' | 'outside',
  ring: Ring,
  firstEdge: number,
  edges: number,
  circle: Circle,
): void {
  const { centre, radius } = circle;
  let nearest = Infinity;
  let farthest = -Infinity;
  for (let i = 0; i < edges; i++) {
    const a = ring[(firstEdge + i) % ring.length]!;
    const b = ring[(firstEdge + i + 1) % ring.length]!;
    nearest = Math.min(nearest, distanceToSegment(centre, a, b) - radius);
    for (const { x, y } of [a, b])
      farthest = Math.max(farthest, Math.hypot(x - centre.x, y - centre.y) - radius);
  }
  expect(nearest).toBeGreaterThanOrEqual(side === 'outside' ? -NOISE : -ALLOWED);
  expect(farthest).toBeLessThanOrEqual(side === 'outside' ? ALLOWED : NOISE);
}

describe('a flattened circle', () => {
  it('keeps to its side of the true circle, within 0.02 mm, from 1 mm to 50 m radius', () => {
    fc.assert(
      fc.property(coordinates, coordinates, radii, flattenings, (x, y, radius, how) => {
        const { ring } = flattenCircle({ x, y }, 2 * radius, how);
        const circle = { centre: { x: x * 100, y: y * 100 }, radius: radius * 100 };
        expectOn(how === 'inscribed' ? 'inside' : 'outside', ring, 0, ring.length, circle);
        expect(doubleSignedArea(ring)).toBeGreaterThan(0);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe('a flattened arc', () => {
  /** A point, an arc seen from it as bulging away or as hollow, and back to the point. */
  const arcs = fc.record({
    x: coordinates,
    y: coordinates,
    radius: radii,
    from: angles,
    // A fifth of a millimetre of chord at the least, nearly a whole turn at the most.
    sweep: fc.double({ min: 0.2, max: 6, noNaN: true }),
    via: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    hollow: fc.boolean(),
    turned: fc.boolean(),
    how: flattenings,
  });

  it('keeps to the shape’s side of its circle, within 0.02 mm, bulging and hollow, up to nearly a whole turn', () => {
    fc.assert(
      fc.property(arcs, ({ x, y, radius, from, sweep, via, hollow, turned, how }) => {
        const isHollow = hollow && sweep < 2;
        // A rise of less than the rounding of its ends may turn over.
        fc.pre(radius * (1 - Math.cos(sweep / 2)) > 0.03);
        const at = (angle: number, reach = radius): [number, number] => [
          x + reach * Math.cos(angle),
          y + reach * Math.sin(angle),
        ];
        const middle = from + sweep / 2;
        // Seen from far outside, beyond the meeting of the end tangents, an arc of less than 115° is hollow.
        const apex = isHollow
          ? at(middle, 4 * radius)
          : at(middle + Math.PI, sweep > 5 ? 1.01 * radius : 0.3 * radius);
        const arc = { arcTo: at(from + sweep), via: at(from + via * sweep) };
        const vertices: OutlineVertex[] = turned
          ? [{ arcTo: at(from), via: arc.via }, apex, at(from + sweep)]
          : [apex, at(from), arc];
        const outline = flattenVertices(vertices, how);
        expect(outline.arcs).toHaveLength(1);
        const drawn = outline.arcs[0]!;
        const side = (how === 'inscribed') !== isHollow ? 'inside' : 'outside';
        expectOn(side, outline.ring, drawn.firstEdge, drawn.edges, drawn);
        expect(doubleSignedArea(outline.ring)).toBeGreaterThan(0);
      }),
      { seed: 12, numRuns: 1500 },
    );
  });

  it('repeats no point, however short the arc', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
        flattenings,
        (ax, ay, vx, vy, how) => {
          const vertices: OutlineVertex[] = [
            [0, 0],
            { arcTo: [ax / 100, ay / 100], via: [vx / 100, vy / 100] },
            [5, 7],
          ];
          const { ring } = flattenVertices(vertices, how);
          const repeated = ring.filter(({ x, y }, i) => x === ring.at(i - 1)!.x && y === ring.at(i - 1)!.y);
          expect(repeated).toEqual([]);
        },
      ),
      { seed: 13, numRuns: 2000 },
    );
  });
});
