import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitObject, insertVertex, moveObject, moveVertex, removeVertex } from '../../core/job/changes';
import { mirrored, turnedBy } from '../../core/job/mirror';
import type { Job, Vertex, Zone } from '../../core/job/schema';
import { pointOf } from '../../core/job/shape';
import { room, wallOf } from './room-walls';

const ref = { kind: 'zone', id: 'Z1' } as const;
const jobOf = (shape: Vertex[], edges: Zone['edges']): Job =>
  room([
    wallOf('A', 9000, undefined, [{ id: 'Z1', name: '', shape, holes: [], buildUp: 'steel-panel', edges }]),
  ]);
const zoneIn = (job: Job) => job.walls[0]!.zones[0]!;
const corners: Vertex[] = [
  [0, 0],
  [1000, 0],
  [1500, 400],
  [1000, 900],
  [0, 900],
];
/** Where each chosen end lies: the width of its feather, which names it here, with the ends of its edge. */
const placed = ({ shape, edges = [] }: Pick<Zone, 'shape' | 'edges'>) =>
  edges.map(({ edge, width }) => {
    const [from, to] = [shape[edge - 1]!, shape[edge % shape.length]!].map(pointOf);
    return { width, from, to };
  });
const widths = (...all: number[]) =>
  all.map((edge) => ({ edge, end: 'feather' as const, width: edge * 100 }));

describe('chosen ends of edges', () => {
  it('stay with both halves of an edge in which a corner is put, and with all others', () => {
    for (let index = 0; index <= corners.length; index++) {
      const before = jobOf(corners, widths(1, 2, 3, 4, 5));
      const zone = zoneIn(insertVertex(before, 'A', ref, index, { x: 7, y: 11 }));
      const parted = index === 0 ? 500 : index * 100;
      const old = placed(zoneIn(before));
      for (const { width, from, to } of placed(zone)) {
        const was = old.find((one) => one.width === width)!;
        if (width === parted) expect([from, to]).toContainEqual({ x: 7, y: 11 });
        else expect({ from, to }).toEqual({ from: was.from, to: was.to });
      }
      expect(placed(zone).filter(({ width }) => width === parted)).toHaveLength(2);
      expect(zone.edges!.map(({ edge }) => edge)).toEqual([1, 2, 3, 4, 5, 6]);
    }
  });

  it('go with the edge that begins at a corner that is taken out', () => {
    for (let index = 0; index < corners.length; index++) {
      const before = jobOf(corners, widths(1, 2, 3, 4, 5));
      const zone = zoneIn(removeVertex(before, 'A', ref, index));
      const old = placed(zoneIn(before));
      expect(zone.edges!.map(({ edge }) => edge)).toEqual([1, 2, 3, 4]);
      for (const { width, from } of placed(zone)) {
        expect(width).not.toBe((index + 1) * 100);
        expect(from).toEqual(old.find((one) => one.width === width)!.from);
      }
    }
    const only = jobOf(corners, widths(3));
    expect(zoneIn(removeVertex(only, 'A', ref, 2)).edges).toBeUndefined();
    const triangle = jobOf(corners.slice(0, 3), widths(3));
    expect(removeVertex(triangle, 'A', ref, 2)).toEqual(triangle);
  });

  it('are as they were when a corner that was put in is taken out again', () => {
    fc.assert(
      fc.property(fc.subarray([1, 2, 3, 4, 5]), fc.nat({ max: 5 }), (chosen, index) => {
        const before = jobOf(corners, chosen.length > 0 ? widths(...chosen) : undefined);
        const after = removeVertex(insertVertex(before, 'A', ref, index, { x: 7, y: 11 }), 'A', ref, index);
        expect(zoneIn(after).edges).toEqual(zoneIn(before).edges);
      }),
    );
  });

  it('lie on the image of their edge when the zone is mirrored, turned, moved, reshaped or scaled', () => {
    const job = jobOf(corners, widths(2, 5));
    const zone = zoneIn(job);
    const pointsOf = ({ from, to }: ReturnType<typeof placed>[number]) => [from!, to!];
    const image = (map: (p: { x: number; y: number }) => { x: number; y: number }) =>
      placed(zone).map((one) => pointsOf(one).map(map));
    const of = (changed: Zone) => placed(changed).map(pointsOf);
    expect(of(mirrored(job, zone, { axis: 'x', at: 2000 }))).toEqual(
      image(({ x, y }) => ({ x: 4000 - x, y })),
    );
    expect(of(mirrored(job, zone, { axis: 'y', at: 500 }))).toEqual(
      image(({ x, y }) => ({ x, y: 1000 - y })),
    );
    expect(of(turnedBy(job, zone, { x: 0, y: 0 }, 1))).toEqual(image(({ x, y }) => ({ x: 0 - y, y: x })));
    expect(of(zoneIn(moveObject(job, 'A', ref, 30, 40)))).toEqual(
      image(({ x, y }) => ({ x: x + 30, y: y + 40 })),
    );
    const box = { x: 0, y: 0, width: 3000, height: 1800 };
    expect(of(zoneIn(fitObject(job, 'A', ref, box)))).toEqual(image(({ x, y }) => ({ x: x * 2, y: y * 2 })));
    expect(zoneIn(moveVertex(job, 'A', ref, 2, { x: 1700, y: 500 })).edges).toBe(zone.edges);
  });

  it('are left alone by a corner of a hole', () => {
    const hole: Vertex[] = [
      [200, 200],
      [400, 200],
      [300, 400],
    ];
    const job = jobOf(corners, widths(2));
    const wall = job.walls[0]!;
    const holed = { ...job, walls: [{ ...wall, zones: [{ ...wall.zones[0]!, holes: [hole] }] }] };
    const after = insertVertex(holed, 'A', { ...ref, hole: 0 }, 1, { x: 300, y: 150 });
    expect(zoneIn(after).edges).toBe(zoneIn(holed).edges);
    expect(zoneIn(after).holes[0]).toHaveLength(4);
  });
});
