import { describe, expect, it } from 'vitest';
import { difference } from '../../core/geometry/clip';
import { boxOfRegion, isRectilinear, rectangle, regionArea } from '../../core/geometry/polygon';
import { surveyWall } from '../../core/survey/survey';
import { wallOf } from './random-walls';

const squareM = (area: number) => area / 1e10;

describe('surveyWall', () => {
  it('leaves a bare wall whole', () => {
    const { usable, rim, findings } = surveyWall(wallOf());
    expect(usable).toEqual([rectangle(0, 0, 540000, 270000)]);
    expect(rim).toEqual([]);
    expect(findings).toEqual([]);
  });

  it('takes off a door with its clearance, down to the floor', () => {
    const door = { id: 'D1', kind: 'door', x: 300, y: 0, width: 926, height: 2040, clearance: 60 };
    const { usable } = surveyWall(wallOf({ openings: [door] }));
    // 5.4 × 2.7 less 1.046 × 2.1: the clearance below the floor is not wall.
    expect(squareM(regionArea(usable))).toBeCloseTo(14.58 - 2.1966, 9);
  });

  it('grows a circle to a circle, which reaches exactly as far as diameter and clearance', () => {
    const pipe = { id: 'P1', kind: 'pipe', circle: { x: 4000, y: 900, diameter: 40 }, clearance: 10 };
    const { keepOuts } = surveyWall(wallOf({ fittings: [pipe] }));
    expect(boxOfRegion([keepOuts[0]!.grown])).toEqual({
      left: 397000,
      bottom: 87000,
      right: 403000,
      top: 93000,
    });
    expect(keepOuts[0]!.bare.arcs).toHaveLength(1);
  });

  it('rounds a clearance up to whole hundredths, never down', () => {
    const socket = { id: 'K1', kind: 'socket', x: 1500, y: 300, width: 146, height: 86, clearance: 5.001 };
    expect(surveyWall(wallOf({ fittings: [socket] })).keepOuts[0]!.grown).toEqual(
      rectangle(149499, 29499, 15602, 9602),
    );
  });

  it('grows a free shape with mitred corners', () => {
    const shape: [number, number][] = [[1000, 1000], [1400, 1000], [1400, 1400], [1000, 1400]]; // prettier-ignore
    const { keepOuts } = surveyWall(
      wallOf({ openings: [{ id: 'N1', kind: 'niche', shape, clearance: 25 }] }),
    );
    expect(keepOuts[0]!.grown).toEqual(rectangle(97500, 97500, 45000, 45000));
  });

  it('says when an opening is off the wall, wholly or in part', () => {
    const window = (x: number) => ({
      id: `W${x}`,
      kind: 'window',
      x,
      y: 900,
      width: 800,
      height: 1000,
      clearance: 0,
    });
    const { findings } = surveyWall(wallOf({ openings: [window(1000), window(5000), window(9000)] }));
    expect(findings.map(({ code, object }) => [code, object])).toEqual([
      ['opening-outside-wall', 'W5000'],
      ['opening-outside-wall', 'W9000'],
    ]);
    expect(findings[0]!.text).toContain('reaches beyond the edge');
    expect(findings[1]!.text).toContain('lies outside');
  });

  it('says when nothing of a wall is left', () => {
    const opening = { id: 'W1', kind: 'window', x: -10, y: -10, width: 5500, height: 2800, clearance: 0 };
    const { usable, findings } = surveyWall(wallOf({ openings: [opening] }));
    expect(usable).toEqual([]);
    expect(findings.map(({ code }) => code)).toEqual(['opening-outside-wall', 'wall-not-usable']);
  });
});

describe('the rim', () => {
  it('is a frame round a plain wall, each side by its own clearance', () => {
    const rim = { floor: 100, ceiling: 20, left: 5, right: 10 };
    const { usable, rim: bands } = surveyWall(wallOf({ rim }));
    expect(usable).toEqual([rectangle(500, 10000, 540000 - 1500, 270000 - 12000)]);
    expect(bands.map(({ side }) => side)).toEqual(['floor', 'right', 'ceiling', 'left']);
  });

  it('goes up a stepped floor and joins round the nose of the step', () => {
    const outline: [number, number][] = [[0, 0], [2000, 0], [2000, 500], [4000, 500], [4000, 2500], [0, 2500]]; // prettier-ignore
    const { usable } = surveyWall(wallOf({ outline, rim: { floor: 100, ceiling: 0, left: 0, right: 50 } }));
    expect(usable.every(isRectilinear)).toBe(true);
    // The riser faces right: beside it 50 is kept, up to the skirting of the upper floor.
    const expected = [rectangle(0, 10000, 195000, 240000), rectangle(195000, 60000, 200000, 190000)];
    expect(difference(expected, usable)).toEqual([]);
    expect(difference(usable, expected)).toEqual([]);
  });

  it('ends a skirting at the nose of a step whose riser has none', () => {
    const outline: [number, number][] = [[0, 0], [2000, 0], [2000, 500], [4000, 500], [4000, 2500], [0, 2500]]; // prettier-ignore
    const { usable } = surveyWall(wallOf({ outline, rim: { floor: 100, ceiling: 0, left: 0, right: 0 } }));
    expect(regionArea(usable)).toBe(200000 * 240000 + 200000 * 190000);
  });

  it('keeps its clearance square to a sloping ceiling', () => {
    // A fall of 3 in 4: moved down square by 100, it is 125 lower.
    const outline: [number, number][] = [[0, 0], [4000, 0], [4000, 1000], [0, 4000]]; // prettier-ignore
    const { usable } = surveyWall(wallOf({ outline, rim: { floor: 0, ceiling: 100, left: 0, right: 0 } }));
    expect(boxOfRegion(usable)).toEqual({ left: 0, bottom: 0, right: 400000, top: 387500 });
    expect(squareM(regionArea(usable))).toBeCloseTo(10 - 4 * 0.125, 6);
  });
});
