import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { moveVertex } from '../../core/job/changes';
import { emptyJob } from '../../core/job/defaults';
import { writeJob } from '../../core/job/write';

describe('how a job file looks', () => {
  it('has its fields in the order of the format, whatever order they came in', () => {
    const { walls, name, ...rest } = emptyJob('Reading room');
    const text = writeJob({ 'x-own': 1, walls, ...rest, name });
    expect(Object.keys(JSON.parse(text) as object)).toEqual([
      ...['format', 'version', 'name', 'client', 'reference', 'revision', 'date', 'currency'],
      ...['stock', 'rack', 'cutting', 'walls', 'revisions', 'x-own'],
    ]);
  });

  it('has two spaces a level, points and small objects on one line, a line feed at the end', () => {
    const text = writeJob(demoJob());
    expect(text).toContain(
      '\n  "cutting": { "method": "edge-to-edge", "kerf": 0, "leastOffcut": [150, 150] },\n',
    );
    expect(text).toContain(
      '\n      "outline": [[0, 0], [5400, 0], [5400, 2140], [3900, 2700], [0, 2700]],\n',
    );
    expect(text).toContain('{ "arcTo": [3200, 1750], "via": [3800, 2350] }');
    expect(text.endsWith('\n}\n')).toBe(true);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(110);
  });

  it('changes by one line where one point of a long outline moves', () => {
    const before = writeJob(demoJob()).split('\n');
    const after = writeJob(moveVertex(demoJob(), 'C', null, 3, { x: 1580, y: 180 })).split('\n');
    expect(after).toHaveLength(before.length);
    expect(after.filter((line, i) => line !== before[i])).toEqual(['        [1580, 180],']);
  });

  it('does not write a number that could not be read again', () => {
    expect(() => writeJob({ ...emptyJob(), 'x-own': [NaN] })).toThrow('NaN');
  });
});
