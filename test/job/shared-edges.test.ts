import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intersection } from '../../core/geometry/clip';
import { regionArea } from '../../core/geometry/polygon';
import { emptyJob, newWall } from '../../core/job/defaults';
import { polygonOf } from '../../core/job/placed-regions';
import type { Job, Vertex, Zone } from '../../core/job/schema';
import { boxOfVertices, rectangleVertices, type MmBox } from '../../core/job/shape';
import { leastSide, moveSharedLine, sharedLine } from '../../core/job/shared-edges';
import { stretchTogether } from '../../web/job/changes/zone-size';

const box = (x: number, y: number, width: number, height: number): MmBox => ({ x, y, width, height });

function jobOf(shapes: readonly (MmBox | Vertex[])[]): Job {
  const zones = shapes.map((shape, i): Zone => ({
    id: `Z${i + 1}`,
    name: '',
    shape: Array.isArray(shape) ? shape : rectangleVertices(shape),
    holes: [],
    buildUp: 'chalk',
  }));
  return { ...emptyJob(), walls: [{ ...newWall('A', '', 6000, 3000), zones }] };
}

const boxes = (job: Job) => job.walls[0]!.zones.map(({ shape }) => boxOfVertices(shape));

describe('zones that touch along an edge', () => {
  const pair = jobOf([box(0, 0, 1000, 800), box(1000, 200, 1500, 400)]);

  it('share it, and each keeps at least the least size', () => {
    const line = sharedLine(pair.walls[0]!, 'Z1', 'right')!;
    expect(line).toMatchObject({ axis: 'x', at: 1000, zones: ['Z1', 'Z2'], least: -995, most: 1495 });
    expect(boxes(moveSharedLine(pair, 'A', line, 250))).toEqual([
      box(0, 0, 1250, 800),
      box(1250, 200, 1250, 400),
    ]);
    expect(boxes(moveSharedLine(pair, 'A', line, 9999))[1]!.width).toBe(leastSide);
    expect(moveSharedLine(pair, 'A', line, 0)).toBe(pair);
  });
  it('share nothing with a corner only, at a distance, or where they overlap', () => {
    for (const other of [box(1000, 800, 500, 500), box(1001, 0, 500, 500), box(900, 0, 500, 500)]) {
      expect(sharedLine(jobOf([box(0, 0, 1000, 800), other]).walls[0]!, 'Z1', 'right')).toBeNull();
    }
    expect(sharedLine(pair.walls[0]!, 'Z1', 'left')).toBeNull();
    expect(sharedLine(pair.walls[0]!, 'Z9', 'left')).toBeNull();
  });
  it('are moved as one where one edge lies beside two, whichever is moved', () => {
    const tee = jobOf([box(0, 0, 2000, 500), box(0, 500, 900, 500), box(900, 500, 1100, 700)]);
    for (const [id, edge] of [
      ['Z1', 'top'],
      ['Z2', 'bottom'],
      ['Z3', 'bottom'],
    ] as const) {
      const line = sharedLine(tee.walls[0]!, id, edge)!;
      expect(new Set(line.zones)).toEqual(new Set(['Z1', 'Z2', 'Z3']));
      expect(boxes(moveSharedLine(tee, 'A', line, -100))).toEqual([
        box(0, 0, 2000, 400),
        box(0, 400, 900, 600),
        box(900, 400, 1100, 800),
      ]);
    }
    expect(sharedLine(tee.walls[0]!, 'Z2', 'right')!.zones).toEqual(['Z2', 'Z3']);
  });
  it('follow with an inner edge of a stepped shape, and stop before its next corner or hole', () => {
    const stepped: Vertex[] = [
      [1000, 0],
      [3000, 0],
      [3000, 1500],
      [400, 1500],
      [400, 1000],
      [1000, 1000],
    ];
    const job = jobOf([box(0, 0, 1000, 1000), stepped]);
    const line = sharedLine(job.walls[0]!, 'Z1', 'right')!;
    expect(line).toMatchObject({ least: -595, most: 1995 });
    expect(moveSharedLine(job, 'A', line, 100).walls[0]!.zones[1]!.shape).toEqual([
      [1100, 0],
      ...stepped.slice(1, 5),
      [1100, 1000],
    ]);
    const zones = job.walls[0]!.zones;
    const holed = { ...zones[1]!, holes: [rectangleVertices(box(1300, 100, 200, 200))] };
    expect(sharedLine({ zones: [zones[0]!, holed] }, 'Z1', 'right')!.most).toBe(295);
  });
  it('stay where a slope or an arc meets the edge', () => {
    const sloping: Vertex[] = [
      [1000, 0],
      [3000, 0],
      [1000, 1500],
    ];
    const arched: Vertex[] = [[1000, 0], [2000, 0], [2000, 800], { arcTo: [1000, 800], via: [1500, 1200] }];
    for (const other of [sloping, arched]) {
      expect(sharedLine(jobOf([box(0, 0, 1000, 1000), other]).walls[0]!, 'Z1', 'right')).toBeNull();
    }
  });
  it('go either way round', () => {
    const backwards = rectangleVertices(box(1000, 0, 500, 800)).reverse();
    const line = sharedLine(jobOf([box(0, 0, 1000, 800), backwards]).walls[0]!, 'Z1', 'right');
    expect(line?.zones).toEqual(['Z1', 'Z2']);
  });
  it('leave the zone alone that is excepted, as a drag moves it itself', () => {
    const line = sharedLine(pair.walls[0]!, 'Z1', 'right')!;
    expect(boxes(moveSharedLine(pair, 'A', line, 100, 'Z1'))[0]).toEqual(box(0, 0, 1000, 800));
  });
});

/** A box parted again and again by level and upright cuts: zones without gap or overlap. */
const partition = fc
  .array(
    fc.record({
      which: fc.nat(),
      upright: fc.boolean(),
      share: fc.constantFrom(0.25, 0.4, 0.5, 0.5, 0.5, 0.75),
    }),
    {
      minLength: 1,
      maxLength: 9,
    },
  )
  .map((cuts) => {
    const parts = [box(400, 200, 4000, 2400)];
    for (const { which, upright, share } of cuts) {
      const [part] = parts.splice(which % parts.length, 1);
      const { x, y, width, height } = part!;
      const size = Math.round((upright ? width : height) * share * 100) / 100;
      parts.push(
        ...(upright
          ? [box(x, y, size, height), box(x + size, y, width - size, height)]
          : [box(x, y, width, size), box(x, y + size, width, height - size)]),
      );
    }
    return parts;
  });

describe('a shared edge that is moved', () => {
  const whole = 4000 * 2400 * 1e4;
  const check = (job: Job) => {
    const polygons = job.walls[0]!.zones.map(({ shape }) => polygonOf(shape));
    expect(regionArea(polygons)).toBe(whole);
    polygons.forEach((one, i) => {
      for (const other of polygons.slice(0, i)) expect(regionArea(intersection([one], [other]))).toBe(0);
    });
    for (const { width, height } of boxes(job)) {
      // Parts of the partition may be narrower than what a hand leaves.
      expect(Math.min(width, height)).toBeGreaterThan(0);
    }
  };

  it('opens no gap and makes no overlap, from whichever zone and however far', () => {
    fc.assert(
      fc.property(
        partition,
        fc.nat(),
        fc.constantFrom('left', 'right', 'bottom', 'top'),
        fc.integer({ min: -3000, max: 3000 }),
        (parts, which, edge, by) => {
          const job = jobOf(parts);
          const line = sharedLine(job.walls[0]!, `Z${(which % parts.length) + 1}`, edge);
          if (line) check(moveSharedLine(job, 'A', line, by));
        },
      ),
    );
  });

  it('nor does a corner, where both of its edges are shared, also where four zones meet', () => {
    let crossings = 0;
    fc.assert(
      fc.property(
        partition,
        fc.nat(),
        fc.constantFrom('left', 'right'),
        fc.constantFrom('bottom', 'top'),
        fc.integer({ min: -90, max: 90 }),
        fc.integer({ min: -90, max: 90 }),
        (parts, which, xEdge, yEdge, dx, dy) => {
          const job = jobOf(parts);
          const wall = job.walls[0]!;
          const id = `Z${(which % parts.length) + 1}`;
          const from = parts[which % parts.length]!;
          const corner = {
            x: xEdge === 'left' ? from.x : from.x + from.width,
            y: yEdge === 'bottom' ? from.y : from.y + from.height,
          };
          const across = sharedLine(wall, id, xEdge, corner);
          const up = sharedLine(wall, id, yEdge, corner);
          if (!across || !up) return;
          if (across.zones.length >= 4) crossings++;
          const [x, y] = [
            Math.min(across.most, Math.max(across.least, dx)),
            Math.min(up.most, Math.max(up.least, dy)),
          ];
          const to = {
            x: xEdge === 'left' ? from.x + x : from.x,
            y: yEdge === 'bottom' ? from.y + y : from.y,
            width: xEdge === 'left' ? from.width - x : from.width + x,
            height: yEdge === 'bottom' ? from.height - y : from.height + y,
          };
          check(stretchTogether(wall, { kind: 'zone', id }, to, [across, up]).change(job));
        },
      ),
      { numRuns: 400 },
    );
    expect(crossings).toBeGreaterThan(0);
  });
});
