import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { jobDifferences } from '../../core/job/differences/differences';
import { setHoldingMap, withUsual } from '../../core/job/holding-map';
import { readJob } from '../../core/job/read';
import { writeJob } from '../../core/job/write';

describe('what the holding map of a job is drawn for', () => {
  it('is as usual where the file says nothing, as files from before say nothing', () => {
    const job = demoJob();
    expect(job.holdingMap).toBeUndefined();
    expect(withUsual(job.holdingMap)).toEqual({
      magnet: 'N42-20x5',
      reach: 30,
      use: 'light-at-reach',
      forClient: false,
    });
    expect(writeJob(job)).not.toContain('holdingMap');
  });

  it('is kept in the file, and left out again once it is as usual', () => {
    const asked = setHoldingMap(demoJob(), { magnet: 'N42-30x10', forClient: true });
    const { job } = readJob(writeJob(asked));
    expect(job?.holdingMap).toEqual({ magnet: 'N42-30x10', forClient: true });
    const back = setHoldingMap(job!, { magnet: 'N42-20x5', forClient: false });
    expect(writeJob(back)).toBe(writeJob(demoJob()));
  });

  it('keeps what a later program may have written beside it', () => {
    const text = writeJob(setHoldingMap(demoJob(), { reach: 50 })).replace(
      '"reach": 50',
      '"reach": 50, "later": 7',
    );
    const { job } = readJob(text);
    expect(setHoldingMap(job!, { reach: 60 }).holdingMap).toEqual({ reach: 60, later: 7 });
  });

  it('is the same job where nothing changes', () => {
    const asked = setHoldingMap(demoJob(), { reach: 50 });
    expect(setHoldingMap(asked, { reach: 50 })).toBe(asked);
  });

  it.each([
    ['"reach": -1', 'reach'],
    ['"use": "heavy"', 'use'],
    ['"forClient": "yes"', 'forClient'],
  ])('is refused with %s in one sentence that names the field', (field, name) => {
    const text = writeJob(setHoldingMap(demoJob(), { reach: 50 })).replace('"reach": 50', field);
    const { job, findings } = readJob(text);
    expect(job).toBeNull();
    expect(findings[0]!.text).toContain(name);
  });

  it('is told among the differences of two jobs', () => {
    const texts = (reach: number) =>
      jobDifferences(demoJob(), setHoldingMap(demoJob(), { reach, forClient: true })).map(({ text }) => text);
    expect(texts(50).join(' ')).toContain('hook of 50 mm, light at reach, shown to the client');
  });
});
