import { describe, expect, it } from 'vitest';
import { addFitting, addOpening, addWall, addZone } from '../../core/job/changes';
import {
  defaultFitting,
  defaultLayout,
  defaultOpening,
  emptyJob,
  newFitting,
  newOpening,
  newWall,
  newZone,
} from '../../core/job/defaults';
import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import { fittingKinds, openingKinds } from '../../core/job/schema';

describe('new things', () => {
  const job = addWall(emptyJob(), newWall('A', 'North wall', 4200, 2600));

  it('an empty job is a sound one, and has steel to lay', () => {
    expect(readJobObject(emptyJob())).toEqual({ job: emptyJob(), findings: [] });
    expect(emptyJob().stock.map(({ width, height, thickness }) => [width, height, thickness])).toEqual([
      [500, 500, 0.5],
      [1000, 2000, 0.5],
    ]);
  });

  it('each kind of opening and fitting stands on a wall under an id of its own', () => {
    let full = job;
    for (const kind of openingKinds)
      full = addOpening(full, 'A', newOpening(full.walls[0]!, kind, { x: 1000 }));
    for (const kind of fittingKinds)
      full = addFitting(full, 'A', newFitting(full.walls[0]!, kind, { x: 1000 }));
    full = addZone(full, 'A', newZone(full, full.walls[0]!, { x: 0, y: 1000, width: 2000, height: 1000 }));
    expect(readJobObject(full)).toEqual({ job: full, findings: [] });
    expect(full.walls[0]!.openings[0]).toMatchObject({ id: 'D1', kind: 'door', hinge: 'left', y: 0 });
    expect(full.walls[0]!.zones[0]).toMatchObject({
      id: 'Z1',
      layout: { stock: 'S1', start: 'best', clearOfCorners: 100 },
    });
    expect(newFitting(full.walls[0]!, 'socket').id).toBe('K2');
  });

  it('ids of one kind never begin like those of another', () => {
    const prefixes = [
      ...openingKinds.map(defaultOpening),
      ...fittingKinds.map((kind) => defaultFitting(kind)),
    ].map(({ prefix }) => prefix);
    expect(new Set([...prefixes, 'Z']).size).toBe(prefixes.length + 1);
    expect(defaultFitting('ladder').label).toBe('Fitting');
    expect(defaultOpening('constructor').label).toBe('Opening');
  });

  it('a zone of paint has no layout, nor has one of steel without stock', () => {
    const box = { x: 0, y: 0, width: 1000, height: 1000 };
    expect(newZone(job, job.walls[0]!, box, 'chalk').layout).toBeUndefined();
    expect(defaultLayout({ ...job, stock: [] })).toBeUndefined();
  });
});

describe('heights above the floor: DIN 18015-3:2016-09, as secondary pages give it', () => {
  it.each([
    ['socket', 300],
    ['switch', 1050],
    ['thermostat', 1400],
  ])('the middle of a %s is at %i mm', (kind, middle) => {
    const { y, height } = defaultFitting(kind);
    expect(y + height / 2).toBe(middle);
  });
});

describe('a new zone', () => {
  const box = { x: 0, y: 0, width: 1000, height: 500 };

  it('is of steel panels, laid out at once; on glass it is film', () => {
    const job = demoJob();
    const wall = job.walls[0]!;
    const steel = newZone(job, wall, box);
    expect([steel.buildUp, steel.layout?.stock]).toEqual(['steel-panel', job.stock[0]!.id]);
    const glass = newZone(job, { ...wall, ground: { material: 'glass' } }, box);
    expect([glass.buildUp, glass.layout]).toEqual(['glass-film', undefined]);
  });
});

describe('the demo job', () => {
  const { walls, stock, rack, cutting } = demoJob();

  it('has a sloping ceiling, an arch and a stair', () => {
    expect(walls.map(({ name }) => name)).toEqual(['Proofing wall', 'Type store', 'Stair wall']);
    const [a, b, c] = walls;
    expect(a!.outline.some((vertex, i, all) => isSloping(vertex, all[(i + 1) % all.length]))).toBe(true);
    expect(b!.openings.some(({ shape }) => shape?.some((vertex) => !Array.isArray(vertex)))).toBe(true);
    expect(c!.outline.length).toBeGreaterThan(16);
  });

  it('has nine or more fittings, three or more zones, two stock formats, a rack and a shear', () => {
    expect(walls.flatMap(({ fittings }) => fittings).length).toBeGreaterThanOrEqual(9);
    expect(walls.flatMap(({ zones }) => zones).length).toBeGreaterThanOrEqual(3);
    expect(stock.map(({ spares }) => spares)).toEqual([1, 1]);
    expect(rack).toHaveLength(2);
    expect(cutting).toEqual({ method: 'edge-to-edge', kerf: 0, leastOffcut: [150, 150] });
  });

  it('stairs of 180 to 270 mm: twice the rise and the going make a stride of 630 (common practice, no source)', () => {
    const steps = walls[2]!.outline.slice(1, 15) as [number, number][];
    for (let i = 0; i + 2 < steps.length; i += 2) {
      const [foot, top, next] = [steps[i]!, steps[i + 1]!, steps[i + 2]!];
      expect(2 * (top[1] - foot[1]) + (next[0] - top[0])).toBe(630);
    }
  });
});

function isSloping(a: unknown, b: unknown): boolean {
  const [ax, ay] = a as number[];
  const [bx, by] = b as number[];
  return ax !== bx && ay !== by;
}
