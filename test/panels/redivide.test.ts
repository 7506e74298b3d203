import { describe, expect, it } from 'vitest';
import { boxOf } from '../../core/geometry/polygon';
import type { Layout } from '../../core/job/schema';
import { toMm } from '../../core/units';
import { layOut, mmRectangle, stockSheet, zoneArea, type MmRectangle } from './zones-by-hand';

function lay(
  zone: MmRectangle,
  openings: MmRectangle[],
  changes: Partial<Layout>,
  width = 500,
  height = 500,
) {
  return layOut(zoneArea(mmRectangle(zone), openings.map(mmRectangle), changes), stockSheet(width, height));
}

function boxes(layout: ReturnType<typeof lay>): number[][] {
  return layout.panels.map(({ outline }) => {
    const { left, bottom, right, top } = boxOf(outline.outer);
    return [left, bottom, right - left, top - bottom].map(toMm);
  });
}

const shared = { redivide: true } as const;

describe('a sliver at the end of a course', () => {
  it('is shared out: two panels of 260 mm rather than 500 and 20, in one straight joint over every course', () => {
    const layout = lay([0, 0, 1020, 1000], [], shared);
    expect(boxes(layout)).toEqual([
      [0, 0, 500, 500],
      [500, 0, 260, 500],
      [760, 0, 260, 500],
      [0, 500, 500, 500],
      [500, 500, 260, 500],
      [760, 500, 260, 500],
    ]);
    expect(layout.panels.some(({ sliver }) => sliver)).toBe(false);
    expect(layout.findings.map(({ code, text }) => [code, text])).toEqual([
      [
        'sliver-avoided',
        'Courses 1 and 2 of zone Z1 have two panels 260 mm wide instead of 500 and 20 mm, which would have left a sliver.',
      ],
    ]);
  });
  it('keeps the joint gap between them', () => {
    // 500 + 4 + 26 = 530 mm: (530 − 4) / 2 = 263.
    expect(boxes(lay([0, 0, 1034, 500], [], { ...shared, jointGap: 4 }))).toEqual([
      [0, 0, 500, 500],
      [504, 0, 263, 500],
      [771, 0, 263, 500],
    ]);
  });
  it('stays where it is not asked for, and says so', () => {
    for (const changes of [{}, { redivide: false }]) {
      const layout = lay([0, 0, 1020, 500], [], changes);
      expect(boxes(layout)[2]).toEqual([1000, 0, 20, 500]);
      expect(layout.findings.map(({ code }) => code)).toEqual(['sliver']);
    }
  });
  it('is shared out without being asked where no start avoids it', () => {
    // Strips of 400, 560 and 640 mm between openings, each to be cut nowhere nearer than 150 mm to its ends.
    const zone: MmRectangle = [0, 0, 2000, 500];
    const openings: MmRectangle[] = [
      [400, 0, 300, 500],
      [1260, 0, 100, 500],
    ];
    const best = { start: 'best', leastWidth: 150 } as const;
    const without = lay(zone, openings, { ...best, redivide: false });
    expect(without.panels.filter(({ sliver }) => sliver)).toHaveLength(1);
    const layout = lay(zone, openings, best);
    expect(layout.panels.filter(({ sliver }) => sliver)).toHaveLength(0);
    expect(layout.findings.map(({ text }) => text)).toEqual([
      'Course 1 of zone Z1 has two panels 320 mm wide instead of 500 and 140 mm, which would have left a sliver.',
    ]);
  });
});

describe('a sliver above the last course', () => {
  it('is shared out over the whole course', () => {
    expect(boxes(lay([0, 0, 1000, 1020], [], shared)).map(([, y, , height]) => [y, height])).toEqual([
      [0, 500],
      [0, 500],
      [500, 260],
      [500, 260],
      [760, 260],
      [760, 260],
    ]);
  });
  it('is shared out right across staggered courses too', () => {
    const layout = lay([0, 0, 1000, 1020], [], { ...shared, stagger: 0.5 });
    expect(layout.panels.some(({ sliver }) => sliver)).toBe(false);
    expect(new Set(boxes(layout).map(([, y, , height]) => `${y} ${height}`))).toEqual(
      new Set(['0 500', '500 260', '760 260']),
    );
  });
  it('is shared out both ways at once in a corner', () => {
    const layout = lay([0, 0, 1020, 1020], [], shared);
    expect(layout.panels.some(({ sliver }) => sliver)).toBe(false);
    expect(layout.panels).toHaveLength(9);
    expect(boxes(layout).at(-1)).toEqual([760, 760, 260, 260]);
  });
});

describe('a sliver beside an opening', () => {
  it('becomes one panel with its neighbour where that comes out of one stock sheet', () => {
    // 330 mm between two openings, cut at 310: 310 + 20 fits a stock sheet of 500.
    const layout = lay(
      [0, 0, 1500, 500],
      [
        [0, 0, 190, 500],
        [520, 0, 700, 500],
      ],
      shared,
    );
    expect(boxes(layout)[0]).toEqual([190, 0, 330, 500]);
    expect(layout.panels.some(({ sliver }) => sliver)).toBe(false);
    expect(layout.findings[0]!.text).toContain('one panel 330 mm wide');
  });
  it('is shared out beside the opening alone where the joint goes on above it', () => {
    // A door whose left side is 20 mm right of a joint, its head on a course's edge.
    const layout = lay([0, 0, 2000, 1000], [[520, 0, 480, 500]], shared);
    expect(boxes(layout).slice(0, 2)).toEqual([
      [0, 0, 260, 500],
      [260, 0, 260, 500],
    ]);
    // Above the door every panel is whole.
    expect(layout.panels.filter(({ full }) => full)).toHaveLength(4 + 2);
  });
  it('stays, with its finding, where nothing mends it', () => {
    // A tongue of 20 mm hangs from a whole panel beside the door.
    const layout = lay([0, 0, 2000, 1000], [[520, 0, 480, 540]], shared);
    expect(layout.findings.some(({ code }) => code === 'sliver')).toBe(
      layout.panels.some(({ sliver }) => sliver),
    );
  });
});
