import { describe, expect, it } from 'vitest';
import { polygonArea, regionArea } from '../../core/geometry/polygon';
import type { Layout } from '../../core/job/schema';
import { toMm } from '../../core/units';
import { layOut, mmPolygon, mmRectangle, stockSheet, zoneArea, type MmRectangle } from './zones-by-hand';

function lay(
  zone: MmRectangle,
  openings: MmRectangle[],
  changes: Partial<Layout>,
  width = 500,
  height = 500,
) {
  return layOut(zoneArea(mmRectangle(zone), openings.map(mmRectangle), changes), stockSheet(width, height));
}

function cells(changes: Partial<Layout>, zone: MmRectangle = [0, 0, 1200, 800]) {
  return lay(zone, [], changes).panels.map(({ cell, course }) => [toMm(cell.x), toMm(cell.y), course]);
}

describe('named starts on a zone of 1200 × 800 mm at (100, 200), by hand', () => {
  const zone: MmRectangle = [100, 200, 1200, 800];
  const start = (name: Layout['start'], jointGap = 0) => {
    const { x, y } = lay(zone, [], { start: name, jointGap }).start;
    return [toMm(x), toMm(y)];
  };
  it.each([
    ['lower-left', [100, 200]],
    ['lower-right', [800, 200]],
    ['upper-left', [100, 500]],
    ['upper-right', [800, 500]],
    ['centre-on-joint', [700, 600]],
    ['centre-on-panel', [450, 350]],
  ] as const)('%s', (name, expected) => expect(start(name)).toEqual(expected));
  it('puts the middle of a 4 mm joint on the middle', () =>
    expect(start('centre-on-joint', 4)).toEqual([702, 602]));
  it('keeps a picked point', () => expect(start({ x: 33.3, y: -7 })).toEqual([33.3, -7]));
});

describe('courses', () => {
  it('are counted from the one that starts at the start', () => {
    expect(cells({ start: { x: 0, y: 500 } })).toEqual([
      [0, 0, -1],
      [500, 0, -1],
      [1000, 0, -1],
      [0, 500, 0],
      [500, 500, 0],
      [1000, 500, 0],
    ]);
  });
  it('shift right going up and left going down, by a half', () => {
    const lefts = (course: number, start: Layout['start']) =>
      cells({ start, stagger: 0.5 }, [0, 0, 1000, 1500])
        .filter((cell) => cell[2] === course)
        .map(([x]) => x);
    expect(lefts(0, { x: 0, y: 500 })).toEqual([0, 500]);
    expect(lefts(1, { x: 0, y: 500 })).toEqual([-250, 250, 750]);
    expect(lefts(-1, { x: 0, y: 500 })).toEqual([-250, 250, 750]);
  });
  it('shift by a third of the sheet modulo the pitch, joint included', () => {
    const lefts = (course: number) =>
      cells({ start: { x: 0, y: 0 }, stagger: 1 / 3, jointGap: 2 }, [0, 0, 1004, 2008])
        .filter((cell) => cell[2] === course)
        .map(([x]) => x);
    expect(lefts(0)).toEqual([0, 502]);
    // 166.67 to the right; the cell left of it begins a pitch of 502 before.
    expect(lefts(1)).toEqual([-335.33, 166.67, 668.67]);
    expect(lefts(3)).toEqual([-2, 500, 1002]);
  });
  it('take a turned sheet by its other side', () => {
    const { panels } = lay([0, 0, 1000, 500], [], { turned: true }, 500, 1000);
    expect(panels.map(({ full }) => full)).toEqual([true]);
  });
});

describe('panels', () => {
  it('cover a zone of 2 × 1 m with eight whole half-metre plates and no cut (common practice, no source)', () => {
    for (const start of ['lower-left', 'best'] as const) {
      const { panels } = lay([0, 0, 2000, 1000], [], { start });
      expect(panels).toHaveLength(8);
      expect(panels.every(({ full }) => full)).toBe(true);
    }
  });
  it('are one for each connected part of a cell', () => {
    const { panels } = lay([0, 0, 500, 500], [[200, 0, 100, 500]], {});
    expect(panels.map(({ outline }) => polygonArea(outline) / 1e4)).toEqual([100_000, 100_000]);
    expect(panels.map(({ mark }) => mark)).toEqual(['A-Z1-01', 'A-Z1-02']);
  });
  it('keep a hole, and know why each edge is there', () => {
    const [panel] = lay([0, 0, 400, 500], [[100, 100, 80, 80]], {}).panels;
    expect(panel!.outline.holes).toHaveLength(1);
    expect(panel!.full).toBe(false);
    // The zone is as high as the sheet: three sides are the zone's, the right one too, cut off the sheet.
    expect(panel!.causes[0]).toEqual(Array(4).fill({ kind: 'zone', id: 'Z1' }));
    expect(panel!.causes[1]).toEqual(Array(4).fill({ kind: 'opening', id: 'O1' }));
  });
  it('have stock edges at the joints', () => {
    const [first] = lay([0, 0, 800, 500], [], {}).panels;
    expect(first!.causes[0]!.map(({ kind }) => kind)).toEqual(['zone', 'stock-edge', 'zone', 'zone']);
  });
  it('lie between joints', () => {
    const { panels } = lay([0, 0, 1010, 500], [], { jointGap: 10 });
    expect(panels.map(({ outline }) => outline.outer[0]!.x)).toEqual([0, 51000]);
    expect(panels.every(({ full }) => full)).toBe(true);
  });
  it('follow a sloping ceiling', () => {
    const area = zoneArea(
      mmPolygon([
        [0, 0],
        [2000, 0],
        [2000, 700],
        [0, 1900],
      ]),
      [],
    );
    const { panels } = layOut(area, stockSheet(500, 500));
    const sum = panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
    // 0.01 mm along the slope of 2332 mm.
    expect(Math.abs(sum - regionArea(area.area))).toBeLessThan(233_238);
    expect(panels.filter(({ outline }) => outline.outer.length === 3).length).toBeGreaterThan(0);
  });
  it('are none where nothing is left, and a finding says so', () => {
    const { panels, findings } = lay([0, 0, 400, 400], [[-10, -10, 500, 500]], { start: 'best' });
    expect(panels).toEqual([]);
    expect(findings.map(({ code, object }) => [code, object])).toEqual([['zone-without-panels', 'Z1']]);
  });
});
