import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { addQuickWall } from '../../core/job/quick-wall';
import { readJobObject } from '../../core/job/read';
import { addWall } from '../../core/job/changes';

const figures = { name: '', width: 5400, height: 2700, openings: [], zone: false, surveyed: true };

describe('a wall of a few figures', () => {
  it('is a plain wall where nothing else is said', () => {
    expect(addQuickWall(emptyJob(), figures)).toEqual(addWall(emptyJob(), newWall('A', '', 5400, 2700)));
  });

  it('has its openings where they were said, a zone over all of it, and is not surveyed', () => {
    const job = addQuickWall(emptyJob(), {
      ...figures,
      openings: [
        { kind: 'door', x: 300, y: 0, width: 926, height: 2040 },
        { kind: 'window', x: 2500, y: 900, width: 1200, height: 1100 },
      ],
      zone: true,
      surveyed: false,
    });
    const wall = job.walls[0]!;
    expect(wall.surveyed).toBe(false);
    expect(wall.openings).toMatchObject([
      { id: 'D1', kind: 'door', x: 300, y: 0, width: 926, height: 2040, clearance: 60, hinge: 'left' },
      { id: 'W1', kind: 'window', x: 2500, y: 900, width: 1200, height: 1100 },
    ]);
    expect(wall.zones).toMatchObject([{ id: 'Z1', buildUp: 'steel-panel', layout: { stock: 'S1' } }]);
    expect(readJobObject(job).findings).toEqual([]);
  });
});
