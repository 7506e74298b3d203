import { describe, expect, it } from 'vitest';
import { difference } from '../../core/geometry/clip';
import { rectangle } from '../../core/geometry/polygon';
import { piecesOfPlan, seamRuns } from '../../core/quantities/film-pieces';
import { planStrips, type FilmRules } from '../../core/quantities/film-strips';

/** A roll of 1220 mm, 20 mm for the double cut, 25 mm over at edges; hundredths. */
const rules: FilmRules = {
  rollWidth: 122_000,
  overlap: 2000,
  trim: 2500,
  leastStrip: 5000,
  keepOff: { upright: [], level: [] },
};

describe('pieces of a plan', () => {
  it('count from the left, reach over edges by the trim and over seams by half of the double cut', () => {
    const plan = planStrips([rectangle(10_000, 5000, 200_000, 250_000)], rules, 'upright')!;
    // Two strips: 1220 wide with 25 over at the edge and 10 at the seam shows 1185.
    expect(plan.seams).toEqual([128_500]);
    expect(piecesOfPlan(plan, rules)).toEqual([
      {
        mark: '1',
        from: 10_000,
        to: 128_500,
        reachFrom: 7500,
        reachTo: 129_500,
        begins: 2500,
        ends: 257_500,
      },
      {
        mark: '2',
        from: 128_500,
        to: 210_000,
        reachFrom: 127_500,
        reachTo: 212_500,
        begins: 2500,
        ends: 257_500,
      },
    ]);
  });

  it('have letters where an opening parts a strip', () => {
    const region = difference([rectangle(0, 0, 100_000, 250_000)], [rectangle(0, 100_000, 100_000, 50_000)]);
    const pieces = piecesOfPlan(planStrips(region, rules, 'upright')!, rules);
    expect(pieces.map(({ mark, begins, ends }) => [mark, begins, ends])).toEqual([
      ['1a', -2500, 102_500],
      ['1b', 147_500, 252_500],
    ]);
  });

  it('have a letter more after z', () => {
    const pieces = Array.from({ length: 28 }, (_, i) => ({ from: i * 100, to: i * 100 + 50 }));
    const plan = {
      direction: 'upright',
      strips: [{ from: 0, to: 1000, pieces }],
      seams: [],
      length: 0,
      taken: 0,
      covered: 0,
      exact: true,
    } as const;
    expect(piecesOfPlan(plan, rules).map(({ mark }) => mark)).toEqual(
      expect.arrayContaining(['1a', '1z', '1aa', '1ab']),
    );
  });
});

describe('seams', () => {
  const wide = rectangle(0, 0, 200_000, 250_000);

  it('do not run through openings', () => {
    const plan = planStrips([wide], rules, 'upright')!;
    const [at] = plan.seams;
    const region = difference([wide], [rectangle(at! - 5000, 80_000, 10_000, 40_000)]);
    expect(seamRuns(plan, region)).toEqual([
      { at, from: 0, to: 80_000 },
      { at, from: 120_000, to: 250_000 },
    ]);
  });

  it('of level strips run level', () => {
    const plan = planStrips([wide], rules, 'level')!;
    expect(seamRuns(plan, [wide])).toEqual(plan.seams.map((at) => ({ at, from: 0, to: 200_000 })));
    expect(plan.seams.length).toBeGreaterThan(0);
  });

  it('end at a sloping edge', () => {
    const slope = {
      outer: [
        { x: 0, y: 0 },
        { x: 200_000, y: 0 },
        { x: 200_000, y: 100_000 },
        { x: 0, y: 200_000 },
      ],
      holes: [],
    };
    const plan = planStrips([slope], rules, 'upright')!;
    for (const { at, from, to } of seamRuns(plan, [slope])) {
      expect(from).toBe(0);
      expect(Math.abs(to - (200_000 - at / 2))).toBeLessThanOrEqual(2);
    }
    expect(seamRuns(plan, [slope])).toHaveLength(plan.seams.length);
  });
});
