import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../core/geometry/polygon';
import { markPanels } from '../../core/panels/marks';
import { mmRectangle } from './zones-by-hand';

const row = (count: number): Polygon[] =>
  Array.from({ length: count }, (_, i) => mmRectangle([i * 500, 0, 500, 500]));

describe('marks', () => {
  it('have two digits, and three from a hundred panels on', () => {
    expect(markPanels('A', 'Z1', row(9)).at(-1)).toBe('A-Z1-09');
    expect(markPanels('A', 'Z1', row(100))[0]).toBe('A-Z1-001');
    expect(markPanels('A', 'Z1', row(1000)).at(-1)).toBe('A-Z1-1000');
  });

  it('stay with panels of the same outline once issued; new ones get numbers never used', () => {
    const issued = row(3).map((outline, i) => ({ mark: `A-Z1-0${i + 1}`, outline }));
    const cut = mmRectangle([500, 0, 300, 500]);
    const [first, , third] = row(3);
    expect(markPanels('A', 'Z1', [cut, first!, third!], issued)).toEqual(['A-Z1-04', 'A-Z1-01', 'A-Z1-03']);
  });

  it('know an outline again from another corner and in the other direction', () => {
    const [panel] = row(1);
    const corners = [...panel!.outer].reverse();
    const turned = { outer: [...corners.slice(2), ...corners.slice(0, 2)], holes: [] };
    expect(markPanels('A', 'Z1', row(1), [{ mark: 'A-Z1-17', outline: turned }])).toEqual(['A-Z1-17']);
  });

  it('tell apart panels that differ by a hole', () => {
    const [panel] = row(1);
    const hole = [...mmRectangle([100, 100, 80, 80]).outer].reverse();
    const issued = [{ mark: 'A-Z1-01', outline: panel! }];
    expect(markPanels('A', 'Z1', [{ outer: panel!.outer, holes: [hole] }], issued)).toEqual(['A-Z1-02']);
  });
});
