import { describe, expect, it } from 'vitest';
import type { Job } from '../../core/job/schema';
import { takeOff, takeOffInSteps } from '../../core/quantities/take-off';
import { box, jobOf, wallOf, wallsOf, workedTakeOff } from './worked-jobs';

const job = jobOf({
  products: [
    {
      id: 'p',
      name: 'Paint',
      layer: 'decorative',
      unit: 'l',
      spreadingRate: 8,
      packs: [
        { size: 1, price: 12 },
        { size: 5, price: 40 },
      ],
    },
  ],
  buildUps: [{ id: 'own', kind: 'writable', layers: [{ kind: 'decorative', product: 'p' }] }],
  walls: ['A', 'B'].map((id) =>
    wallOf({ id, zones: [{ id: 'Z1', buildUp: 'writable', layers: 'own', shape: box(0, 0, 3000, 2000) }] }),
  ),
});
const { worked, off } = workedTakeOff(job);
const again = (changed: Job) => takeOff(changed, worked.walls, worked.cutting);
const withPaint = (fields: object): Job => ({ ...job, products: [{ ...job.products![0]!, ...fields }] });

describe('a take-off asked for again', () => {
  it('keeps the needs of every wall where only prices changed, and chooses packs anew', () => {
    const before = wallsOf(job, worked);
    const packs = [
      { size: 1, price: 5 },
      { size: 5, price: 40 },
    ];
    const cheaper = withPaint({ packs });
    wallsOf(cheaper, worked).forEach((needs, i) => expect(needs).toBe(before[i]));
    expect(off.lines[0]!.packs!.packs.map(({ size }) => size)).toEqual([1]);
    expect(off.cost).toBe(2400);
    expect(again(cheaper).cost).toBe(1000);
  });

  it('pauses for no wall that it knows', () => {
    const pauses = (changed: Job) => {
      const work = takeOffInSteps(changed, worked.walls, worked.cutting);
      let count = 0;
      while (!work.next().done) count++;
      return count;
    };
    again(job);
    expect(pauses(withPaint({ packs: [] }))).toBe(0);
    expect(pauses(withPaint({ loss: 0.3 }))).toBe(2);
  });

  it('works needs out anew where a rate, a setting or a wall changed', () => {
    const before = wallsOf(job, worked);
    expect(workedTakeOff(withPaint({ spreadingRate: 4 })).off.lines[0]!.net).toBeCloseTo(3, 9);
    expect(wallsOf({ ...job, quantities: { hollowShare: 0.5 } }, worked)[0]).not.toBe(before[0]);
    const [first, second] = worked.walls;
    const survey = { ...first!.survey, wall: { ...first!.survey.wall } };
    const other = wallsOf(job, { ...worked, walls: [{ ...first!, survey }, second!] });
    expect(other[0]).not.toBe(before[0]);
  });
});
