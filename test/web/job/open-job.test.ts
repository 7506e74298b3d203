import { describe, expect, it } from 'vitest';
import { changeJob } from '../../../core/job/changes';
import { emptyJob, newWall } from '../../../core/job/defaults';
import type { Job } from '../../../core/job/schema';
import { OpenJob } from '../../../web/job/open-job.svelte';

const rename = (name: string) => (job: Job) => changeJob(job, { name });

function openStudio(): OpenJob {
  return new OpenJob({ ...emptyJob('Studio'), walls: [newWall('A', 'North', 4200, 2600)] });
}

describe('undo and redo', () => {
  it('go back and forth through the very same jobs, by name', () => {
    const open = openStudio();
    const first = open.job;
    open.apply('Rename the job', rename('Press'));
    const second = open.job;
    expect(open.undoName).toBe('Rename the job');
    open.undo();
    expect(open.job).toBe(first);
    expect(open.undoName).toBeUndefined();
    expect(open.redoName).toBe('Rename the job');
    open.redo();
    expect(open.job).toBe(second);
  });

  it('have no end', () => {
    const open = openStudio();
    for (let n = 0; n < 1000; n++) open.apply(`Rename ${n}`, rename(`Press ${n}`));
    for (let n = 0; n < 1000; n++) open.undo();
    expect(open.job.name).toBe('Studio');
  });

  it('leave what the job goes on with for good, before and after it alike', () => {
    const open = openStudio();
    open.apply('Rename the job', rename('Press'));
    open.apply('Rename the job again', rename('Foundry'));
    open.undo();
    const goesOn = changeJob(open.job, { revision: 'B' });
    open.goOnFrom(goesOn, (earlier) => changeJob(earlier, { revision: 'B' }));
    expect(open.job).toBe(goesOn);
    open.redo();
    expect(open.job).toMatchObject({ name: 'Foundry', revision: 'B' });
    open.undo();
    open.undo();
    expect(open.job).toMatchObject({ name: 'Studio', revision: 'B' });
    expect(open.undoName).toBeUndefined();
  });

  it('forget what was undone once something else is done', () => {
    const open = openStudio();
    open.apply('Rename the job', rename('Press'));
    open.undo();
    open.apply('Rename the job', rename('Foundry'));
    expect(open.redoName).toBeUndefined();
  });

  it('take a held key as one entry', () => {
    const open = openStudio();
    for (const name of ['a', 'b', 'c']) open.apply('Rename the job', rename(name), { merge: true });
    open.undo();
    expect(open.job.name).toBe('Studio');
  });

  it('know nothing of a change that changes nothing', () => {
    const open = openStudio();
    const { version } = open;
    open.apply('Nothing', (job) => job);
    expect(open.undoName).toBeUndefined();
    expect(open.version).toBe(version);
  });
});

describe('a gesture', () => {
  it('is one entry, however often it was previewed', () => {
    const open = openStudio();
    open.preview(rename('a'));
    open.preview(rename('b'));
    expect(open.settled).toBe(false);
    open.commit('Rename the job');
    expect(open.settled).toBe(true);
    expect(open.job.name).toBe('b');
    open.undo();
    expect(open.job.name).toBe('Studio');
  });

  it('starts every preview from where the hand started', () => {
    const open = openStudio();
    const add = (job: Job) => changeJob(job, { name: `${job.name}+` });
    open.preview(add);
    open.preview(add);
    expect(open.job.name).toBe('Studio+');
  });

  it('leaves the very same job when it is cancelled', () => {
    const open = openStudio();
    const before = open.job;
    open.preview(rename('a'));
    open.cancel();
    expect(open.job).toBe(before);
    expect(open.undoName).toBeUndefined();
  });

  it('counts every preview as a version, so that results can be told apart', () => {
    const open = openStudio();
    const { version } = open;
    open.preview(rename('a'));
    open.preview(rename('b'));
    expect(open.version).toBe(version + 2);
  });
});

describe('a change that could not be opened again', () => {
  const refuseBad = (job: Job) => (job.name === 'bad' ? 'A job is not called bad.' : null);

  it('is refused with its reason, and nothing changes', () => {
    const open = new OpenJob(emptyJob('Studio'), refuseBad);
    const before = open.job;
    expect(open.apply('Rename the job', rename('bad'))).toBe('A job is not called bad.');
    expect(open.refused).toBe('A job is not called bad.');
    expect(open.job).toBe(before);
    expect(open.undoName).toBeUndefined();
    expect(open.apply('Rename the job', rename('good'))).toBeNull();
    expect(open.refused).toBeNull();
  });

  it('takes a gesture back to its start', () => {
    const open = new OpenJob(emptyJob('Studio'), refuseBad);
    const before = open.job;
    open.preview(rename('bad'));
    expect(open.commit('Rename the job')).toBe('A job is not called bad.');
    expect(open.job).toBe(before);
    expect(open.settled).toBe(true);
  });
});

describe('opening another job', () => {
  it('leaves nothing of the old one to undo, and nothing selected', () => {
    const open = openStudio();
    open.apply('Rename the job', rename('Press'));
    open.selection = { kind: 'vertex', id: '0' };
    open.open(emptyJob('Library'));
    expect(open.undoName).toBeUndefined();
    expect(open.selection).toBeNull();
    expect(open.wall).toBeUndefined();
  });
});
