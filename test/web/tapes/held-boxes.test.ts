import { describe, expect, it } from 'vitest';
import { heldBox, heldTick, hiddenByHeld, type TapeSizes } from '../../../web/tapes/held-boxes';

const foot: TapeSizes = { axis: 'x', across: 56, rowHeight: 24, tickLength: 10 };
const side: TapeSizes = { axis: 'y', across: 52, rowHeight: 24, tickLength: 10 };
const figure = (at: number, start: number, row = 0, length = 36) => ({ at, length, place: { start, row } });

describe('figures at rest under those of what is held', () => {
  it('are hidden whole, those beside them and in the other row are not', () => {
    const held = [heldBox(figure(90, 93), 26, foot)];
    const [covered, beside, below] = [figure(110, 113), figure(140, 143), figure(100, 103, 1)];
    expect(hiddenByHeld([covered, beside, below], held, foot)).toEqual([
      { left: 113, top: 11, width: 36, height: 18 },
    ]);
  });

  it('are hidden where a tick that is held runs through them, to the row it ends in', () => {
    const upper = figure(110, 113);
    const lower = figure(100, 113, 1);
    const short = [heldTick({ at: 120, length: 36, place: { start: 84, row: 0 } }, foot)];
    expect(hiddenByHeld([upper, lower], short, foot)).toEqual([]);
    const long = [heldTick({ at: 120, length: 36, place: { start: 123, row: 1 } }, foot)];
    expect(hiddenByHeld([upper, lower], long, foot)).toHaveLength(1);
  });

  it('up the side keep their ticks and the graduation', () => {
    const held = [heldBox(figure(200, 203, 0, 24), 26, side), heldTick(figure(200, 203, 0, 24), side)];
    const hidden = hiddenByHeld([figure(210, 213, 0, 24), figure(260, 263, 0, 24)], held, side);
    expect(hidden).toEqual([{ left: 2, top: 213, width: 39, height: 16 }]);
  });

  it('without a place there is nothing to hide', () => {
    expect(
      hiddenByHeld([{ at: 95, length: 36, place: null }], [heldBox(figure(90, 93), 26, foot)], foot),
    ).toEqual([]);
  });
});
