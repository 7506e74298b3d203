import { describe, expect, it } from 'vitest';
import { boxOfOutline, cornersOf, flattenCircle, flattenVertices } from '../../core/geometry/arc';
import { doubleSignedArea } from '../../core/geometry/polygon';
import { ring } from './shapes';

/** A door with a round head: 900 wide, springing at 2000, 450 high. */
const archedDoor = [[0, 0], [900, 0], [900, 2000], { arcTo: [0, 2000], via: [450, 2450] }] as const;

describe('flattenVertices', () => {
  it('leaves straight shapes as they are, in hundredths', () => {
    const { ring: points, arcs } = flattenVertices([[0, 0], [10, 0], [10, 5.005], [0, 5]], 'inscribed'); // prettier-ignore
    expect(points).toEqual(ring('0,0 1000,0 1000,501 0,500'));
    expect(arcs).toEqual([]);
  });

  it('turns a clockwise shape round and starts it at the same vertex', () => {
    const { ring: points } = flattenVertices([[0, 0], [0, 5], [10, 5], [10, 0]], 'inscribed'); // prettier-ignore
    expect(points).toEqual(ring('0,0 1000,0 1000,500 0,500'));
  });

  it('keeps an arc as an arc, with its true centre and radius', () => {
    const { ring: points, arcs } = flattenVertices(archedDoor, 'inscribed');
    expect(arcs).toHaveLength(1);
    const [arc] = arcs;
    expect(arc!.centre.x).toBeCloseTo(45000, 6);
    expect(arc!.centre.y).toBeCloseTo(200000, 6);
    expect(arc!.radius).toBeCloseTo(45000, 6);
    expect(points[arc!.firstEdge]).toEqual({ x: 90000, y: 200000 });
    expect(points[(arc!.firstEdge + arc!.edges) % points.length]).toEqual({ x: 0, y: 200000 });
  });

  it('lays edges of a circumscribed arch along its jambs and its crown', () => {
    const { ring: points } = flattenVertices(archedDoor, 'circumscribed');
    const jamb = points[3]!;
    expect(jamb.x).toBe(90000);
    expect(jamb.y).toBeGreaterThan(200000);
    expect(points.filter(({ y }) => y === 245000)).toHaveLength(2);
    expect(points.every(({ y }) => y <= 245000)).toBe(true);
  });

  it('puts a corner of an inscribed arch on its crown', () => {
    expect(flattenVertices(archedDoor, 'inscribed').ring).toContainEqual({ x: 45000, y: 245000 });
  });

  it('draws an arc that closes the shape, named at its first vertex', () => {
    const closing = [{ arcTo: [0, 0], via: [450, -450] }, [0, 2000], [900, 2000], [900, 0]] as const;
    const { ring: points, arcs } = flattenVertices(closing, 'inscribed');
    expect(doubleSignedArea(points)).toBeGreaterThan(0);
    const [arc] = arcs;
    expect(points[arc!.firstEdge]).toEqual({ x: 0, y: 0 });
    expect(points[(arc!.firstEdge + arc!.edges) % points.length]).toEqual({ x: 90000, y: 0 });
    expect(boxOfOutline({ ring: points, arcs })).toEqual({
      left: 0,
      bottom: -45000,
      right: 90000,
      top: 200000,
    });
  });

  it('gives the same arcs for the same shape drawn the other way round', () => {
    const backwards = [[0, 0], { arcTo: [0, 2000], via: [-1000, 1000] }, [900, 2000], [900, 0]] as const; // prettier-ignore
    const forwards = [[900, 0], [900, 2000], [0, 2000], { arcTo: [0, 0], via: [-1000, 1000] }] as const; // prettier-ignore
    const [a, b] = [flattenVertices(backwards, 'inscribed'), flattenVertices(forwards, 'inscribed')];
    expect(new Set(a.ring.map(({ x, y }) => `${x},${y}`))).toEqual(
      new Set(b.ring.map(({ x, y }) => `${x},${y}`)),
    );
    expect(a.arcs.map(({ radius }) => radius)).toEqual(b.arcs.map(({ radius }) => radius));
  });

  it('draws an arc whose point is in line as a straight edge', () => {
    const { ring: points, arcs } = flattenVertices(
      [[0, 0], { arcTo: [10, 0], via: [5, 0] }, [0, 10]],
      'inscribed',
    );
    expect(points).toEqual(ring('0,0 1000,0 0,1000'));
    expect(arcs).toEqual([]);
  });
});

describe('flattenCircle', () => {
  it.each(['inscribed', 'circumscribed'] as const)('%s, reaches exactly as far as the circle', (how) => {
    const { ring: points, arcs } = flattenCircle({ x: 40, y: 9 }, 3, how);
    expect(boxOfOutline({ ring: points, arcs: [] })).toEqual({
      left: 3850,
      bottom: 750,
      right: 4150,
      top: 1050,
    });
    expect(arcs).toEqual([{ firstEdge: 0, edges: points.length, centre: { x: 4000, y: 900 }, radius: 150 }]);
  });

  it.each(['inscribed', 'circumscribed'] as const)('%s, has the symmetries of a square', (how) => {
    const { ring: points } = flattenCircle({ x: 0, y: 0 }, 123.46, how);
    const names = new Set(points.map(({ x, y }) => `${x},${y}`));
    expect(new Set(points.map(({ x, y }) => `${-x + 0},${y}`))).toEqual(names);
    expect(new Set(points.map(({ x, y }) => `${-y + 0},${x}`))).toEqual(names);
  });

  it('becomes a square round a circle of less than 0.2 mm', () => {
    expect(flattenCircle({ x: 1, y: 1 }, 0.1, 'circumscribed').ring).toEqual(
      ring('95,95 105,95 105,105 95,105'),
    );
  });
});

describe('what was drawn', () => {
  it('the corners of an outline are its vertices, not the points that stand for arcs', () => {
    const { ring: points, arcs } = flattenVertices(archedDoor, 'inscribed');
    expect(cornersOf(points, arcs)).toEqual(ring('0,0 90000,0 90000,200000 0,200000'));
  });

  it('the box of an outline goes as far as its arcs, whichever side they were flattened to', () => {
    const segment = [[0, 0], { arcTo: [100, 0], via: [50, -20.004] }, [50, 100]] as const; // prettier-ignore
    const boxes = (['inscribed', 'circumscribed'] as const).map((how) =>
      boxOfOutline(flattenVertices(segment, how)),
    );
    expect(boxes[0]).toEqual(boxes[1]);
    expect(boxes[0]).toEqual({ left: 0, bottom: -2000, right: 10000, top: 10000 });
  });
});
