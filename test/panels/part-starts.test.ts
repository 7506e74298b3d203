import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../core/job/schema';
import { toMm } from '../../core/units';
import { areaOf, rectilinearPlans } from './random-zones';
import { layOut, mmRectangle, stockSheet, zoneArea, type MmRectangle } from './zones-by-hand';

/** A wall of 2160 mm with a gap of 160 mm that leaves two parts of 1000 mm, out of step with each other. */
const zone: MmRectangle = [0, 0, 2160, 1000];
const gap: MmRectangle = [1000, 0, 160, 1000];

function lay(changes: Partial<Layout>) {
  return layOut(zoneArea(mmRectangle(zone), [mmRectangle(gap)], changes), stockSheet(500, 500));
}

describe('a start for each connected part', () => {
  it('lays whole stock sheets in both of two parts that one start cannot serve', () => {
    const together = lay({ start: 'best' });
    expect(together.panels.every(({ full }) => full)).toBe(false);
    expect(together.parts).toBeUndefined();

    const apart = lay({ start: 'best', startEachPart: true });
    expect(apart.panels.map(({ full }) => full)).toEqual(Array(8).fill(true));
    expect(
      apart.parts!.map(({ start, box }) =>
        [start, box].flatMap(({ ...all }) => Object.values(all).map(toMm)),
      ),
    ).toEqual([
      [0, 0, 0, 0, 1000, 1000],
      [1160, 0, 1160, 0, 2160, 1000],
    ]);
    expect(apart.start).toEqual(apart.parts![0]!.start);
    expect(apart.chosen).toMatchObject({ slivers: 0, stockSheets: 8, cutPanels: 0, panels: 8 });
    // One part's panels after the other's, under one run of numbers.
    expect(apart.panels.map(({ mark, cell }) => `${mark} ${toMm(cell.x)}`)).toEqual([
      'A-Z1-01 0',
      'A-Z1-02 500',
      'A-Z1-03 0',
      'A-Z1-04 500',
      'A-Z1-05 1160',
      'A-Z1-06 1660',
      'A-Z1-07 1160',
      'A-Z1-08 1660',
    ]);
  });

  it('offers one start for all parts as the next best', () => {
    const { runnersUp, chosen } = lay({ start: 'best', startEachPart: true });
    expect(runnersUp[0]).toEqual(lay({ start: 'best' }).chosen);
    expect(runnersUp[0]!.cutPanels).toBeGreaterThan(chosen!.cutPanels);
  });

  it('is not looked for where the start is picked', () => {
    expect(lay({ start: 'lower-left', startEachPart: true })).toEqual(lay({ start: 'lower-left' }));
  });

  it('is never worse than one start for all: in slivers, then stock sheets, then cut panels', () => {
    let better = 0;
    fc.assert(
      fc.property(rectilinearPlans, fc.constantFrom(0, 3.5), (plan, jointGap) => {
        const search = { start: 'best', jointGap, redivide: false } as const;
        const one = layOut(areaOf(plan, search), stockSheet(400, 300));
        const each = layOut(areaOf(plan, { ...search, startEachPart: true }), stockSheet(400, 300));
        const [a, b] = [each.chosen!, one.chosen!];
        const order = a.slivers - b.slivers || a.stockSheets - b.stockSheets || a.cutPanels - b.cutPanels;
        expect(order).toBeLessThanOrEqual(0);
        expect(each.panels.filter(({ sliver }) => sliver)).toHaveLength(a.slivers);
        expect(each.panels).toHaveLength(a.panels);
        expect(new Set(each.panels.map(({ mark }) => mark)).size).toBe(each.panels.length);
        if (order < 0) better++;
      }),
      { numRuns: 120, seed: 7 },
    );
    expect(better).toBeGreaterThan(0);
  });
});
