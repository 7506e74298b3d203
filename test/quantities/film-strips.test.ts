import { describe, expect, it } from 'vitest';
import { difference } from '../../core/geometry/clip';
import { rectangle, type Region } from '../../core/geometry/polygon';
import { planStrips, type FilmRules } from '../../core/quantities/film-strips';

/** Arguments and figures in mm. */
const rules = (
  over: Partial<Record<'rollWidth' | 'overlap' | 'trim', number>> = {},
  upright: number[][] = [],
) =>
  ({
    rollWidth: (over.rollWidth ?? 1220) * 100,
    overlap: (over.overlap ?? 20) * 100,
    trim: (over.trim ?? 25) * 100,
    leastStrip: 5000,
    keepOff: { upright: upright.map(([from, to]) => ({ from: from! * 100, to: to! * 100 })), level: [] },
  }) satisfies FilmRules;
const board = (width: number, height: number) => rectangle(0, 0, width * 100, height * 100);

describe('a plan of strips', () => {
  it('of a board 3000 × 1200 from a roll of 1220 with 2 × 25 to trim: three upright, full widths first', () => {
    const plan = planStrips([board(3000, 1200)], rules(), 'upright')!;
    expect(plan.strips).toHaveLength(3);
    // 1220 − 25 to trim − 10 of overlap; then 1220 − 20.
    expect(plan.seams).toEqual([118500, 238500]);
    expect(plan.length).toBe(3 * 125000);
    expect(plan.taken / 1e10).toBeCloseTo(3 * 1.25 * 1.22, 9);
  });

  it('runs the other way where that takes less', () => {
    const low = planStrips([board(3000, 1170)], rules())!;
    expect(low.direction).toBe('level');
    expect(low.length).toBe(305000);
    expect(planStrips([board(1170, 3000)], rules())!.direction).toBe('upright');
  });

  it('moves a seam off a joint, and loses nothing by it while the last strip has room', () => {
    const plan = planStrips([board(3000, 1200)], rules({}, [[1150, 1250]]), 'upright')!;
    expect(plan.seams[0]).toBe(115000);
    expect(plan.length).toBe(3 * 125000);
  });

  it('ends a strip at a door and begins another above it, where a door is as wide as the strip', () => {
    const wall = difference([board(3600, 2500)], [rectangle(120000, 0, 120000, 210000)]);
    const plan = planStrips(wall, rules({ rollWidth: 1250 }), 'upright')!;
    expect(plan.strips.map(({ pieces }) => pieces.map(({ from, to }) => to - from))).toEqual([
      [255000],
      [45000],
      [255000],
    ]);
  });

  it('cuts out an opening inside a piece, and counts what is lost', () => {
    const region: Region = difference([board(1000, 2000)], [rectangle(20000, 50000, 30000, 30000)]);
    const plan = planStrips(region, rules({ trim: 0 }), 'upright')!;
    expect(plan.length).toBe(200000);
    expect((plan.taken - plan.covered) / 1e10).toBeCloseTo(1.22 * 2 - 2 + 0.09, 9);
  });

  it('is not proven under a sloping ceiling, but keeps each strip as long as its side asks', () => {
    const slope: Region = [
      {
        outer: [
          { x: 0, y: 0 },
          { x: 200000, y: 0 },
          { x: 200000, y: 200000 },
          { x: 0, y: 100000 },
        ],
        holes: [],
      },
    ];
    const plan = planStrips(slope, rules({ rollWidth: 1000, overlap: 0, trim: 0 }), 'upright')!;
    expect(plan.exact).toBe(false);
    expect(plan.strips.map(({ pieces }) => pieces[0]!.to)).toEqual([150000, 200000]);
  });

  it('is none where the roll is too narrow or seams have no place', () => {
    expect(planStrips([board(500, 500)], rules({ rollWidth: 20 }))).toBeNull();
    expect(planStrips([board(3000, 500)], rules({}, [[0, 3000]]), 'upright')).toBeNull();
    expect(planStrips([], rules())).toBeNull();
  });
});
