import { describe, expect, it } from 'vitest';
import { fitObject, moveObject, removeObject } from '../../core/job/changes';
import { chooseAlternative, copyAlternative } from '../../core/job/alternatives';
import { emptyJob, newWall } from '../../core/job/defaults';
import { addHung, changeHung } from '../../core/job/hung';
import { newHung } from '../../core/job/hung-kinds';
import { keepInStep } from '../../core/job/keep-in-step';
import { changeMarking, moveMarking } from '../../core/job/markings';
import { boardAt, middlesOfSquares } from '../../core/job/pieces';
import { readJobObject } from '../../core/job/read';
import { copyObjects } from '../../core/job/several';
import type { Job } from '../../core/job/schema';
import { findWall } from '../../core/job/shape';

const board = { id: 'M1', kind: 'board', x: 100, y: 100, across: 8, up: 8, side: 50 } as const;
const other = { id: 'M2', kind: 'board', x: 600, y: 100, across: 3, up: 3, side: 100 } as const;
const zone = {
  id: 'Z1',
  shape: [
    [1000, 800],
    [2000, 800],
    [2000, 1800],
    [1000, 1800],
  ],
  buildUp: 'steel-panel',
  markings: [board, other],
};
const { job: read } = readJobObject({
  ...emptyJob('Play'),
  walls: [{ ...newWall('A', '', 4000, 2600), zones: [zone] }],
});
const bare = read!;
const wallOf = (job: Job) => findWall(job, 'A')!;
const put = (job: Job, x: number, y: number) =>
  keepInStep(job, addHung(job, 'A', newHung(job, wallOf(job), 'game-piece', { x, y })));
const pieceOf = (job: Job, id = 'H1') => wallOf(job).hung!.find((item) => item.id === id)!;
const at = (job: Job) => [pieceOf(job).x, pieceOf(job).y];
const hung = { kind: 'hung', id: 'H1' } as const;
const step = (job: Job, change: (job: Job) => Job) => keepInStep(job, change(job));
/** Its middle, 15 mm in, on the middle of the second square of the second row: 1100 + 75, 900 + 75. */
const job = put(bare, 1160, 960);

describe('a piece of a wall game', () => {
  it('belongs to the board it is put on, however it comes there', () => {
    expect(pieceOf(job).marking).toEqual({ zone: 'Z1', marking: 'M1' });
    expect(pieceOf(put(bare, 100, 100)).marking).toBeUndefined();
    const print = newHung(bare, wallOf(bare), 'print', { x: 1160, y: 960 });
    expect(pieceOf(step(bare, (of) => addHung(of, 'A', print))).marking).toBeUndefined();
    const moved = step(job, (of) => moveObject(of, 'A', hung, 500, 0));
    expect(pieceOf(moved).marking).toEqual({ zone: 'Z1', marking: 'M2' });
    const off = step(moved, (of) => moveObject(of, 'A', hung, 1500, 0));
    expect(pieceOf(off).marking).toEqual({ zone: 'Z1', marking: 'M2' });
    const copy = step(job, (of) => copyObjects(of, 'A', [hung], 500, 0).job);
    expect(pieceOf(copy, 'H2').marking).toEqual({ zone: 'Z1', marking: 'M2' });
  });

  it('keeps what was chosen for it by hand', () => {
    const chosen = step(job, (of) => changeHung(of, 'A', 'H1', { marking: { zone: 'Z1', marking: 'M2' } }));
    expect(pieceOf(chosen).marking).toEqual({ zone: 'Z1', marking: 'M2' });
    const none = step(job, (of) => changeHung(of, 'A', 'H1', { marking: undefined, x: 100 }));
    expect(pieceOf(none).marking).toBeUndefined();
  });

  it('goes where its board goes, and keeps its square in larger ones', () => {
    const marking = { zone: 'Z1', marking: 'M1' };
    expect(at(step(job, (of) => moveMarking(of, 'A', marking, 30, -20)))).toEqual([1190, 940]);
    expect(at(step(job, (of) => moveObject(of, 'A', { kind: 'zone', id: 'Z1' }, 0, 100)))).toEqual([
      1160, 1060,
    ]);
    const wider = { x: 900, y: 800, width: 1100, height: 1000 };
    expect(at(step(job, (of) => fitObject(of, 'A', { kind: 'zone', id: 'Z1' }, wider)))).toEqual([1060, 960]);
    // The middle of the second square of 60: 90 from the board's corner.
    expect(at(step(job, (of) => changeMarking(of, 'A', marking, () => ({ side: 60 }))))).toEqual([1175, 975]);
    const more = step(job, (of) => changeMarking(of, 'A', marking, () => ({ across: 12 })));
    expect(pieceOf(more)).toBe(pieceOf(job));
  });

  it('stays with a change that moves both, is locked, or takes the board away', () => {
    const both = step(job, (of) =>
      moveObject(moveObject(of, 'A', hung, 200, 0), 'A', { kind: 'zone', id: 'Z1' }, 200, 0),
    );
    expect(at(both)).toEqual([1360, 960]);
    const locked = changeHung(job, 'A', 'H1', { locked: true });
    const marking = { zone: 'Z1', marking: 'M1' };
    expect(at(step(locked, (of) => moveMarking(of, 'A', marking, 30, 0)))).toEqual([1160, 960]);
    const gone = step(job, (of) => removeObject(of, 'A', { kind: 'zone', id: 'Z1' }));
    expect(pieceOf(gone)).toBe(pieceOf(job));
  });

  it('is as it was in another alternative', () => {
    const two = copyAlternative(job, 'V1', 'Second');
    const second = step(two, (of) => chooseAlternative(of, 'V2'));
    const moved = step(second, (of) => moveMarking(of, 'A', { zone: 'Z1', marking: 'M1' }, 30, 0));
    expect(at(moved)).toEqual([1190, 960]);
    expect(at(step(moved, (of) => chooseAlternative(of, 'V1')))).toEqual([1160, 960]);
  });
});

it('squares of a board have their middles half a side in', () => {
  const played = boardAt(wallOf(bare), { x: 1650, y: 950 })!;
  expect(played.marking.id).toBe('M2');
  expect(middlesOfSquares(played)).toEqual({ x: [1650, 1750, 1850], y: [950, 1050, 1150] });
  expect(boardAt(wallOf(bare), { x: 1550, y: 950 })).toBeUndefined();
});
