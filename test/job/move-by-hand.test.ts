import { describe, expect, it } from 'vitest';
import { mapPlaces, movedChoice, placesOfChoice } from '../../core/job/move-by-hand';
import type { HandChoice } from '../../core/job/schema';

const onDoor: HandChoice = {
  id: 'H1',
  kind: 'joint-on-line',
  direction: 'upright',
  at: { x: { of: 'opening', id: 'D1', side: 'left' }, y: 1500 },
};
const band: HandChoice = { id: 'H2', kind: 'no-joints', left: 100, right: 300, bottom: 50.5, top: 90 };

describe('a choice by hand moved as one', () => {
  it('stays with its edge, at a distance', () => {
    expect(movedChoice(onDoor, 12, -3).at).toEqual({
      x: { of: 'opening', id: 'D1', side: 'left', by: 12 },
      y: 1497,
    });
    expect(movedChoice(movedChoice(onDoor, 12, 0), -12, 0)).toEqual(onDoor);
  });

  it('takes all sides of a band along, and keeps its size', () => {
    expect(movedChoice(band, 10, 0.25)).toEqual({
      ...band,
      left: 110,
      right: 310,
      bottom: 50.75,
      top: 90.25,
    });
  });

  it('takes both panels of a join along', () => {
    const join: HandChoice = { id: 'H3', kind: 'join', at: { x: 1, y: 2 }, with: { x: 3, y: 4 } };
    expect(movedChoice(join, 1, 1)).toEqual({ ...join, at: { x: 2, y: 3 }, with: { x: 4, y: 5 } });
  });

  it('is left as it was where nothing moves, and every place is asked for once', () => {
    expect(movedChoice(onDoor, 0, 0)).toEqual(onDoor);
    expect(placesOfChoice(band).map(({ axis }) => axis)).toEqual(['x', 'x', 'y', 'y']);
    expect(mapPlaces(band, ({ axis }) => (axis === 'x' ? 1 : 2))).toEqual({
      ...band,
      left: 1,
      right: 1,
      bottom: 2,
      top: 2,
    });
  });
});
