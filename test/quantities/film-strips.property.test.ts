import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { union } from '../../core/geometry/clip';
import { rectangle } from '../../core/geometry/polygon';
import { planStrips, type FilmRules } from '../../core/quantities/film-strips';

/** Squares of a raster: columns from the left, in each the rows that the region has. */
type Raster = readonly (readonly boolean[])[];

interface Question {
  readonly cells: Raster;
  readonly rollWidth: number;
  readonly overlap: number;
  readonly trim: number;
  readonly keepOff: readonly { from: number; to: number }[];
}

/** Length and number of strips of the best plan, found by trying every seam on every whole line of the raster. */
function byTryingAll({ cells, rollWidth, overlap, trim, keepOff }: Question): [number, number] | null {
  const has = (column: number) => cells[column]?.some(Boolean) ?? false;
  const half = overlap / 2;
  const ends = cells.length;
  const insideSpan = (at: number) =>
    Array.from({ length: overlap }, (_, i) => at - half + i).every(has) && has(at - 1) && has(at);
  const isSeam = (at: number) => insideSpan(at) && !keepOff.some(({ from, to }) => from < at && at < to);
  const isLeft = (at: number) => has(at) && !has(at - 1);
  const isRight = (at: number) => has(at - 1) && !has(at);
  const pieces = (from: number, to: number) => {
    const covered = new Set<number>();
    for (let column = Math.max(0, from); column < Math.min(ends, to); column++) {
      cells[column]!.forEach((filled, row) => {
        if (filled) for (let v = row - trim; v < row + 1 + trim; v++) covered.add(v);
      });
    }
    return covered.size;
  };
  let best: [number, number] | null = null;
  const goOn = (at: number, start: 'seam' | 'left', length: number, strips: number) => {
    for (let to = at + 1; to <= ends; to++) {
      for (const kind of ['seam', 'right'] as const) {
        if (kind === 'seam' ? !isSeam(to) : !isRight(to)) continue;
        const margins = (start === 'seam' ? half : trim) + (kind === 'seam' ? half : trim);
        if (to - at + margins > rollWidth) continue;
        const own = pieces(start === 'seam' ? at - half : at, kind === 'seam' ? to + half : to);
        const sum: [number, number] = [length + own, strips + 1];
        if (kind === 'seam') goOn(to, 'seam', ...sum);
        else {
          const next = Array.from({ length: ends - to }, (_, i) => to + i).find(isLeft);
          if (next !== undefined) goOn(next, 'left', ...sum);
          else if (!best || sum[0] < best[0] || (sum[0] === best[0] && sum[1] < best[1])) best = sum;
        }
      }
    }
  };
  const first = cells.findIndex((column) => column.some(Boolean));
  if (first >= 0) goOn(first, 'left', 0, 0);
  return best;
}

const question: fc.Arbitrary<Question> = fc
  .record({
    cells: fc.array(fc.array(fc.boolean(), { minLength: 4, maxLength: 6 }), { minLength: 2, maxLength: 11 }),
    rollWidth: fc.integer({ min: 3, max: 8 }),
    overlap: fc.constantFrom(0, 2),
    trim: fc.integer({ min: 0, max: 1 }),
    keepOff: fc.array(
      fc.record({ from: fc.integer({ min: 0, max: 10 }), width: fc.integer({ min: 1, max: 3 }) }),
      {
        maxLength: 2,
      },
    ),
  })
  .map(({ keepOff, cells, ...rest }) => ({
    ...rest,
    cells: cells.map((column) => [...column, false, false, false, false, false, false].slice(0, 6)),
    keepOff: keepOff.map(({ from, width }) => ({ from, to: from + width })),
  }));

/** Columns and rows of the raster are this wide, hundredths; even, so that half an overlap is whole. */
const unit = 10;

function planned({ cells, rollWidth, overlap, trim, keepOff }: Question) {
  const squares = cells.flatMap((column, x) =>
    column.flatMap((filled, y) => (filled ? [rectangle(x * unit, y * unit, unit, unit)] : [])),
  );
  const region = union(squares);
  const scaled = keepOff.map(({ from, to }) => ({ from: from * unit, to: to * unit }));
  const rules: FilmRules = {
    rollWidth: rollWidth * unit,
    overlap: overlap * unit,
    trim: trim * unit,
    leastStrip: unit,
    keepOff: { upright: scaled, level: [] },
  };
  return { region, rules, plan: planStrips(region, rules, 'upright') };
}

/** As wide as the roll lets one strip be, were it not for the trim on both sides. */
const narrow: Question = {
  cells: [0, 1].map(() => [true, true, true, true, false, false]),
  rollWidth: 3,
  overlap: 0,
  trim: 1,
  keepOff: [],
};

describe('strips of film, against every plan on the lines of a raster', () => {
  it('take least film, then fewest strips, for any region of squares', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { plan } = planned(asked);
        const best = byTryingAll(asked);
        expect(plan && [plan.length / unit, plan.strips.length]).toEqual(best);
        if (plan) expect(plan.exact).toBe(true);
      }),
      { numRuns: 600, examples: [[narrow]] },
    );
  });

  it('keep to the roll, meet where they end, and keep off', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { plan, rules } = planned(asked);
        if (!plan) return;
        plan.strips.forEach(({ from, to }, i) => {
          const [before, after] = [plan.strips[i - 1], plan.strips[i + 1]];
          const left = before?.to === from ? rules.overlap / 2 : rules.trim;
          const right = after?.from === to ? rules.overlap / 2 : rules.trim;
          expect(to - from + left + right).toBeLessThanOrEqual(rules.rollWidth);
          if (before) expect(from).toBeGreaterThanOrEqual(before.to);
        });
        for (const seam of plan.seams) {
          expect(rules.keepOff.upright.some(({ from, to }) => from < seam && seam < to)).toBe(false);
        }
        expect(plan.taken).toBeGreaterThanOrEqual(plan.covered);
      }),
      { numRuns: 300 },
    );
  });
});
