import { describe, expect, it } from 'vitest';
import { placeBeside } from '../../../web/elevation/beside';
import type { Frame } from '../../../web/elevation/frame';

/** 1 px is 10 mm; the datum at 100, 500. */
const frame: Frame = { width: 800, height: 600, scale: 0.1, originX: 100, originY: 500 };
const zone = { x: 1000, y: 1000, width: 2000, height: 1000 };
const size = { width: 120, height: 60 };

describe('a note beside a box on the drawing', () => {
  it('stands right of it where nothing is', () => {
    expect(placeBeside(zone, size, [], frame)).toEqual({ left: 420, top: 320 });
  });
  it('goes where it covers nothing', () => {
    const right = { x: 3000, y: 0, width: 1000, height: 2700 };
    expect(placeBeside(zone, size, [right], frame)).toEqual({ left: 60, top: 320 });
    const left = { x: 0, y: 0, width: 1000, height: 2700 };
    expect(placeBeside(zone, size, [right, left], frame)).toEqual({ left: 200, top: 420 });
  });
  it('covers what it must, but stays whole', () => {
    const all = { x: -1000, y: -1000, width: 9000, height: 9000 };
    expect(placeBeside(zone, size, [all], frame)).toEqual({ left: 420, top: 320 });
    expect(placeBeside(all, size, [], frame)).toEqual({ left: 676, top: 4 });
  });
});
