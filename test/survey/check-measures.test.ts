import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insertVertex, removeVertex } from '../../core/job/changes';
import { emptyJob, newWall } from '../../core/job/defaults';
import type { CheckMeasure, Wall } from '../../core/job/schema';
import { findWall, pointOf } from '../../core/job/shape';
import { compareMeasures, measureFindings, squareChecks } from '../../core/survey/check-measures';
import { fitOutline } from '../../core/survey/fit-outline';

const wallWith = (checkMeasures: CheckMeasure[], width = 3000, height = 4000): Wall => ({
  ...newWall('A', '', width, height),
  checkMeasures,
});

describe('check measures against the drawing', () => {
  it('compare what was measured with what is drawn', () => {
    const [diagonal, lost] = compareMeasures(
      wallWith([
        { from: 1, to: 3, length: 5008 },
        { from: 2, to: 9, length: 100 },
      ]),
    );
    expect(diagonal).toMatchObject({ drawn: 5000, off: 8 });
    expect(lost).toMatchObject({ drawn: undefined, off: undefined });
  });

  it('are found where they miss by more than 3 mm, or a corner that is there', () => {
    const found = measureFindings(
      wallWith([
        { from: 1, to: 3, length: 5003 },
        { from: 2, to: 4, length: 4990 },
        { from: 2, to: 9, length: 100 },
        { from: 2, to: 2, length: 100 },
      ]),
    );
    expect(found.map(({ code }) => code)).toEqual([
      'check-measure-off',
      'check-measure-lost',
      'check-measure-lost',
    ]);
    expect(found[0]!.text).toContain('The tape says 4990 mm from corner 2 to corner 4, the drawing 5000 mm');
  });
});

/* The builder's 3-4-5 triangle: Pythagoras' theorem, Euclid, Elements I.47; off square by the law of cosines, II.12. */
describe('a corner measured across', () => {
  it('is square where 3, 4 and 5 m are measured', () => {
    const [square] = squareChecks(wallWith([{ from: 1, to: 3, length: 5000 }]));
    expect(square).toMatchObject({ corner: 2, lean: 0 });
  });
  it('leans away where the diagonal is longer, by (a² + b² − d²) / 2a', () => {
    const checks = squareChecks(wallWith([{ from: 3, to: 1, length: 5010 }]));
    // Of the corner at the foot: (3000² + 4000² − 5010²) / 6000; of the one at the head, with 4000 along: / 8000.
    expect(checks.map(({ corner }) => corner)).toEqual([2, 4]);
    expect(checks[0]!.lean).toBeCloseTo(-100_100 / 6000, 9);
  });
  it('goes by its edges as measured', () => {
    const [square] = squareChecks(
      wallWith([
        { from: 1, to: 3, length: Math.hypot(3010, 4000) },
        { from: 2, to: 1, length: 3010 },
      ]),
    );
    expect(square!.lean).toBeCloseTo(0, 9);
  });
  it('is looked at only where it is drawn square', () => {
    const wall = wallWith([{ from: 1, to: 3, length: 5000 }]);
    const [a, b, c, d] = wall.outline;
    expect(squareChecks({ ...wall, outline: [a!, [3200, 0], c!, d!] }).map(({ corner }) => corner)).toEqual([
      4,
    ]);
    expect(b).toEqual([3000, 0]);
  });
});

const between = (wall: Pick<Wall, 'outline'>, from: number, to: number) => {
  const [a, b] = [pointOf(wall.outline[from - 1]!), pointOf(wall.outline[to - 1]!)];
  return Math.hypot(b.x - a.x, b.y - a.y);
};

/** Every two corners of a wall of four. */
const pairs = [
  [1, 2],
  [2, 3],
  [3, 4],
  [4, 1],
  [1, 3],
  [2, 4],
] as const;

describe('an outline fitted to its measures', () => {
  const far = fc.integer({ min: -60, max: 60 });

  it('is the wall that was measured, where its edges and a diagonal are', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 1500, max: 9000 }), fc.integer({ min: 1500, max: 4000 })),
        fc.array(far, { minLength: 5, maxLength: 5 }),
        ([width, height], [a, b, c, d, e]) => {
          const truth: [number, number][] = [
            [0, 0],
            [width + a!, 0],
            [width + b!, height + c!],
            [d!, height + e!],
          ];
          const measures = pairs.map(([from, to]) => ({
            from,
            to,
            length: between({ outline: truth }, from, to),
          }));
          const fit = fitOutline(wallWith(measures, width, height));
          if ('fault' in fit) throw new Error(fit.fault);
          expect(fit.residual).toBeLessThan(0.02);
          fit.outline.forEach((vertex, i) => {
            expect(pointOf(vertex).x).toBeCloseTo(truth[i]![0], 0);
            expect(pointOf(vertex).y).toBeCloseTo(truth[i]![1], 0);
          });
        },
      ),
    );
  });

  it('misses measures that contradict each other as little as may be', () => {
    fc.assert(
      fc.property(fc.array(far, { minLength: 6, maxLength: 6 }), (errors) => {
        const drawn = newWall('A', '', 4200, 2600);
        const measures = pairs.map(([from, to], i) => ({
          from,
          to,
          length: between(drawn, from, to) + errors[i]! / 3,
        }));
        const fit = fitOutline({ ...drawn, checkMeasures: measures });
        if ('fault' in fit) throw new Error(fit.fault);
        const missed = (outline: Wall['outline']) =>
          measures.reduce(
            (sum, { from, to, length }) => sum + (between({ outline }, from, to) - length) ** 2,
            0,
          );
        const least = missed([...fit.outline]);
        // The first corner and the direction of the first edge are held.
        for (const corner of [1, 2, 3]) {
          for (const [dx, dy] of corner === 1
            ? [
                [1, 0],
                [-1, 0],
              ]
            : [
                [1, 0],
                [-1, 0],
                [0, 1],
                [0, -1],
              ]) {
            const moved = fit.outline.map((vertex, i) => {
              const { x, y } = pointOf(vertex);
              return (i === corner ? [x + dx!, y + dy!] : [x, y]) as [number, number];
            });
            expect(missed(moved)).toBeGreaterThan(least);
          }
        }
        expect(fit.outline[0]).toEqual([0, 0]);
        expect(pointOf(fit.outline[1]!).y).toBeCloseTo(0, 2);
      }),
      { numRuns: 60 },
    );
  });

  it('stays as it is drawn where nobody measured', () => {
    const wall = wallWith([{ from: 1, to: 2, length: 3000 }]);
    const fit = fitOutline(wall);
    expect(fit).toEqual({ outline: wall.outline, mostMoved: 0, residual: 0 });
  });

  it('is refused where no wall has the measures, or there are none', () => {
    const triangle = [
      { from: 1, to: 2, length: 1000 },
      { from: 2, to: 3, length: 9000 },
      { from: 1, to: 3, length: 1000 },
    ];
    expect(fitOutline(wallWith(triangle))).toEqual({ fault: expect.stringMatching(/misread/) as unknown });
    expect(fitOutline(wallWith([]))).toEqual({ fault: expect.stringMatching(/^Type a measure/) as unknown });
  });

  it('is refused where it would take long', () => {
    const outline = Array.from({ length: 61 }, (_, i): [number, number] => [
      Math.round(3000 * Math.cos(i / 9.8)),
      Math.round(3000 * Math.sin(i / 9.8)),
    ]);
    const wall = { ...wallWith([{ from: 1, to: 2, length: 3010 }]), outline };
    expect(fitOutline(wall)).toEqual({ fault: expect.stringMatching(/more than 60 corners/) as unknown });
  });

  it('is refused where an edge is an arc', () => {
    const wall = wallWith([{ from: 1, to: 2, length: 3010 }]);
    const outline = [
      ...wall.outline.slice(0, 3),
      { arcTo: [0, 4000] as [number, number], via: [1500, 4500] as [number, number] },
    ];
    expect(fitOutline({ ...wall, outline })).toEqual({
      fault: expect.stringMatching(/^An outline with an arc/) as unknown,
    });
  });
});

describe('measures when a corner comes in or goes', () => {
  const job = {
    ...emptyJob(),
    walls: [
      wallWith([
        { from: 1, to: 3, length: 5000 },
        { from: 2, to: 4, length: 5001 },
      ]),
    ],
  };
  const after = (changed: typeof job) => findWall(changed, 'A')!.checkMeasures;

  it('keep to their corners', () => {
    const put = insertVertex(job, 'A', null, 2, { x: 3000, y: 2000 }) as typeof job;
    expect(after(put)).toEqual([
      { from: 1, to: 4, length: 5000 },
      { from: 2, to: 5, length: 5001 },
    ]);
    expect(after(removeVertex(put, 'A', null, 2) as typeof job)).toEqual(job.walls[0]!.checkMeasures);
  });
  it('go with their corner', () => {
    expect(after(removeVertex(job, 'A', null, 1) as typeof job)).toEqual([{ from: 1, to: 2, length: 5000 }]);
    const both = removeVertex(removeVertex(job, 'A', null, 1), 'A', null, 0) as typeof job;
    expect(findWall(both, 'A')!.outline).toHaveLength(3);
    expect(after(both)).toEqual([{ from: 1, to: 2, length: 5000 }]);
  });
});
