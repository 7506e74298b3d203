import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { setUnits } from '../../web/job/changes/job-details';

const steps = 20;

/** The demo with a check measure that the drawing misses, so that a finding tells lengths. */
function measuredJob(): Job {
  const job = demoJob();
  const [first, ...rest] = job.walls;
  return { ...job, walls: [{ ...first!, checkMeasures: [{ from: 1, to: 2, length: 2540 }] }, ...rest] };
}

describe('the units of a job', () => {
  const job = measuredJob();
  const inFeet = setUnits('ft-in').change(job);

  it('are all that switching changes, and millimetres leave no trace', () => {
    expect(inFeet).toEqual({ ...job, units: 'ft-in' });
    expect(setUnits('mm').change(inFeet)).toEqual(job);
    expect(setUnits('mm').change(job)).toBe(job);
    expect(inFeet.walls).toBe(job.walls);
  });

  it('change nothing that is worked out but the words of findings', () => {
    const [before, after] = [workOutFully(job, { steps }), workOutFully(inFeet, { steps })];
    expect(after.walls).toEqual(before.walls);
    expect(after.cutting).toEqual(before.cutting);
    expect(after.findings.map(({ code }) => code)).toEqual(before.findings.map(({ code }) => code));
    const tape = (worked: typeof before) => worked.findings.find(({ code }) => code === 'check-measure-off')!;
    expect(tape(before).text).toContain('The tape says 2540 mm');
    expect(tape(after).text).toContain(`The tape says 8'-4"`);
  });

  it('must be ones that are known', () => {
    const read = readJobObject({ ...job, units: 'furlong' });
    expect(read.findings[0]?.text).toMatch(/units/);
  });
});
