import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignShifts, placeOfPart, spaceShifts, type AlignedPart, type Boxed } from '../../core/job/arrange';
import { extentOf } from '../../core/job/extent';
import { mirrored, turnedBy } from '../../core/job/mirror';
import { readJobObject } from '../../core/job/read';
import { allObjects, moveObjects } from '../../core/job/several';
import { findObject, type MmBox } from '../../core/job/shape';
import { jobFile } from './random-job';

const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
const box = fc.record({
  x: hundredths(-3000, 9000),
  y: hundredths(-3000, 9000),
  width: hundredths(1, 2000),
  height: hundredths(1, 2000),
});
const boxes = (least: number) =>
  fc
    .array(box, { minLength: least, maxLength: 12 })
    .map((list) => list.map((one, i): Boxed => ({ ref: { kind: 'fitting', id: `F${i}` }, box: one })));
const parts: readonly AlignedPart[] = ['left', 'right', 'foot', 'top', 'upright middle', 'level middle'];
const sound = jobFile
  .map((file) => readJobObject(file).job)
  .filter((job) => job !== null && job.walls.length > 0);

describe('for any boxes', () => {
  it('aligned, they have the part at one place, to 0.01 mm, and doing it again moves nothing', () => {
    fc.assert(
      fc.property(boxes(1), fc.constantFrom(...parts), hundredths(-500, 500), (list, part, place) => {
        const after = shifted(list, alignShifts(list, part, place));
        for (const one of after) expect(placeOfPart(one.box, part)).toBeCloseTo(place, 1);
        for (const { dx, dy } of alignShifts(after, part, place)) {
          expect(Math.abs(dx) + Math.abs(dy)).toBeLessThanOrEqual(0.011);
        }
      }),
    );
  });

  it('spaced, the first and last stay, their order stays and all gaps are equal', () => {
    fc.assert(
      fc.property(boxes(3), (list) => {
        const shifts = spaceShifts(list, 'x', 'gaps');
        expect(shifts[0]!.dx).toBe(0);
        expect(shifts.at(-1)!.dx).toBe(0);
        const after = shifted(list, shifts);
        const inOrder = shifts.map(({ ref }) => after.find((one) => one.ref === ref)!.box);
        const gaps = inOrder.slice(1).map(({ x }, i) => x - inOrder[i]!.x - inOrder[i]!.width);
        for (const gap of gaps) expect(Math.abs(gap - gaps[0]!)).toBeLessThan(0.03);
      }),
    );
  });
});

describe('for any job', () => {
  it('mirrored twice about one line, every object is what it was', () => {
    fc.assert(
      fc.property(sound, hundredths(-2000, 2000), fc.constantFrom('x', 'y'), (job, at, axis) => {
        const line = { axis: axis as 'x' | 'y', at };
        for (const wall of job!.walls) {
          for (const ref of allObjects(wall)) {
            const object = findObject(wall, ref)!;
            const twice = mirrored(job!, mirrored(job!, object, line), line);
            const stagger = (object as { layout?: { stagger: number } }).layout?.stagger ?? 0;
            // 1 − (1 − s) is s only to the last bit of a binary fraction.
            if (stagger === 0) expect(twice).toEqual(object);
            else expect({ ...twice, layout: null }).toEqual({ ...object, layout: null });
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('a mirror image is as large, and four quarter turns lead back', () => {
    fc.assert(
      fc.property(sound, (job) => {
        for (const wall of job!.walls) {
          for (const ref of allObjects(wall)) {
            const object = findObject(wall, ref)!;
            const image = extentOf(mirrored(job!, object, { axis: 'x', at: 0 }));
            const before = extentOf(object);
            expect(Math.abs(image.width - before.width)).toBeLessThan(0.03);
            expect(Math.abs(image.x + before.x + before.width)).toBeLessThan(0.03);
            const round = extentOf(turnedBy(job!, object, { x: 0, y: 0 }, 4));
            expect(round).toEqual(before);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('moved there and back, every object is where it was, and nothing else ever changed', () => {
    fc.assert(
      fc.property(sound, hundredths(-900, 900), hundredths(-900, 900), (job, dx, dy) => {
        const { id } = job!.walls[0]!;
        const half = allObjects(job!.walls[0]!).filter((_, i) => i % 2 === 0);
        const there = moveObjects(job!, id, half, dx, dy);
        expect(moveObjects(there, id, half, -dx, -dy)).toEqual(job);
      }),
      { numRuns: 60 },
    );
  });
});

function shifted(list: readonly Boxed[], shifts: readonly { ref: unknown; dx: number; dy: number }[]) {
  return list.map(({ ref, box: one }): { ref: Boxed['ref']; box: MmBox } => {
    const { dx, dy } = shifts.find((shift) => shift.ref === ref)!;
    return { ref, box: { ...one, x: one.x + dx, y: one.y + dy } };
  });
}
