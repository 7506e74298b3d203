import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { holdingTable } from '../../core/drawings/holding-table';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { smallWorkedOut } from './small-job';

const demo = workOutFully(demoJob(), { steps: 2 });

describe('the list of checks, read back by papaparse', () => {
  const read = (worked: WorkedOut) =>
    Papa.parse<Record<string, string>>(holdingTable(worked)!, { header: true, skipEmptyLines: true }).data;

  it('has a row an item, with what the wall shows of it, never rounded up', () => {
    const rows = read(demo);
    const verdicts = demo.walls.flatMap(({ hung }) => hung);
    expect(rows.map(({ item }) => item)).toEqual(verdicts.map(({ id }) => id));
    for (const [i, { state, factor, caution }] of rows.entries()) {
      const verdict = verdicts[i]!;
      expect(state).toBe(verdict.isScrewed ? 'screwed to a fixing point' : verdict.verdict);
      if (verdict.factor !== undefined) expect(Number(factor)).toBeLessThanOrEqual(verdict.factor);
      expect(caution).toContain('test on site');
    }
  });

  it('is in inches and pounds where lengths are in feet', () => {
    const [row] = read({ ...demo, job: { ...demo.job, units: 'ft-in' } });
    const [metric] = read(demo);
    expect(Number(row!.x_in)).toBeCloseTo(Number(metric!.x_mm) / 25.4, 3);
    expect(Number(row!.weight_lb)).toBeCloseTo(Number(metric!.weight_kg) / 0.45359237, 2);
  });

  it('is none where nothing hangs', () => {
    expect(holdingTable(smallWorkedOut())).toBeUndefined();
  });
});
