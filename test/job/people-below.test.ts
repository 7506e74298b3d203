import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { changedPeople, newPeople } from '../../core/job/people-below';
import type { Job } from '../../core/job/schema';
import { putInPeople, setPeople, takeOutPeople } from '../../web/job/changes/people-below';

const wall = newWall('A', '', 4000, 2600);
const bare: Job = { ...emptyJob('Studio'), walls: [wall] };
const wallOf = (job: Job) => job.walls[0]!;

describe('a stretch with people below', () => {
  it('is put in from the floor under an id that no other has', () => {
    const bed = newPeople(wall, 'bed', { x: 100.004, width: 2000 });
    expect(bed).toEqual({ id: 'B1', kind: 'bed', x: 100, width: 2000 });
    const { name, change } = putInPeople(wall, bed);
    expect(name).toBe('Put bed B1 below wall A');
    expect(newPeople(wallOf(change(bare)), 'seat', { x: 0, width: 5 }).id).toBe('B2');
  });

  it('at height 0 is from the floor, whatever it was before', () => {
    const bed = { ...newPeople(wall, 'bed', { x: 0, width: 2000 }), y: 10 };
    expect(changedPeople(bed, { y: 700 })).toEqual({ ...bed, y: 700 });
    expect(changedPeople(bed, { y: 0 })).not.toHaveProperty('y');
    expect(changedPeople(bed, { y: undefined })).not.toHaveProperty('y');
    expect(changedPeople(bed, { x: 5 })).toEqual({ ...bed, x: 5 });
  });

  it('taken out as the last leaves it unsaid who is there', () => {
    const bed = newPeople(wall, 'bed', { x: 0, width: 2000 });
    const with1 = putInPeople(wall, bed).change(bare);
    const moved = setPeople(wallOf(with1), bed, { x: 50 }, 'Move');
    expect(moved.name).toBe('Move bed B1 below wall A');
    expect(wallOf(moved.change(with1)).peopleBelow).toEqual([{ ...bed, x: 50 }]);
    expect('peopleBelow' in wallOf(takeOutPeople(wallOf(with1), bed).change(with1))).toBe(false);
    const seat = newPeople(wallOf(with1), 'seat', { x: 0, width: 600 });
    const with2 = putInPeople(wallOf(with1), seat).change(with1);
    expect(wallOf(takeOutPeople(wallOf(with2), bed).change(with2)).peopleBelow).toEqual([seat]);
  });
});
