import { describe, expect, it } from 'vitest';
import { newOpening, newWall } from '../../../core/job/defaults';
import { objectRows } from '../../../web/schedule/object-rows';

describe('rows of openings and fittings', () => {
  const bare = newWall('A', '', 4200, 2600);
  const wall = {
    ...bare,
    openings: [newOpening(bare, 'door', { x: 300, y: 0 })],
    fittings: [
      { id: 'P1', kind: 'pipe', circle: { x: 3000, y: 200, diameter: 40 }, clearance: 10 },
      {
        id: 'F1',
        kind: 'free',
        shape: [
          [100, 100],
          [400, 100],
          [250, 700],
        ] as [number, number][],
        clearance: 0,
      },
    ],
  };

  it('list openings first, then fittings, in the order of the job', () => {
    expect(objectRows(wall).map(({ ref }) => `${ref.kind} ${ref.id}`)).toEqual([
      'opening D1',
      'fitting P1',
      'fitting F1',
    ]);
  });

  it('place a rectangle by its lower left corner, a circle by its middle, a free shape by its box', () => {
    const [door, pipe, free] = objectRows(wall);
    expect(door).toMatchObject({ form: 'rectangle', fromLeft: 300, fromFloor: 0 });
    expect(pipe).toMatchObject({ form: 'circle', fromLeft: 3000, fromFloor: 200, width: 40 });
    expect(free).toMatchObject({ form: 'free', fromLeft: 100, fromFloor: 100, width: 300, height: 600 });
  });
});
