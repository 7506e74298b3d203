import { expect, it } from 'vitest';
import { addWall } from '../../core/job/changes';
import { emptyJob, newWall } from '../../core/job/defaults';
import { readJob } from '../../core/job/read';
import {
  addSurveyLine,
  changeSurveyLine,
  newSurveyLine,
  removeSurveyLine,
} from '../../core/job/survey-lines';
import { writeJob } from '../../core/job/write';

const job = addWall(emptyJob(), newWall('A', '', 4000, 2500));
const wall = job.walls[0]!;

it('puts a new line in the middle of the wall over its whole height, a movement joint with a width', () => {
  expect(newSurveyLine(wall, 'board-joint')).toEqual({
    id: 'J1',
    kind: 'board-joint',
    from: [2000, 0],
    to: [2000, 2500],
  });
  expect(newSurveyLine(wall, 'movement-joint')).toMatchObject({ id: 'M1', width: 10 });
});

it('gives a joint between boards no width, and takes it back with the kind', () => {
  const added = addSurveyLine(job, 'A', newSurveyLine(wall, 'movement-joint'));
  const board = changeSurveyLine(added, 'A', 'M1', { kind: 'board-joint' });
  expect(board.walls[0]!.lines).toEqual([
    { id: 'M1', kind: 'board-joint', from: [2000, 0], to: [2000, 2500] },
  ]);
});

it('leaves the wall as it was when its last line goes', () => {
  const added = addSurveyLine(job, 'A', newSurveyLine(wall, 'board-joint'));
  expect(removeSurveyLine(added, 'A', 'J1').walls[0]).toEqual(wall);
  expect(removeSurveyLine(added, 'A', 'J2')).toBe(added);
});

it('comes back from a file, and a line without length or with a taken id is refused', () => {
  const added = addSurveyLine(job, 'A', newSurveyLine(wall, 'movement-joint'));
  expect(readJob(writeJob(added)).job?.walls[0]!.lines).toEqual(added.walls[0]!.lines);
  const flat = changeSurveyLine(added, 'A', 'M1', { to: [2000, 0] });
  expect(
    readJob(writeJob(flat))
      .findings.map(({ text }) => text)
      .join(),
  ).toMatch(/lines\[0\]\.to .*two different ends/);
  const twice = addSurveyLine(added, 'A', newSurveyLine(wall, 'movement-joint'));
  expect(readJob(writeJob(twice)).findings.map(({ code }) => code)).toContain('duplicate-id');
});
