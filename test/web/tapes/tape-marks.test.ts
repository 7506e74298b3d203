import { describe, expect, it } from 'vitest';
import { findWall } from '../../../core/job/shape';
import type { Job } from '../../../core/job/schema';
import { workOut } from '../../../core/run/pipeline';
import { surveyWall } from '../../../core/survey/survey';
import { runningMarks } from '../../../core/zones/running-marks';
import { zoneAreas } from '../../../core/zones/zone-areas';
import { setLayout } from '../../../web/job/changes/zones';
import { marksOfWall, withJoints, type JointMarked } from '../../../web/tapes/tape-marks';
import { changeForJoint } from '../../../web/tapes/typed-joint';
import { smallJob, smallWall } from '../proofing-wall';

function workedZones(job: Job) {
  const search = workOut(job, { steps: 0 });
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value.walls.find(({ survey }) => survey.wall.id === 'A')!.zones;
}

function joints(job: Job, axis: 'along' | 'up') {
  const marks = withJoints(marksOfWall(findWall(job, 'A')!), workedZones(job));
  return marks[axis].flatMap(({ at, of }) =>
    of.flatMap((marked) => (marked.kind === 'joint' ? [{ at: at / 100, marked }] : [])),
  );
}

const places = (job: Job, axis: 'along' | 'up') => joints(job, axis).map(({ at }) => at);
const start = (x: number, y: number, stagger = 0) =>
  setLayout('A', 'Z1', { start: { x, y }, stagger }).change(smallJob);

describe('marks of a tape', () => {
  it('are those of the documents, taken from the drawn wall alone', () => {
    const survey = surveyWall(smallWall);
    expect(marksOfWall(smallWall)).toEqual(runningMarks(survey, zoneAreas(survey)));
  });

  it('have the joints of the panels, sorted, where nothing else stands', () => {
    const { along, up } = withJoints(marksOfWall(smallWall), workedZones(start(1420, 700)));
    for (const marks of [along, up]) {
      const ats = marks.map(({ at }) => at);
      expect(ats).toEqual([...new Set(ats)].sort((a, b) => a - b));
    }
    expect(places(start(1420, 700), 'along')).toEqual([1920, 2420, 2920]);
  });
});

describe('a joint typed on a tape', () => {
  const joint = (job: Job, at: number): JointMarked =>
    joints(job, 'along').find((found) => found.at === at)!.marked;

  it('becomes the start of the panels', () => {
    const job = start(1420, 700);
    const { name, change } = changeForJoint(smallWall, 'x', joint(job, 1920), 1920, 1700);
    expect(name).toBe('Start panels of Z1 at 1700');
    expect(places(change(job), 'along')).toEqual([1700, 2200, 2700, 3200]);
  });

  it('shifts a staggered start as far as the joint', () => {
    const job = start(1420, 700, 0.5);
    const wall = findWall(job, 'A')!;
    const { name, change } = changeForJoint(wall, 'x', joint(job, 1670), 1670, 1700);
    expect(name).toBe('Start panels of Z1 at 1450');
    expect(places(change(job), 'along')).toContain(1700);
  });
});
