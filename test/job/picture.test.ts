import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { demoJob } from '../../core/job/demo';
import { pictureOf, type JobPicture } from '../../core/job/picture';
import type { Job, Wall } from '../../core/job/schema';

const jobOf = (...walls: Wall[]): Job => ({ ...emptyJob('Studio'), walls });

function extent({ parts }: JobPicture) {
  const points = parts.flatMap(({ path }) =>
    [...path.matchAll(/(-?\d+) (-?\d+)/g)].map(([, x, y]) => [Number(x), Number(y)]),
  );
  const [xs, ys] = [points.map(([x]) => x!), points.map(([, y]) => y!)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe('the small picture of a job', () => {
  it('keeps the proportions of a wall and stands it on the lower edge', () => {
    const picture = pictureOf(jobOf(newWall('A', 'Wall', 4000, 2000)));
    expect(picture).toEqual({
      width: 960,
      height: 480,
      parts: [{ kind: 'wall', path: 'M0 480L960 480L960 0L0 0Z' }],
    });
  });

  it('puts the first walls beside each other at one scale, and no more than three', () => {
    const walls = ['A', 'B', 'C', 'D'].map((id) => newWall(id, id, 2000, 1000));
    const picture = pictureOf(jobOf(...walls));
    expect(picture.parts).toHaveLength(3);
    expect(extent(picture)).toEqual({ left: 0, right: picture.width, top: 0, bottom: picture.height });
  });

  it('shows openings, fittings and zones, with and without steel', () => {
    const kinds = new Set(pictureOf(demoJob()).parts.map(({ kind }) => kind));
    expect(kinds).toEqual(new Set(['wall', 'steel', 'zone', 'opening', 'fitting']));
    const { width, height } = pictureOf(demoJob());
    expect(extent(pictureOf(demoJob()))).toEqual({ left: 0, right: width, top: 0, bottom: height });
  });

  it('stays small, however much is on the walls', () => {
    const fittings = Array.from({ length: 3000 }, (_, n) => ({
      id: `P${n}`,
      kind: 'pipe' as const,
      circle: { x: 100 + n, y: 500, diameter: 80 },
      clearance: 0,
    }));
    const picture = pictureOf(jobOf({ ...newWall('A', 'Wall', 5000, 2500), fittings }));
    expect(JSON.stringify(picture).length).toBeLessThan(20_000);
  });

  it('is empty of a job without walls', () => {
    expect(pictureOf(jobOf()).parts).toEqual([]);
  });
});
