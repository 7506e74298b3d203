import { describe, expect, it } from 'vitest';
import { placeLabels, type WantedLabel } from '../../../web/elevation/layers/hung-labels';

const within = { left: 0, top: 0, right: 1000, bottom: 600 };
const six = (words: string) => words.length * 6;
const at = (left: number, top: number, width: number, height: number): WantedLabel => ({
  box: { left, top, right: left + width, bottom: top + height },
  words: ['does not hold, 0.8 times', 'does not hold'],
  widest: Infinity,
  away: 3,
});
const texts = (wanted: WantedLabel[], taken: Parameters<typeof placeLabels>[2] = []) =>
  placeLabels(wanted, within, taken, six);

describe('where the state of a hung item stands', () => {
  it('above it, with all words, where there is room', () => {
    const [label] = texts([at(100, 100, 60, 80)]);
    expect(label).toMatchObject({ text: 'does not hold, 0.8 times', isSmall: false });
    expect(label!.y).toBeLessThan(100);
    expect(label!.x).toBeGreaterThanOrEqual(100);
  });

  it('below it where something lies above', () => {
    const [label] = texts([at(100, 100, 60, 80)], [{ left: 0, top: 60, right: 400, bottom: 99 }]);
    expect(label!.y).toBeGreaterThan(180);
  });

  it('in fewer words where the next item leaves no more, and as a mark alone where none fit', () => {
    const beside = at(250, 70, 60, 120);
    expect(texts([at(100, 100, 60, 80), beside])[0]!.text).toBe('does not hold');
    const wall = [
      { left: 0, top: 0, right: 1000, bottom: 99 },
      { left: 0, top: 181, right: 1000, bottom: 600 },
    ];
    expect(texts([at(100, 100, 60, 80)], wall)[0]).toEqual({ text: '', isSmall: false, x: 110, y: 110 });
  });

  it('never over another item or label, on a wall full of them', () => {
    const wanted = Array.from({ length: 60 }, (_, i) =>
      at(10 + (i % 10) * 95, 30 + Math.floor(i / 10) * 90, 60, 60),
    );
    const labels = texts(wanted);
    const areas = labels.flatMap(({ x, y, text }) =>
      text ? [{ left: x - 7.5, right: x + 7.5 + 4 + six(text), top: y - 8.5, bottom: y + 8.5 }] : [],
    );
    const boxes = wanted.map(({ box }) => box);
    const meet = (a: (typeof boxes)[number], b: (typeof boxes)[number]) =>
      a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
    expect(areas.length).toBeGreaterThan(0);
    for (const [i, area] of areas.entries()) {
      expect(areas.some((other, j) => j !== i && meet(area, other))).toBe(false);
      expect(boxes.some((box) => meet(area, box))).toBe(false);
    }
  });
});
