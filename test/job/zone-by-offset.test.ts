import { describe, expect, it } from 'vitest';
import { newWall } from '../../core/job/defaults';
import { hasSides, zoneShapesByOffset, type ZoneOffset } from '../../core/job/zone-by-offset';
import type { Fitting, Opening, Wall, Zone } from '../../core/job/schema';

const door = { id: 'D1', kind: 'door', x: 300, y: 0, width: 900, height: 2000, clearance: 60 } as Opening;
const window = {
  id: 'W1',
  kind: 'window',
  x: 2000,
  y: 900,
  width: 1200,
  height: 1000,
  clearance: 50,
} as Opening;
const lamp = {
  id: 'L1',
  kind: 'light',
  circle: { x: 3600, y: 2100, diameter: 200 },
  clearance: 20,
} as Fitting;
const zone = {
  id: 'Z1',
  name: 'Proofs',
  shape: [
    [1400, 900],
    [1800, 900],
    [1800, 1500],
    [1400, 1500],
  ],
  holes: [
    [
      [1550, 1100],
      [1650, 1100],
      [1650, 1200],
      [1550, 1200],
    ],
  ],
  buildUp: 'steel-panel',
} as unknown as Zone;
const bare = newWall('A', 'Stair', 4000, 2600);
const wall: Wall = { ...bare, openings: [door, window], fittings: [lamp], zones: [zone] };
const arched: Wall = {
  ...bare,
  outline: [[0, 0], [1200, 0], [1200, 1700], { arcTo: [0, 1700], via: [600, 2300] }],
};

const shapes = (
  of: ZoneOffset['of'],
  way: ZoneOffset['way'],
  distance: ZoneOffset['distance'],
  on = wall,
) => {
  const result = zoneShapesByOffset(on, { of, way, distance });
  if ('fault' in result) throw new Error(result.fault);
  return result.shapes;
};
const fault = (of: ZoneOffset['of'], way: ZoneOffset['way'], distance: ZoneOffset['distance'], on = wall) => {
  const result = zoneShapesByOffset(on, { of, way, distance });
  return 'fault' in result ? result.fault : null;
};
const sides = (left: number, right: number, top: number, foot: number) => ({ left, right, top, foot });
const box = (x: number, y: number, right: number, top: number) => [
  [x, y],
  [right, y],
  [right, top],
  [x, top],
];

describe('a zone by a distance from an edge', () => {
  it('inside the outline of the wall, all round or side by side', () => {
    expect(shapes(null, 'inside', 100)).toEqual([{ shape: box(100, 100, 3900, 2500), holes: [] }]);
    expect(shapes(null, 'inside', sides(0, 200, 300, 900))).toEqual([
      { shape: box(0, 900, 3800, 2300), holes: [] },
    ]);
    expect(shapes(null, 'inside', 0)[0]!.shape).toEqual(box(0, 0, 4000, 2600));
  });

  it('a frame round a window is a zone with a hole in it; round a door it stands on the floor', () => {
    const of = { kind: 'opening', id: 'W1' } as const;
    expect(shapes(of, 'round', 100)).toEqual([
      { shape: box(1900, 800, 3300, 2000), holes: [box(2000, 900, 3200, 1900)] },
    ]);
    const [frame, ...more] = shapes({ kind: 'opening', id: 'D1' }, 'round', 100);
    expect(more).toEqual([]);
    expect(frame).toEqual({
      shape: [
        [200, 0],
        [300, 0],
        [300, 2000],
        [1200, 2000],
        [1200, 0],
        [1300, 0],
        [1300, 2100],
        [200, 2100],
      ],
      holes: [],
    });
  });

  it('falls into a zone for each part that is left', () => {
    const of = { kind: 'opening', id: 'W1' } as const;
    expect(shapes(of, 'round', sides(150, 250, 0, 0)).map(({ shape }) => shape)).toEqual([
      box(1850, 900, 2000, 1900),
      box(3200, 900, 3450, 1900),
    ]);
  });

  it('keeps arcs: round a lamp a ring of true circles, in an arched wall an arch about the same middle', () => {
    const [ring] = shapes({ kind: 'fitting', id: 'L1' }, 'round', 50);
    expect(ring!.shape).toHaveLength(4);
    expect(ring!.shape[0]).toMatchObject({ arcTo: [3750, 2100] });
    expect(ring!.holes[0]!.every((vertex) => !Array.isArray(vertex))).toBe(true);
    const [arch] = shapes(null, 'inside', 100, arched);
    expect(arch!.shape).toEqual([
      [100, 100],
      [1100, 100],
      [1100, 1700],
      { arcTo: [100, 1700], via: [600, 2200] },
    ]);
  });

  it('larger and smaller than a zone, its holes as they are; a copy beside it', () => {
    const of = { kind: 'zone', id: 'Z1' } as const;
    expect(shapes(of, 'outside', 50)).toEqual([{ shape: box(1350, 850, 1850, 1550), holes: zone.holes }]);
    expect(shapes(of, 'inside', 50)).toEqual([{ shape: box(1450, 950, 1750, 1450), holes: zone.holes }]);
    // Less than the distance from the hole to the edge is left at a side: the hole opens into a notch.
    expect(shapes(of, 'inside', sides(200, 0, 0, 0))[0]!.holes).toEqual([]);
    expect(shapes(of, 'beside-right', 80)).toEqual([
      { shape: box(1880, 900, 2280, 1500), holes: [box(2030, 1100, 2130, 1200)] },
    ]);
    expect(shapes(of, 'beside-foot', 0)[0]!.shape).toEqual(box(1400, 300, 1800, 900));
  });

  it('says in one sentence why nothing comes of it', () => {
    expect(fault(null, 'inside', 1300)).toBe(
      'Nothing is left 1300 mm inside the outline of wall A (Stair); give less.',
    );
    expect(fault({ kind: 'zone', id: 'Z1' }, 'inside', sides(300, 300, 0, 0))).toBe(
      'Nothing is left 300 mm inside zone Z1 (Proofs); give less.',
    );
    expect(fault({ kind: 'opening', id: 'W1' }, 'round', 0)).toBe(
      'A band has to be wider than 0: type its width.',
    );
    expect(fault({ kind: 'zone', id: 'Z1' }, 'beside-left', 1400)).toContain('lies beyond the wall');
    expect(fault({ kind: 'zone', id: 'Z9' }, 'inside', 5)).toContain('no longer on this wall');
  });

  it('has sides only where the edge is a rectangle', () => {
    expect(hasSides(wall, { of: null, way: 'inside' })).toBe(true);
    expect(hasSides(arched, { of: null, way: 'inside' })).toBe(false);
    expect(hasSides(wall, { of: { kind: 'fitting', id: 'L1' }, way: 'round' })).toBe(false);
    expect(hasSides(wall, { of: { kind: 'zone', id: 'Z1' }, way: 'beside-left' })).toBe(false);
  });
});
