import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeJob } from '../../../core/job/changes';
import { emptyJob, newWall } from '../../../core/job/defaults';
import type { Job } from '../../../core/job/schema';
import { OpenJob } from '../../../web/job/open-job.svelte';
import { HistoryLog, type HistoryWrite } from '../../../web/keeping/history-log';
import { changeAsText, changesFromTexts } from '../../../web/keeping/history-text';

const studio: Job = {
  ...emptyJob('Studio'),
  walls: [newWall('A', 'Proofing wall', 4200, 2600), newWall('B', 'Type store', 3000, 2600)],
};
const nameWall = (id: string, name: string) => (job: Job) => ({
  ...job,
  walls: job.walls.map((wall) => (wall.id === id ? { ...wall, name } : wall)),
});

/** A job, its history as it lies in a store that does what it is told, and what is to be written next. */
function keptStudio(most?: number) {
  const open = new OpenJob(studio);
  let log = new HistoryLog(most);
  let place = { first: 0, done: 0, end: 0 };
  const texts = new Map<number, string>();
  const writes: HistoryWrite[] = [];
  return {
    open,
    writes,
    texts,
    keep() {
      const { write, written } = log.next(open.history);
      for (const number of [...texts.keys()]) {
        if (number < write.first || number >= write.end) texts.delete(number);
      }
      for (const { number, text } of write.put) texts.set(number, text);
      place = write;
      writes.push(write);
      written();
    },
    reload() {
      const lying = Array.from({ length: place.end - place.first }, (_, i) => texts.get(place.first + i)!);
      expect(lying).not.toContain(undefined);
      const again = new OpenJob(open.job);
      const history = changesFromTexts(open.job, lying, place.done - place.first);
      again.recall(history, (job) => job);
      log = HistoryLog.read(
        history,
        place.first,
        lying.map(({ length }) => length),
        most,
      );
      return again;
    },
  };
}

describe('a change as text', () => {
  it('holds the walls and fields that differ, and no others', () => {
    const after = { ...nameWall('B', 'Type room')(studio), client: 'Own studio' };
    const text = changeAsText({ name: 'Rename', before: studio, after });
    expect(JSON.parse(text)).toEqual({
      name: 'Rename',
      before: { fields: { client: studio.client }, walls: [studio.walls[1]] },
      after: { fields: { client: 'Own studio' }, walls: [after.walls[1]] },
    });
  });

  it('leads back to the same job, whose other walls are the same objects', () => {
    const after = nameWall('B', 'Type room')(studio);
    const { done } = changesFromTexts(after, [changeAsText({ name: 'n', before: studio, after })], 1);
    expect(done[0]!.before).toEqual(studio);
    expect(done[0]!.before.walls[0]).toBe(after.walls[0]);
    expect(done[0]!.after).toBe(after);
  });

  it('knows fields that come and go, and walls added, taken away and put in another order', () => {
    const extended = { ...studio, markings: 'own' } as Job;
    const states: Job[] = [
      studio,
      extended,
      { ...extended, walls: [...studio.walls, newWall('C', 'Stair wall', 2000, 3000)] },
      { ...studio, walls: studio.walls.toReversed() },
      { ...studio, walls: [] },
      studio,
    ];
    const texts = states
      .slice(1)
      .map((after, i) => changeAsText({ name: `${i}`, before: states[i]!, after }));
    for (let done = 0; done <= texts.length; done++) {
      const found = changesFromTexts(states[done]!, texts, done);
      expect(found.done.map(({ before }) => before)).toEqual(states.slice(0, done));
      expect(found.undone.toReversed().map(({ after }) => after)).toEqual(states.slice(done + 1));
    }
  });

  it('of another job, or broken, ends the history there instead of changing anything', () => {
    const after = nameWall('B', 'Type room')(studio);
    const moved = { ...studio, walls: studio.walls.toReversed() };
    const text = changeAsText({ name: 'n', before: studio, after: moved });
    expect(changesFromTexts({ ...studio, walls: [] }, [text], 1).done).toEqual([]);
    expect(
      changesFromTexts(after, ['{', changeAsText({ name: 'n', before: studio, after })], 2).done,
    ).toHaveLength(1);
    expect(changesFromTexts(after, ['null'], 0).undone).toEqual([]);
  });
});

describe('the history that lies on the device', () => {
  it('grows by one text a change and is not written again', () => {
    const kept = keptStudio();
    for (let n = 0; n < 20; n++) {
      kept.open.apply(`Rename ${n}`, nameWall('A', `Wall ${n}`));
      kept.keep();
    }
    expect(kept.writes.map(({ put }) => put.length)).toEqual(Array(20).fill(1));
    kept.open.undo();
    kept.open.undo();
    kept.keep();
    expect(kept.writes.at(-1)).toEqual({ first: 0, done: 18, end: 20, put: [] });
    expect(kept.texts.get(0)).not.toContain('Type store');
  });

  it('drops the oldest when there is no more room, never what comes after', () => {
    const kept = keptStudio(6000);
    for (let n = 0; n < 60; n++) {
      kept.open.apply(`Rename ${n}`, nameWall('A', `Wall ${n}`));
      kept.keep();
      expect([...kept.texts.values()].join('').length).toBeLessThanOrEqual(6000);
    }
    const again = kept.reload();
    const { length } = again.history.done;
    expect(length).toBeGreaterThan(2);
    expect(again.history.done[0]!.name).toBe(`Rename ${60 - length}`);
    for (let n = 0; n < length; n++) again.undo();
    expect(again.job.walls[0]!.name).toBe(`Wall ${59 - length}`);
  });

  it('holds nothing of a change that alone has no room', () => {
    const kept = keptStudio(10);
    kept.open.apply('Rename', nameWall('A', 'Long wall'));
    kept.keep();
    kept.open.undo();
    kept.keep();
    expect(kept.texts.size).toBe(0);
  });

  it('is written anew where an issue changed what every change leads to', () => {
    const kept = keptStudio();
    kept.open.apply('Rename', nameWall('A', 'One'));
    kept.keep();
    const carry = (job: Job) => changeJob(job, { revision: 'B' });
    kept.open.goOnFrom(carry(kept.open.job), carry);
    kept.keep();
    const again = kept.reload();
    again.undo();
    expect(again.job).toMatchObject({ revision: 'B', walls: [{ name: 'Proofing wall' }, {}] });
  });
});

it('whatever is done and undone, a reload finds every step of what there is room for', () => {
  const step = fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({ kind: fc.constant('name' as const), id: fc.constantFrom('A', 'B', 'C') }),
    },
    fc.record({ kind: fc.constantFrom('add' as const, 'drop' as const, 'client' as const) }),
    {
      weight: 3,
      arbitrary: fc.record({ kind: fc.constantFrom('undo' as const, 'redo' as const, 'keep' as const) }),
    },
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 40 }), fc.constantFrom(undefined, 3000), (steps, most) => {
      const kept = keptStudio(most);
      steps.forEach((one, n) => {
        if (one.kind === 'name') kept.open.apply(`${n}`, nameWall(one.id, `${n}`));
        else if (one.kind === 'client') kept.open.apply(`${n}`, (job) => changeJob(job, { client: `${n}` }));
        else if (one.kind === 'drop')
          kept.open.apply(`${n}`, (job) => ({ ...job, walls: job.walls.slice(1) }));
        else if (one.kind === 'undo') kept.open.undo();
        else if (one.kind === 'redo') kept.open.redo();
        else if (one.kind === 'keep') kept.keep();
        else if (!kept.open.job.walls.some(({ id }) => id === 'C')) {
          kept.open.apply(`${n}`, (job) => ({ ...job, walls: [newWall('C', 'C', 900, 900), ...job.walls] }));
        }
      });
      kept.keep();
      const again = kept.reload();
      const { done, undone } = kept.open.history;
      const count = again.history.done.length;
      if (most === undefined) expect(count + again.history.undone.length).toBe(done.length + undone.length);
      for (let n = 0; n < count; n++) {
        again.undo();
        expect(again.job).toEqual(done.at(-1 - n)!.before);
      }
      for (let n = 0; n < count; n++) again.redo();
      for (const { after } of undone.toReversed().slice(0, again.history.undone.length)) {
        again.redo();
        expect(again.job).toEqual(after);
      }
    }),
    { numRuns: 200 },
  );
});
