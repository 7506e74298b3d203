import { describe, expect, it } from 'vitest';
import { castShadow, recessShadow } from '../../../core/drawings/picture/shadows';
import { boxOfRegion, rectangle, regionArea } from '../../../core/geometry/polygon';

const mm2 = 100 * 100;
const wall = [rectangle(0, 0, 500_000, 300_000)];

describe('the shadow of a thing on the wall, light over the left shoulder at 45°', () => {
  const thing = [rectangle(100_000, 100_000, 40_000, 20_000)];

  it('has depth × (width + height): two parallelograms beside it, one below and one at its right', () => {
    const shadow = castShadow(thing, 30, wall);
    expect(regionArea(shadow) / mm2).toBeCloseTo(30 * (400 + 200), 6);
    expect(boxOfRegion(shadow)).toEqual({ left: 100_000, bottom: 97_000, right: 143_000, top: 120_000 });
  });

  it('ends where the wall ends, and a thing that lies flat throws none', () => {
    const low = [rectangle(100_000, 1_000, 40_000, 20_000)];
    expect(boxOfRegion(castShadow(low, 30, wall)).bottom).toBe(0);
    expect(castShadow(thing, 0, wall)).toEqual([]);
    expect(castShadow([], 30, wall)).toEqual([]);
  });
});

describe('the shade in a recess', () => {
  it('lies along its left and upper edge, as wide as it is deep', () => {
    const niche = [rectangle(0, 0, 60_000, 90_000)];
    const shade = recessShadow(niche, 100);
    expect(regionArea(shade) / mm2).toBeCloseTo(100 * 600 + 100 * 900 - 100 * 100, 6);
    expect(recessShadow(niche, 0)).toEqual([]);
  });
});
