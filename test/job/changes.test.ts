import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as changes from '../../core/job/changes';
import { newFitting, newOpening, newWall, newZone } from '../../core/job/defaults';
import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import type { Job, Opening } from '../../core/job/schema';
import { boxOfObject, findObject, findWall } from '../../core/job/shape';

const job = demoJob();
const a = findWall(job, 'A')!;
const socket = { kind: 'fitting', id: 'K4' } as const;
const zone = { kind: 'zone', id: 'Z1' } as const;

/** Each change of something on wall A. */
const onWallA: readonly [string, (job: Job) => Job][] = [
  ['changeWall', (job) => changes.changeWall(job, 'A', (wall) => ({ ...wall, name: 'Long wall' }))],
  ['addOpening', (job) => changes.addOpening(job, 'A', newOpening(a, 'hatch', { x: 4000 }))],
  ['addFitting', (job) => changes.addFitting(job, 'A', newFitting(a, 'light', { x: 4000 }))],
  [
    'addZone',
    (job) => changes.addZone(job, 'A', newZone(job, a, { x: 3500, y: 300, width: 100, height: 100 })),
  ],
  [
    'changeObject',
    (job) => changes.changeObject<Opening>(job, 'A', { kind: 'opening', id: 'D1' }, { hinge: 'right' }),
  ],
  ['removeObject', (job) => changes.removeObject(job, 'A', socket)],
  ['copyObject', (job) => changes.copyObject(job, 'A', socket, 200, 0)],
  ['moveObject', (job) => changes.moveObject(job, 'A', socket, 10, 0)],
  ['fitObject', (job) => changes.fitObject(job, 'A', zone, { x: 1420, y: 700, width: 1500, height: 1500 })],
  ['reorderZone', (job) => changes.reorderZone(job, 'A', 'Z2', -1)],
  ['moveVertex', (job) => changes.moveVertex(job, 'A', null, 3, { x: 3800, y: 2700 })],
  ['insertVertex', (job) => changes.insertVertex(job, 'A', zone, 1, { x: 2000, y: 650 })],
  ['removeVertex', (job) => changes.removeVertex(job, 'A', null, 3)],
  ['resizeOutline', (job) => changes.resizeOutline(job, 'A', 6000, 2700)],
];

describe('a change of one wall', () => {
  it.each(onWallA)('%s shares the other walls and all else, and leaves a sound job', (_, change) => {
    const before = structuredClone(job);
    const after = change(job);
    expect(job).toEqual(before);
    expect(after.walls[0]).not.toEqual(job.walls[0]);
    expect(after.walls[1]).toBe(job.walls[1]);
    expect(after.walls[2]).toBe(job.walls[2]);
    expect(after.stock).toBe(job.stock);
    expect(readJobObject(after).findings).toEqual([]);
  });

  it('leaves the job as it was if the id names nothing', () => {
    const none = { kind: 'zone', id: 'Z99' } as const;
    expect(changes.removeWall(job, 'X')).toBe(job);
    expect(changes.changeObject(job, 'A', none, { name: 'x' })).toBe(job);
    expect(changes.removeObject(job, 'A', none)).toBe(job);
    expect(changes.moveObject(job, 'A', none, 5, 5)).toBe(job);
    expect(changes.copyObject(job, 'A', none, 5, 5)).toBe(job);
    expect(changes.moveVertex(job, 'A', none, 0, { x: 0, y: 0 })).toBe(job);
    expect(changes.reorderZone(job, 'A', 'Z1', -1)).toBe(job);
    expect(changes.changeStock(job, 'S99', { price: 1 })).toBe(job);
    expect(changes.removeStock(job, 'S99')).toBe(job);
  });
});

describe('what a change does', () => {
  it('moves an arch with its arc, there and back again', () => {
    const arch = { kind: 'opening', id: 'A1' } as const;
    const moved = changes.moveObject(job, 'B', arch, 100.5, 0);
    expect((findObject(moved.walls[1]!, arch) as Opening).shape![3]).toEqual({
      arcTo: [3300.5, 1750],
      via: [3900.5, 2350],
    });
    expect(changes.moveObject(moved, 'B', arch, -100.5, 0)).toEqual(job);
  });

  it('fits a circle into a box by its smaller side', () => {
    const light = { kind: 'fitting', id: 'L1' } as const;
    const after = changes.fitObject(job, 'C', light, { x: 500, y: 2300, width: 300, height: 200 });
    expect(boxOfObject(findObject(after.walls[2]!, light)!)).toEqual({
      x: 550,
      y: 2300,
      width: 200,
      height: 200,
    });
  });

  it('copies under a fresh id, right after the original', () => {
    const after = changes.copyObject(job, 'A', { kind: 'fitting', id: 'K1' }, 500, 0);
    expect(after.walls[0]!.fittings.map(({ id }) => id)).toEqual(['S1', 'K1', 'K5', 'K2', 'K3', 'K4']);
    expect(after.walls[0]!.fittings[2]).toMatchObject({ x: 2060, y: 300 });
  });

  it('takes a field out that is set to undefined', () => {
    const after = changes.changeObject(job, 'A', zone, { layout: undefined });
    expect(Object.keys(after.walls[0]!.zones[0]!)).not.toContain('layout');
  });

  it('never takes one of the last three vertices', () => {
    const triangle = changes.addWall(job, {
      ...newWall('T', '', 1000, 1000),
      outline: [
        [0, 0],
        [900, 0],
        [0, 900],
      ],
    });
    expect(changes.removeVertex(triangle, 'T', null, 0).walls[3]!.outline).toHaveLength(3);
  });

  it('names walls A, B, … Z, then W27, and objects by the lowest free number', () => {
    let many: Job = { ...job, walls: [] };
    for (let i = 0; i < 28; i++)
      many = changes.addWall(many, newWall(changes.freshWallId(many), '', 1000, 1000));
    expect(many.walls.map(({ id }) => id).slice(-4)).toEqual(['Y', 'Z', 'W27', 'W28']);
    expect(
      changes.freshId(changes.removeObject(job, 'A', { kind: 'fitting', id: 'K2' }).walls[0]!, 'K'),
    ).toBe('K2');
    expect(changes.freshId(a, 'Q')).toBe('Q1');
  });
});

describe('arcs whose ends are dragged', () => {
  const arch = { kind: 'opening', id: 'A1' } as const;
  const mm = fc.integer({ min: -300, max: 300 });

  it('keep the angle they span', () => {
    fc.assert(
      fc.property(fc.constantFrom(2, 3), mm, mm, (index, dx, dy) => {
        const to = index === 2 ? { x: 4400 + dx, y: 1750 + dy } : { x: 3200 + dx, y: 1750 + dy };
        const after = changes.moveVertex(job, 'B', arch, index, to);
        const [, , start, end] = findObject(after.walls[1]!, arch)!.shape as [
          unknown,
          unknown,
          number[],
          { arcTo: number[]; via: number[] },
        ];
        // Thales: the demo's arch is half a circle, and so it sees its chord under a right angle.
        const u = [start[0]! - end.via[0]!, start[1]! - end.via[1]!];
        const v = [end.arcTo[0]! - end.via[0]!, end.arcTo[1]! - end.via[1]!];
        const cosine = (u[0]! * v[0]! + u[1]! * v[1]!) / (Math.hypot(...u) * Math.hypot(...v));
        expect(Math.abs(cosine)).toBeLessThan(1e-4);
      }),
      { seed: 4 },
    );
  });

  it('keep it too when the vertex before them goes or comes', () => {
    const without = changes.removeVertex(job, 'B', arch, 2);
    expect(readJobObject(without).findings).toEqual([]);
    const between = changes.insertVertex(job, 'B', arch, 3, { x: 4300, y: 1900 });
    expect(readJobObject(between).findings).toEqual([]);
  });
});
