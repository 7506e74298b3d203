import { describe, expect, it } from 'vitest';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { compareWorked } from '../../core/run/compare-worked';
import { workOutFully } from '../../core/run/pipeline';

/** A zone on sheets of 500 × 500 without a joint gap, its lower left corner at (`left`, 500), panels from there. */
function worked({ left = 400, width = 2000, height = 1000, price = 10 } = {}) {
  const right = left + width;
  const top = 500 + height;
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Print studio',
    stock: [{ id: 'S1', name: 'Steel', width: 500, height: 500, thickness: 0.5, price }],
    walls: [
      {
        id: 'A',
        name: 'Proofing wall',
        outline: [
          [0, 0],
          [4000, 0],
          [4000, 2600],
          [0, 2600],
        ],
        zones: [
          {
            id: 'Z1',
            shape: [
              [left, 500],
              [right, 500],
              [right, top],
              [left, top],
            ],
            buildUp: 'steel-panel',
            layout: { stock: 'S1', start: { x: left, y: 500 }, gap: 0 },
          },
        ],
      },
    ],
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join('\n'));
  return workOutFully(job satisfies Job, { steps: 20 });
}
const texts = (...[before, after]: Parameters<typeof compareWorked>) =>
  compareWorked(before, after).map(({ text }) => text);

describe('compareWorked', () => {
  const before = worked();

  it('tells nothing of a plan that is the same', () => {
    expect(before.walls[0]!.zones[0]!.layout?.panels).toHaveLength(8);
    expect(compareWorked(before, worked())).toEqual([]);
  });

  it('counts panels and stock sheets: (2000/500) × (1000/500) = 8 sheets, then 5 × 2 = 10', () => {
    const said = texts(before, worked({ width: 2500 }));
    expect(said).toContainEqual(expect.stringContaining('2 panels more, 10 instead of 8'));
    expect(said).toContain('Plan: stock sheets to order of Steel: 10 instead of 8.');
    expect(said).toContainEqual(expect.stringContaining('price of the stock sheets'));
  });

  it('counts what is cut: a column of 250 mm is two half sheets, one sheet more', () => {
    const said = texts(before, worked({ width: 2250 }));
    expect(said).toContainEqual(
      expect.stringContaining('2 panels more, 10 instead of 8; 2 cut instead of 0'),
    );
    expect(said).toContain('Plan: stock sheets to order of Steel: 9 instead of 8.');
    // One cut of 500 mm through the sheet that gives both halves.
    expect(said).toContain('Plan: length to cut 0.5 m instead of 0 m.');
  });

  it('tells a zone that only moved as moved, not its panels as laid differently', () => {
    const differences = compareWorked(before, worked({ left: 700 }));
    expect(differences.map(({ kind, subject }) => [kind, subject])).toContainEqual(['moved', 'zone']);
    expect(differences.filter(({ subject }) => subject === 'panels' || subject === 'plan')).toEqual([]);
  });

  it('tells a price alone as one of the plan', () => {
    const plan = compareWorked(before, worked({ price: 12 })).filter(({ subject }) => subject === 'plan');
    expect(plan).toHaveLength(1);
    expect(plan[0]!.text).toMatch(/^Plan: price of the stock sheets .*96.* instead of .*80/);
  });
});
