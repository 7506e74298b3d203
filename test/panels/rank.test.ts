import { describe, expect, it } from 'vitest';
import { compareStarts, podium } from '../../core/panels/rank';
import type { StartCandidate } from '../../core/panels/panel';

const box = { left: 0, bottom: 0, right: 200000, top: 100000 };
const pattern = { width: 50000, height: 50000, pitchX: 50000, pitchY: 50000, stagger: 0 };

function candidate(changes: Partial<StartCandidate>): StartCandidate {
  return {
    start: { x: 0, y: 0 },
    slivers: 0,
    nearCorners: 0,
    stockSheets: 8,
    cutPanels: 4,
    cutLength: 200000,
    panels: 8,
    asymmetry: 0,
    ...changes,
  };
}

const size = (width: number, height: number) => ({ width, height, area: width * height });

describe('the order of starts', () => {
  it('is slivers, joints near corners, stock sheets, cut panels, cut length, symmetry', () => {
    const inOrder = [
      candidate({ asymmetry: 100 }),
      candidate({ cutLength: 200100 }),
      candidate({ cutPanels: 5, cutLength: 0 }),
      candidate({ stockSheets: 9, cutPanels: 0 }),
      candidate({ nearCorners: 1, stockSheets: 1 }),
      candidate({ slivers: 1, nearCorners: 0, stockSheets: 1 }),
    ];
    inOrder.reduce((better, worse) => {
      expect(compareStarts(better, worse, box, pattern)).toBeLessThan(0);
      return worse;
    }, candidate({}));
  });
});

describe('the next best starts', () => {
  it('hold no mirror image of a better one, and none a little way off', () => {
    const places = podium(4, 10000, box, pattern);
    places.enter(candidate({}), [size(30000, 50000), size(20000, 50000)]);
    places.enter(candidate({ start: { x: 20000, y: 0 }, asymmetry: 5 }), [
      size(20000, 50000),
      size(30000, 50000),
    ]);
    places.enter(candidate({ start: { x: 100, y: 49900 }, cutPanels: 5 }), [size(1000, 1000)]);
    expect(places.places).toHaveLength(1);
    places.enter(candidate({ start: { x: 20000, y: 0 }, cutPanels: 5 }), [size(20000, 50000)]);
    expect(places.places.map(({ cutPanels }) => cutPanels)).toEqual([4, 5]);
  });

  it('give way to a better one that is alike', () => {
    const places = podium(4, 10000, box, pattern);
    places.enter(candidate({ asymmetry: 9 }), [size(30000, 50000)]);
    places.enter(candidate({ start: { x: 25000, y: 25000 } }), [size(31000, 49000)]);
    expect(places.places.map(({ asymmetry }) => asymmetry)).toEqual([0]);
  });
});
