import { describe, expect, it } from 'vitest';
import { foldedLength, growRun, lengthOfZone, movableEdges } from '../../core/job/grow-run';
import { runRoundCorner } from '../../core/job/run-round-corner';
import type { Job, Layout } from '../../core/job/schema';
import { boxOfVertices } from '../../core/job/shape';
import { sheetPitch, wholeSheetSizes } from '../../core/panels/whole-sheets';
import { inside, room, sheet, steel, wallOf } from './room-walls';

/*
 * Worked by hand: 700 mm of a zone before an inside corner and 700 mm after it, 1000 mm high, of sheets of 400 × 500 mm:
 * one length of 1400 mm, three sheets and 200 mm across, two high.
 */
function folded(lines: 'continue' | 'anew' = 'continue', changes: Partial<Layout> = {}): Job {
  const walls = [
    wallOf('A', 2000, inside('B'), [steel('Z1', [1300, 300, 700, 1000], changes)]),
    wallOf('B', 2000),
  ];
  const made = runRoundCorner(room(walls, sheet(400, 500)), 'A', 'Z1', 'right', 700);
  if ('fault' in made) throw new Error(made.fault);
  if (lines === 'continue') return made.job;
  const [a, b] = made.job.walls;
  const zones = a!.zones.map((zone) => ({ ...zone, runsOn: { ...zone.runsOn!, lines } }));
  return { ...made.job, walls: [{ ...a!, zones }, b!] };
}

const boxes = (job: Job) => job.walls.map(({ zones }) => boxOfVertices(zones[0]!.shape));
const partB = (job: Job) => job.walls[1]!.zones[0]!.id;
const sizesOf = (job: Job, wall: 0 | 1) => {
  const { id, zones } = job.walls[wall]!;
  const length = foldedLength(job, id, zones[0]!.id)!;
  return wholeSheetSizes(zones[0]!, sheetPitch(job, zones[0]!.layout)!, length.room, length);
};

describe('a zone round a corner as one length', () => {
  const job = folded();

  it('is folded out flat in the frame of either part', () => {
    expect(lengthOfZone(job, 'A', 'Z1')!.map(({ wall }) => wall.id)).toEqual(['A', 'B']);
    expect(foldedLength(job, 'A', 'Z1')).toMatchObject({
      box: { x: 1300, y: 300, width: 1400, height: 1000 },
      room: { x: 0, y: 0, width: 4000, height: 2600 },
      isRectangle: true,
    });
    expect(foldedLength(job, 'B', partB(job))!.box).toEqual({ x: -700, y: 300, width: 1400, height: 1000 });
  });

  it('moves at its ends, which are on two walls, and never in the corner', () => {
    const grown = growRun(job, 'B', partB(job), { left: 100, right: -50 });
    expect(boxes(grown)).toEqual([
      { x: 1200, y: 300, width: 800, height: 1000 },
      { x: 0, y: 300, width: 650, height: 1000 },
    ]);
  });

  it('grows taller on both walls alike', () => {
    expect(boxes(growRun(job, 'A', 'Z1', { top: 500 })).map(({ height }) => height)).toEqual([1500, 1500]);
  });

  it('is left as it was where an edge cannot go so far', () => {
    expect(growRun(job, 'A', 'Z1', { left: 10, right: -5000 })).toBe(job);
  });

  it('offers whole sheets over all of its length, the same from either part', () => {
    const [one, other] = [sizesOf(job, 0), sizesOf(job, 1)];
    if (!('sizes' in one) || !('sizes' in other)) throw new Error('no sizes');
    // 3 × 400 = 1200 is 200 less and 4 × 400 = 1600 is 200 more; from the lower left, the right end moves.
    expect(one.sizes.map(({ across, up, growth }) => [across, up, growth])).toEqual([
      [3, 2, { right: -200 }],
      [4, 2, { right: 200 }],
    ]);
    expect(other).toEqual(one);
    const grown = growRun(job, 'A', 'Z1', one.sizes[1]!.growth);
    expect(foldedLength(grown, 'A', 'Z1')!.box.width).toBe(1600);
    expect(sizesOf(grown, 0)).toEqual({ sizes: [] });
  });
});

describe('a zone that starts its lines anew behind the corner', () => {
  const job = folded('anew');

  it('is a length of its own, held in the corner', () => {
    expect(lengthOfZone(job, 'A', 'Z1')).toHaveLength(1);
    expect(movableEdges(job, 'A', 'Z1')).toEqual(['left', 'bottom', 'top']);
    expect(movableEdges(job, 'B', partB(job))).toEqual(['right', 'bottom', 'top']);
    expect(growRun(job, 'A', 'Z1', { right: 100 })).toBe(job);
  });

  it('offers only sizes that leave it there', () => {
    const sizes = sizesOf(job, 0);
    if (!('sizes' in sizes)) throw new Error('no sizes');
    expect(sizes.sizes.map(({ growth }) => growth)).toEqual([{ left: 100 }, { left: -300 }]);
  });
});
