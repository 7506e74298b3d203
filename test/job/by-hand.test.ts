import { describe, expect, it } from 'vitest';
import { addHandChoice, changeHandChoice, freshHandId, removeHandChoice } from '../../core/job/by-hand';
import { moveObject, removeObject } from '../../core/job/changes';
import type { HandChoice, Job } from '../../core/job/schema';
import { readJob } from '../../core/job/read';
import { workOutFully } from '../../core/run/pipeline';

const file = (byHand?: unknown) => ({
  format: 'lodeplan-job',
  version: 1,
  name: 'Stair wall',
  stock: [{ id: 'S1', width: 500, height: 500 }],
  walls: [
    {
      id: 'A',
      outline: [
        [0, 0],
        [3000, 0],
        [3000, 2000],
        [0, 2000],
      ],
      openings: [{ id: 'D1', kind: 'door', x: 1100, y: 0, width: 700, height: 1200 }],
      zones: [
        {
          id: 'Z1',
          shape: [
            [0, 0],
            [3000, 0],
            [3000, 2000],
            [0, 2000],
          ],
          buildUp: 'steel-panel',
          layout: { stock: 'S1', ...(byHand !== undefined && { byHand }) },
        },
      ],
    },
  ],
});

const read = (byHand?: unknown) => readJob(JSON.stringify(file(byHand)));

function jobWith(byHand: unknown): Job {
  const result = read(byHand);
  if (!result.job) throw new Error(result.findings.map(({ text }) => text).join('\n'));
  return result.job;
}

const onDoor: HandChoice = {
  id: 'H1',
  kind: 'joint-on-line',
  direction: 'upright',
  at: { x: { of: 'opening', id: 'D1', side: 'left' }, y: 1500 },
};

const outcome = (job: Job) => workOutFully(job, { steps: 1 }).walls[0]!.zones[0]!.layout!.byHand![0]!;

/** Left edges of panels that do not lie on the zone's own edge, mm. */
const leftEdges = (job: Job) =>
  workOutFully(job, { steps: 1 })
    .walls[0]!.zones[0]!.layout!.panels.map(
      ({ outline }) => Math.min(...outline.outer.map(({ x }) => x)) / 100,
    )
    .filter((x) => x > 0);

describe('choices by hand in a job file', () => {
  it('are read, and kept with fields and kinds that are not known', () => {
    const strange = { id: 'H2', kind: 'curl', amount: 7 };
    const job = jobWith([{ ...onDoor, mood: 'good' }, strange]);
    expect(job.walls[0]!.zones[0]!.layout!.byHand).toEqual([{ ...onDoor, mood: 'good' }, strange]);
    expect(workOutFully(job, { steps: 1 }).findings.map(({ code }) => code)).toContain('by-hand-unknown');
  });

  it.each([
    [
      [{ id: 'H1', kind: 'split', at: { x: 1, y: 2 } }],
      'byHand[0] (zone Z1 of wall A) is "split" and has no "direction"',
    ],
    [[{ id: 'H1', kind: 'join', at: { x: 1, y: 2 } }], 'give a point of either panel as "at" and "with"'],
    [
      [{ id: 'H1', kind: 'no-joints', left: 3 }],
      'give "left" and "right", or "bottom" and "top", or all four',
    ],
    [[onDoor, onDoor], 'give one of them another id'],
    [[{ ...onDoor, at: { x: 'left', y: 2 } }], 'give a number in mm, or an edge'],
    [[{ ...onDoor, at: { x: 1e9, y: 2 } }], 'byHand[0].at.x'],
    [{ id: 'H1' }, 'give a list in square brackets'],
  ])('are refused with a sentence where they cannot be followed: %#', (byHand, says) => {
    const { job, findings } = read(byHand);
    expect(job).toBeNull();
    expect(findings.map(({ text }) => text).join('\n')).toContain(says);
  });

  it('leave the results of a job without them as they were', () => {
    const plain = workOutFully(jobWith(undefined), { steps: 1 }).walls[0]!.zones[0]!.layout!;
    expect(plain.byHand).toBeUndefined();
    expect(plain).toEqual(workOutFully(jobWith([]), { steps: 1 }).walls[0]!.zones[0]!.layout!);
  });
});

describe('a joint on the edge of an opening', () => {
  it('moves with it, and is lost with it', () => {
    const job = jobWith([onDoor]);
    expect(outcome(job).state).toBe('met');
    expect(leftEdges(job)).toContain(1100);
    const moved = moveObject(job, 'A', { kind: 'opening', id: 'D1' }, 137, 0);
    expect(outcome(moved).state).toBe('met');
    expect(leftEdges(moved)).toContain(1237);
    expect(leftEdges(moved)).not.toContain(1100);
    const gone = removeObject(job, 'A', { kind: 'opening', id: 'D1' });
    expect(outcome(gone)).toMatchObject({ state: 'lost', code: 'by-hand-lost' });
    expect(outcome(moveObject(job, 'A', { kind: 'opening', id: 'D1' }, 5000, 0)).state).toBe('lost');
  });
});

describe('changes of what was chosen by hand', () => {
  it('put in, change and let go, and leave no empty list behind', () => {
    const bare = jobWith(undefined);
    const one = addHandChoice(bare, 'A', 'Z1', onDoor);
    expect(freshHandId(one.walls[0]!.zones[0]!.layout!)).toBe('H2');
    const level = changeHandChoice(one, 'A', 'Z1', 'H1', { direction: 'level' });
    expect(level.walls[0]!.zones[0]!.layout!.byHand![0]!.direction).toBe('level');
    expect(removeHandChoice(level, 'A', 'Z1', 'H1')).toEqual(bare);
    expect(changeHandChoice(one, 'A', 'Z1', 'H9', { direction: 'level' })).toBe(one);
    expect(removeHandChoice(bare, 'A', 'Z7', 'H1')).toBe(bare);
  });
});
