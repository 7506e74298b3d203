import { describe, expect, it } from 'vitest';
import { changeObject } from '../../core/job/changes';
import { demoJob } from '../../core/job/demo';
import { readJob } from '../../core/job/read';
import type { Job, Zone } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';
import { issueRevision, rackBookings } from '../../core/run/issue-revision';
import { workOutFully } from '../../core/run/pipeline';
import { readRevision } from '../../core/run/read-revision';
import { toResults } from '../../core/run/results';
import type { WorkedOut } from '../../core/worked-out';

const steps = 3;
const demo = demoJob();
const worked = workOutFully(demo, { steps });
const issue = { id: 'A', date: '2026-05-04', note: 'For the workshop' };
const issued = issueRevision(demo, worked, issue);
const record = issued.revisions[0]!;

const marksOf = ({ walls }: WorkedOut) =>
  walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? [])).map(({ mark }) => mark);

describe('issueRevision', () => {
  it('freezes job and results and lets the job go on with the next letter, not dated yet', () => {
    expect(record).toMatchObject({ id: 'A', date: '2026-05-04', note: 'For the workshop' });
    expect(record.job).toMatchObject({ name: demo.name, revision: 'A', date: '2026-05-04' });
    expect(record.job).not.toHaveProperty('revisions');
    expect(record.results).toMatchObject({ ...toResults(worked), walls: expect.anything() as unknown });
    expect(issued).toMatchObject({ revision: 'B', date: '', walls: demo.walls, rack: demo.rack });
    expect(demo.revisions).toEqual([]);
  });

  it('names the rack pieces that the plan uses and every kept offcut, each with a mark that was never given', () => {
    const used = worked.cutting.sheets.flatMap(({ fromRack }) => (fromRack === null ? [] : [fromRack]));
    const kept = worked.cutting.sheets.flatMap(({ offcuts }) => offcuts.filter(({ keep }) => keep));
    expect(used.length).toBeGreaterThan(0);
    expect(kept.length).toBeGreaterThan(0);
    expect(record.rack!.out).toEqual(used);
    expect(record.rack!.in.map(({ width, height }) => [width * 100, height * 100])).toEqual(
      kept.map(({ width, height }) => [width, height]),
    );
    const taken = issueRevision(demo, worked, { ...issue, takenMarks: ['R40', 'old corner'] });
    const marks = taken.revisions[0]!.rack!.in.map(({ id }) => id);
    expect(marks).toEqual(kept.map((_, i) => `R${41 + i}`));
  });

  it('is saved and read again as it is', () => {
    expect(readJob(writeJob(issued)).job).toEqual(issued);
  });

  it('keeps the marks of panels and of offcuts that a later revision does not change', () => {
    const again = workOutFully(issued, { steps });
    expect(marksOf(again)).toEqual(marksOf(worked));
    const second = issueRevision(issued, again, { ...issue, id: 'B' });
    expect(second.revisions[1]!.rack).toEqual(record.rack);
    expect(second.revision).toBe('C');
  });

  it('gives new offcuts of a changed zone new marks', () => {
    const wall = demo.walls[2]!;
    const zone = wall.zones.find(({ layout }) => layout)!;
    const changed = changeObject<Zone>(
      issued,
      wall.id,
      { kind: 'zone', id: zone.id },
      { layout: { ...zone.layout!, start: 'lower-left' } },
    );
    const { in: left } = rackBookings(changed, workOutFully(changed, { steps }));
    const before = new Map(record.rack!.in.map((piece) => [piece.id, piece]));
    for (const { id, width, height } of left) {
      const same = before.get(id);
      if (same) expect([width, height]).toEqual([same.width, same.height]);
    }
    expect(new Set(left.map(({ id }) => id)).size).toBe(left.length);
  });

  it('refuses the results of another job and a revision that was issued', () => {
    expect(() => issueRevision({ ...demo }, worked, issue)).toThrow('same job');
    const again = { ...worked, job: issued };
    expect(() => issueRevision(issued, again, issue)).toThrow('Revision A has been issued.');
  });
});

describe('readRevision', () => {
  const saved = readJob(writeJob(issued)).job!.revisions[0]!;

  it('gives back what was worked out, from the record alone', () => {
    const read = readRevision(saved);
    if (!('worked' in read)) throw new Error(read.fault);
    const { job, ...rest } = read.worked;
    const { job: _, ...before } = worked;
    expect(JSON.parse(JSON.stringify(rest))).toEqual(JSON.parse(JSON.stringify(before)));
    expect(job).toMatchObject({ revision: 'A', date: '2026-05-04', revisions: [], walls: demo.walls });
  });

  it.each<[string, (job: Job['revisions'][number]) => object, RegExp]>([
    ['no results', (one) => ({ ...one, results: undefined }), /^Revision A cannot .* no results/],
    ['no job', (one) => ({ ...one, job: {} }), /the job in it cannot be read/],
    [
      'a panel that is cut from nothing',
      (one) => {
        const results = structuredClone(one.results) as unknown as ReturnType<typeof toResults>;
        results.cutting.sheets.pop();
        return { ...one, results };
      },
      /do not belong together/,
    ],
    [
      'a wall without results',
      (one) => ({ ...one, results: { ...one.results, walls: [] } }),
      /do not belong together/,
    ],
  ])('says why in one sentence where the record has %s', (_, change, says) => {
    const read = readRevision(change(saved) as typeof saved);
    expect('fault' in read && read.fault).toMatch(says);
  });
});
