import { describe, expect, it } from 'vitest';
import { newWall } from '../../../core/job/defaults';
import type { Photo, Wall } from '../../../core/job/schema';
import { boxOfCorners, knownSizes } from '../../../web/photo/known-sizes';
import { Marking } from '../../../web/photo/marking.svelte';

const photo: Photo = { id: '0'.repeat(64), type: 'image/jpeg', width: 3000, height: 2000 };
const box = { x: 300, y: 0, width: 926, height: 2040 };
const inPhoto = [
  [500, 1800],
  [1200, 1790],
  [1210, 300],
  [490, 250],
] as const;

function marked(): Marking {
  const marking = new Marking(photo, [], box);
  for (const px of inPhoto) marking.place(px);
  return marking;
}

describe('marking a photo', () => {
  it('asks for corner after corner, then fits', () => {
    const marking = new Marking(photo, [], box);
    expect(marking.next).toBe('the lower left corner');
    expect(marking.fit).toBeNull();
    inPhoto.forEach((px, i) => {
      expect(marking.chosen).toBe(i);
      marking.place(px);
    });
    expect(marking.next).toBeNull();
    expect(marking.fit).toMatchObject({ residuals: [0, 0, 0, 0].map(() => expect.closeTo(0, 6)) });
    expect(marking.points[2]).toEqual({ px: [1210, 300], at: [1226, 2040] });
  });

  it('moves a point by the pixel, never out of the photo, and places none twice', () => {
    const marking = marked();
    marking.choose(2);
    expect(marking.nudge(1, -10)).toBe(true);
    expect(marking.marks[2]!.px).toEqual([1211, 290]);
    marking.nudge(-9999, 9999);
    expect(marking.marks[2]!.px).toEqual([0, 2000]);
    marking.place([5, 5]);
    expect(marking.marks[2]!.px).toEqual([0, 2000]);
  });

  it('keeps points in the photo when their places on the wall change', () => {
    const marking = marked();
    marking.setBox({ x: 0, y: 100, width: 210, height: 297 });
    expect(marking.points.map(({ at }) => at)).toEqual([
      [0, 100],
      [210, 100],
      [210, 397],
      [0, 397],
    ]);
    marking.setAt(1, 1, 120);
    expect(marking.box).toBeNull();
    expect(marking.nameOf(1)).toBe('point 2');
    expect(marking.points.map(({ px }) => px)).toEqual(inPhoto);
  });

  it('takes more points and says how far each is off; they can be taken out, the corners marked anew', () => {
    const marking = marked();
    marking.add();
    expect(marking.next).toBe('point 5');
    expect(marking.isWhole).toBe(false);
    marking.place([850, 1000]);
    marking.setAt(4, 0, 700);
    expect(marking.isWhole).toBe(true);
    expect((marking.fit as { rms: number }).rms).toBeGreaterThan(1);
    marking.takeOut(4);
    expect(marking.marks).toHaveLength(4);
    expect(marking.chosen).toBe(3);
    marking.clear();
    expect(marking.points).toEqual([]);
    expect(marking.next).toBe('the lower left corner');
  });

  it('goes on with the points that the job has', () => {
    const again = new Marking(photo, marked().points, { x: 0, y: 0, width: 1, height: 1 });
    expect(again.box).toEqual(box);
    expect(again.isWhole).toBe(true);
  });
});

describe('what is known', () => {
  it('is what stands on the wall, the wall, sheets of paper (ISO 216)', () => {
    const wall: Wall = {
      ...newWall('A', '', 4200, 2600),
      openings: [
        { id: 'D1', kind: 'door', ...box, clearance: 0 },
        { id: 'W1', kind: 'window', circle: { x: 1, y: 1, diameter: 9 }, clearance: 0 },
      ],
    };
    const sizes = knownSizes(wall);
    expect(sizes.map(({ label, width, height }) => `${label} ${width} × ${height}`)).toEqual([
      'door D1 926 × 2040',
      'the wall 4200 × 2600',
      'paper A4, upright 210 × 297',
      'paper A4, across 297 × 210',
      'paper A3, upright 297 × 420',
      'paper A3, across 420 × 297',
    ]);
    expect(sizes[0]!.at).toEqual([300, 0]);
  });

  it('is a rectangle only if its corners are those of one', () => {
    expect(
      boxOfCorners([
        [0, 0],
        [2, 0],
        [2, 3],
        [0, 3],
      ]),
    ).toEqual({ x: 0, y: 0, width: 2, height: 3 });
    expect(
      boxOfCorners([
        [0, 0],
        [2, 1],
        [2, 3],
        [0, 3],
      ]),
    ).toBeNull();
    expect(
      boxOfCorners([
        [2, 0],
        [0, 0],
        [0, 3],
        [2, 3],
      ]),
    ).toBeNull();
    expect(
      boxOfCorners([
        [0, 0],
        [2, 0],
      ]),
    ).toBeNull();
  });
});
