import { describe, expect, it } from 'vitest';
import { partsOfBox, partsOfPoint, snap, toWholeMm, type SnapLine } from '../../../web/elevation/snap';
import { snapLines } from '../../../web/elevation/snap-lines';
import { smallWall } from '../proofing-wall';

const line = (axis: 'x' | 'y', at: number, kind: SnapLine['kind'] = 'edge'): SnapLine => ({
  axis,
  at,
  words: `line ${at}`,
  kind,
});
const box = { x: 95, y: 40, width: 100, height: 50 };

describe('snapping', () => {
  it('brings the nearest part to the nearest line, each axis on its own', () => {
    const { by, guides } = snap(partsOfBox(box), [line('x', 200), line('x', 98), line('y', 60, 'middle')], 8);
    expect(by).toEqual({ x: 3, y: -5 });
    expect(guides).toEqual([
      { axis: 'x', at: 98, words: 'left edge in line with line 98' },
      { axis: 'y', at: 60, words: 'middle in line with line 60' },
    ]);
  });

  it('does nothing beyond the tolerance', () => {
    expect(snap(partsOfBox(box), [line('x', 104)], 8)).toEqual({ by: { x: 0, y: 0 }, guides: [] });
    expect(snap(partsOfBox(box), [line('x', 103)], 8).by.x).toBe(8);
  });

  it('is held off by a tolerance below nothing, even right on a line', () => {
    expect(snap(partsOfPoint({ x: 10, y: 10 }), [line('x', 10)], -1).guides).toEqual([]);
  });

  it('says the line of the highest rank where several are equally near', () => {
    const { guides } = snap(
      partsOfPoint({ x: 1, y: 0 }),
      [line('x', 0, 'joint'), { ...line('x', 0, 'datum'), words: 'the datum' }, line('x', 2)],
      5,
    );
    expect(guides.map(({ words }) => words)).toEqual(['corner in line with the datum']);
  });

  it('brings middles in line with middles, edges with edges, both with joints', () => {
    const place = { x: 0, y: 0, width: 100, height: 100 };
    expect(snap(partsOfBox(place), [line('x', 51, 'edge')], 8).guides).toEqual([]);
    expect(snap(partsOfBox(place), [line('x', 99, 'middle')], 8).guides).toEqual([]);
    expect(snap(partsOfBox(place), [line('x', 51, 'middle')], 8).by.x).toBe(1);
    expect(snap(partsOfBox(place), [line('x', 52, 'joint')], 8).by.x).toBe(2);
    expect(snap(partsOfBox(place), [line('x', 98, 'joint')], 8).by.x).toBe(-2);
  });

  it('rounds a free hand to whole millimetres, without a minus zero', () => {
    expect(toWholeMm({ x: 10.4, y: -0.3 })).toEqual({ x: 10, y: 0 });
  });
});

describe('lines of a wall', () => {
  const words = (moving: Parameters<typeof snapLines>[1]) =>
    snapLines(smallWall, moving).map((entry) => entry.words);

  it('name the edges and middles of every other object', () => {
    const lines = snapLines(smallWall, { kind: 'fitting', id: 'K4' });
    expect(lines).toContainEqual({ axis: 'x', at: 1146, words: 'the right edge of door D1', kind: 'edge' });
    expect(lines).toContainEqual({ axis: 'y', at: 1575, words: 'the middle of zone Z1', kind: 'middle' });
    expect(lines).toContainEqual({ axis: 'x', at: 4000, words: "the wall's middle", kind: 'middle' });
  });

  it('leave out what moves', () => {
    expect(words({ kind: 'fitting', id: 'K4' }).some((text) => text.includes('K4'))).toBe(false);
    expect(words(null).some((text) => text.includes('K4'))).toBe(true);
  });

  it('take an arch up to its crown', () => {
    expect(snapLines(smallWall, null)).toContainEqual({
      axis: 'y',
      at: 2350,
      words: 'the upper edge of arch A1',
      kind: 'edge',
    });
  });
});
