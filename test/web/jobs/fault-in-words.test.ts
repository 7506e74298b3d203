import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../core/job/demo';
import { readJobObject } from '../../../core/job/read';
import type { Wall } from '../../../core/job/schema';
import { faultInWords } from '../../../web/jobs/fault-in-words';

/** What is said of the demo once its first wall has been changed. */
function faultOf(change: (wall: Wall) => Partial<Wall>): string {
  const job = demoJob();
  const [wall, ...others] = job.walls;
  const { findings } = readJobObject({ ...job, walls: [{ ...wall!, ...change(wall!) }, ...others] });
  return faultInWords(findings[0]!.text);
}

describe('a refused change', () => {
  it('names the figure and what it is of', () => {
    expect(
      faultOf(({ fittings: [first, ...rest] }) => ({ fittings: [{ ...first!, x: 1e9 }, ...rest] })),
    ).toMatch(/^The distance from left of \w+ \w+ of wall A is 1000000000; give at most 400000 mm\.$/);
    expect(
      faultOf(() => ({ fixingPoints: [{ id: 'U1', kind: 'stud', x: 0, y: 0, width: 1e9, height: 10 }] })),
    ).toBe('The width of stud U1 of wall A is 1000000000; give at most 400000 mm.');
    expect(faultOf(() => ({ checkMeasures: [{ from: 1, to: 3, length: 1e9 }] }))).toBe(
      'The measured length of wall A is 1000000000; give at most 400000 mm.',
    );
    expect(faultOf(() => ({ ground: { hollow: 2000 } }))).toBe(
      'The deepest hollow of wall A is 2000; give at most 1000 mm.',
    );
    expect(faultOf(({ rim }) => ({ rim: { ...rim, floor: -1 } }))).toBe(
      'The rim at the floor of wall A is -1; give 0 or more mm.',
    );
  });

  it('names the object alone where what is wrong is its shape', () => {
    const outline: Wall['outline'] = [
      [0, 0],
      [1000, 1000],
      [1000, 0],
      [0, 1000],
    ];
    expect(faultOf(() => ({ outline }))).toMatch(/^Wall A crosses itself/);
  });
});
