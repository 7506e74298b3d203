import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { cutList } from '../../core/drawings/cut-list';
import { cutSheets } from '../../core/drawings/cut-sheets';
import { measureWith } from '../../core/drawings/fonts';
import { figuresOf } from '../../core/drawings/job-figures';
import { placedPanels } from '../../core/drawings/placed-panels';
import { jobSchema, type Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);

const round = fc.record({
  kind: fc.constant('pipe'),
  circle: fc.record({
    x: fc.integer({ min: 300, max: 3600 }),
    y: fc.integer({ min: 300, max: 2200 }),
    diameter: fc.integer({ min: 20, max: 260 }),
  }),
  clearance: fc.integer({ min: 0, max: 20 }),
});
const square = fc.record({
  kind: fc.constantFrom('socket', 'switch', 'radiator'),
  x: fc.integer({ min: 200, max: 3500 }),
  y: fc.integer({ min: 100, max: 2200 }),
  width: fc.integer({ min: 60, max: 500 }),
  height: fc.integer({ min: 60, max: 300 }),
  clearance: fc.integer({ min: 0, max: 20 }),
});

/** A wall with a slope and an arch, fittings anywhere, one steel zone; both ways of cutting, with and without kerf. */
const jobs: fc.Arbitrary<Job> = fc
  .record({
    stock: fc.constantFrom<[number, number][]>([500, 500], [600, 900], [1000, 2000], [1250, 2500]),
    fittings: fc.array(fc.oneof(round, square), { maxLength: 6 }),
    left: fc.integer({ min: 0, max: 900 }),
    bottom: fc.integer({ min: 0, max: 700 }),
    width: fc.integer({ min: 400, max: 3000 }),
    height: fc.integer({ min: 300, max: 1900 }),
    method: fc.constantFrom('edge-to-edge', 'free'),
    kerf: fc.constantFrom(0, 2),
    start: fc.constantFrom('lower-left', 'centre-on-joint', 'upper-right'),
    buildUp: fc.constantFrom('steel-panel', 'steel-panel-writable', 'steel-panel-chalk'),
  })
  .map(
    ({
      stock: [sheetWidth, sheetHeight],
      fittings,
      left,
      bottom,
      width,
      height,
      method,
      kerf,
      start,
      buildUp,
    }) =>
      v.parse(jobSchema, {
        format: 'lodeplan-job',
        version: 1,
        name: 'Any wall',
        revision: 'A',
        cutting: { method, kerf, leastOffcut: [100, 100] },
        stock: [{ id: 'S1', width: sheetWidth, height: sheetHeight, thickness: 0.5 }],
        rack: [{ id: 'R1', stock: 'S1', width: 400, height: 450 }],
        walls: [
          {
            id: 'A',
            name: 'Wall with a slope and an arch',
            outline: [
              [0, 0],
              [4000, 0],
              [4000, 2100],
              [3100, 2600],
              [0, 2600],
            ],
            openings: [
              {
                id: 'O1',
                kind: 'arch',
                shape: [[800, 0], [1800, 0], [1800, 1200], { arcTo: [800, 1200], via: [1300, 1700] }],
                clearance: 30,
              },
            ],
            fittings: fittings.map((fitting, i) => ({ id: `F${i + 1}`, ...fitting })),
            zones: [
              {
                id: 'Z1',
                name: 'Pins',
                buildUp,
                shape: [
                  [left, bottom],
                  [left + width, bottom],
                  [left + width, bottom + height],
                  [left, bottom + height],
                ],
                layout: { stock: 'S1', start },
              },
            ],
          },
        ],
      }),
  );

describe('documents of any wall', () => {
  it('property: no text lies on another or leaves the frame, every mark is there, steel is conserved', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const worked = workOutFully(job, { steps: 1 });
        const sheets = cutSheets(worked, measure);
        expect(textFaults(sheets, measure, true)).toEqual([]);
        expect(textFaults(cutList(worked, measure), measure, true)).toEqual([]);
        expect(textFaults(clientView(worked, measure), measure, false)).toEqual([]);
        const words = new Set(wordsOf(sheets).split(/[\s,;:]+/));
        for (const { panel } of placedPanels(worked)) expect(words.has(panel.mark)).toBe(true);
        const { sheetArea, panelArea, keptArea, wasteArea } = figuresOf(worked);
        expect(wasteArea).toBeGreaterThanOrEqual(0);
        expect(panelArea + keptArea + wasteArea).toBeCloseTo(sheetArea, 0);
      }),
      { numRuns: 25, seed: 20260302 },
    );
  });
});
