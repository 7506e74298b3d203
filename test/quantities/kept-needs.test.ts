import { describe, expect, it } from 'vitest';
import type { Job } from '../../core/job/schema';
import { takeOff } from '../../core/quantities/take-off';
import { box, jobOf, wallOf, workedTakeOff } from './worked-jobs';

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
    const dearer = again(
      withPaint({
        packs: [
          { size: 1, price: 5 },
          { size: 5, price: 40 },
        ],
      }),
    );
    dearer.walls.forEach((needs, i) => expect(needs).toBe(off.walls[i]));
    expect(off.lines[0]!.packs!.packs.map(({ size }) => size)).toEqual([1]);
    expect(off.cost).toBe(2400);
    expect(dearer.cost).toBe(1000);
  });

  it('works needs out anew where a rate, a setting or a wall changed', () => {
    expect(again(withPaint({ spreadingRate: 4 })).lines[0]!.net).toBeCloseTo(3, 9);
    const looser = again({ ...job, quantities: { hollowShare: 0.5 } });
    expect(looser.walls[0]).not.toBe(off.walls[0]);
    const other = takeOff(job, [{ ...worked.walls[0]! }, worked.walls[1]!], worked.cutting);
    expect(other.walls[0]).not.toBe(off.walls[0]);
    expect(other.walls[1]).not.toBe(looser.walls[1]);
  });
});
