import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { growZone } from '../../core/job/zone-edges';
import { boxOfVertices, rectangleVertices, type MmBox } from '../../core/job/shape';
import { startNames, type Job, type Layout, type Zone } from '../../core/job/schema';
import { layOutZone } from '../../core/panels/lay-out';
import {
  countSheets,
  lengthOfSheets,
  nearestSheets,
  sheetPitch,
  wholeSheetSizes,
} from '../../core/panels/whole-sheets';
import { layoutRequest } from '../../core/run/layout-request';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';
import { layout, stockSheet } from './zones-by-hand';

function jobWith(
  box: MmBox,
  changes: Partial<Layout> = {},
  sheet: readonly [number, number] = [500, 500],
): Job {
  const shape = rectangleVertices(box);
  const zone: Zone = {
    id: 'Z1',
    name: '',
    shape,
    holes: [],
    buildUp: 'steel-panel',
    layout: layout(changes),
  };
  const wall = { ...newWall('A', '', 6000, 3000), zones: [zone] };
  return { ...emptyJob(), stock: [stockSheet(...sheet)], walls: [wall] };
}

function sizesOf(job: Job) {
  const [wall] = job.walls;
  const [zone] = wall!.zones;
  return wholeSheetSizes(zone!, sheetPitch(job, zone!.layout)!, boxOfVertices(wall!.outline));
}

const words = (job: Job) => {
  const found = sizesOf(job);
  return 'none' in found
    ? found.none
    : found.sizes.map(({ across, up, width, height }) => `${across}×${up} ${width}×${height}`);
};

describe('a zone counted in stock sheets, worked by hand', () => {
  const plain = { width: 50_000, height: 50_000, gap: 0 };
  const jointed = { width: 50_000, height: 100_000, gap: 200 };
  it('whole ones, and the width of what is cut', () => {
    expect(countSheets({ width: 1640, height: 1000 }, plain)).toEqual({
      across: { whole: 3, over: 140, open: 0 },
      up: { whole: 2, over: 0, open: 0 },
    });
  });
  it('takes off a joint before every panel but the first', () => {
    // 3 sheets and 2 joints are 1504 mm; a joint more and 138 mm of steel make 1644.
    expect(countSheets({ width: 1644, height: 1000 }, jointed).across).toEqual({
      whole: 3,
      over: 138,
      open: 0,
    });
    expect(countSheets({ width: 1504, height: 1001.5 }, jointed)).toEqual({
      across: { whole: 3, over: 0, open: 0 },
      up: { whole: 1, over: 0, open: 1.5 },
    });
    expect(lengthOfSheets(3, jointed.width, jointed.gap)).toBe(1504);
  });
  it('counts no whole one where it is smaller', () => {
    expect(countSheets({ width: 320, height: 499.99 }, plain)).toEqual({
      across: { whole: 0, over: 320, open: 0 },
      up: { whole: 0, over: 499.99, open: 0 },
    });
  });
  it('grows by a sheet as the hand passes its middle', () => {
    const counts = [0, 200, 749, 751, 1249].map((length) => nearestSheets(length, 50_000, 0));
    expect(counts).toEqual([1, 1, 1, 2, 2]);
  });
});

describe('sizes without a cut', () => {
  const box = { x: 1000, y: 500, width: 1640, height: 1080 };
  it('are the nearest, the least change first', () => {
    // 140 + 80 mm to take away, 360 to add across, 420 up.
    expect(words(jobWith(box))).toEqual(['3×2 1500×1000', '4×2 2000×1000', '3×3 1500×1500']);
  });
  it('are none where the size is one already', () => {
    expect(words(jobWith({ ...box, width: 1500, height: 1000 }))).toEqual([]);
  });
  it('turn the stock sheet and reckon with the joint', () => {
    const turned = jobWith({ ...box, width: 2000, height: 500 }, { turned: true, jointGap: 2 }, [500, 1000]);
    expect(words(turned)).toEqual(['2×1 2002×500', '1×1 1000×500']);
  });
  it('take off the margins of a sheet that is trimmed', () => {
    const job = jobWith({ ...box, width: 1000, height: 1000 });
    const trim = { left: 10, right: 10, bottom: 0, top: 0 };
    expect(words({ ...job, stock: [{ ...job.stock[0]!, trim }] })).toEqual(['2×2 960×1000', '3×2 1440×1000']);
  });
  it('leave the corner where it starts, unless the wall ends beside the other', () => {
    const growthOf = (job: Job) => {
      const found = sizesOf(job);
      return 'sizes' in found ? found.sizes.map(({ growth }) => growth) : [];
    };
    expect(growthOf(jobWith({ ...box, width: 1900, height: 1000 }))[0]).toEqual({ right: 100 });
    expect(growthOf(jobWith({ ...box, width: 1900, height: 1000 }, { start: 'lower-right' }))[0]).toEqual({
      left: 100,
    });
    expect(growthOf(jobWith({ ...box, x: 4100, width: 1900, height: 1000 }))[0]).toEqual({ left: 100 });
  });
  it('have an even number of sheets about a joint in the middle, an odd one about a panel', () => {
    expect(words(jobWith({ ...box, width: 1500, height: 1000 }, { start: 'centre-on-joint' }))).toEqual([
      '2×2 1000×1000',
      '4×2 2000×1000',
    ]);
    expect(words(jobWith({ ...box, width: 1500, height: 1100 }, { start: 'centre-on-panel' }))).toEqual([
      '3×3 1500×1500',
      '3×1 1500×500',
    ]);
  });
  it('come to the lines of a picked start', () => {
    const start = { x: 900, y: 500 };
    // From 1000 to 2640, lines at … 900, 1400, … 2400, 2900.
    expect(words(jobWith({ ...box, height: 1000 }, { start }))[0]).toBe('3×2 1500×1000');
  });
  it('move no edge past the other', () => {
    // From 1 to 306, lines at … -195, 308, 811: the foot would have to pass the top to come to 308.
    const low = jobWith({ x: 0, y: 1, width: 500, height: 305 }, { start: { x: 0, y: -195 }, jointGap: 3 });
    expect(words(low)).toBe('no room');
  });
  it('are none for staggered courses, another shape, or a sheet larger than the wall', () => {
    expect(words(jobWith({ ...box, height: 1000 }, { stagger: 0.5 }))).toBe('stagger');
    expect(words(jobWith({ ...box, height: 560 }, { stagger: 0.5 }))).toEqual([
      '3×1 1500×500',
      '4×1 2000×500',
    ]);
    const job = jobWith(box);
    const slanted: Zone = {
      ...job.walls[0]!.zones[0]!,
      shape: [
        [0, 0],
        [900, 0],
        [0, 900],
      ],
    };
    expect(words({ ...job, walls: [{ ...job.walls[0]!, zones: [slanted] }] })).toBe('not a rectangle');
    expect(words(jobWith(box, {}, [7000, 500]))).toBe('no room');
  });

  it('leave every panel whole when they are laid out on a bare wall, from any start', () => {
    const size = fc.integer({ min: 300, max: 3000 });
    fc.assert(
      fc.property(
        fc.record({
          x: fc.integer({ min: 0, max: 2500 }),
          y: fc.integer({ min: 0, max: 900 }),
          width: size,
          height: fc.integer({ min: 300, max: 2000 }),
        }),
        fc.record({
          start: fc.oneof(
            fc.constantFrom(...startNames),
            fc.record({ x: fc.integer({ min: -500, max: 3000 }), y: fc.integer({ min: -500, max: 2000 }) }),
          ),
          turned: fc.boolean(),
          jointGap: fc.constantFrom(0, 1.5, 3),
        }),
        fc.constantFrom([500, 500] as const, [610, 420] as const, [333.3, 700] as const),
        (box, changes, sheet) => {
          const job = jobWith(box, changes, sheet);
          const found = sizesOf(job);
          for (const { across, up, growth } of 'sizes' in found ? found.sizes : []) {
            const grown = growZone(job, 'A', 'Z1', growth);
            expect(grown).not.toBe(job);
            const wall = grown.walls[0]!;
            const request = layoutRequest(grown, wall, zoneAreas(surveyWall(wall))[0]!)!;
            const { panels } = layOutZone(request);
            expect(panels).toHaveLength(across * up);
            expect(panels.every(({ full }) => full)).toBe(true);
          }
        },
      ),
      { numRuns: 80 },
    );
  });
});
