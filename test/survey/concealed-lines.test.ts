import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import type { FixingPoint } from '../../core/job/ground-schema';
import type { SurveyLine, Wall } from '../../core/job/schema';
import { concealedFindings } from '../../core/survey/concealed-lines';
import { surveyWall } from '../../core/survey/survey';

const wall = demoJob().walls[0]!;
const cable: SurveyLine = { id: 'C1', kind: 'cable', from: [1000, 0], to: [1000, 2000] };
const hole = (x: number, y: number): FixingPoint => ({ id: 'X1', kind: 'hole', x, y, width: 8 });
const walled = (lines: readonly SurveyLine[], fixingPoints: readonly FixingPoint[]) =>
  ({ ...wall, lines, fixingPoints }) as Wall;

describe('a fixing point at a cable or pipe in the wall', () => {
  it.each([
    [hole(1003, 500), 'lies over concealed cable C1'],
    [hole(1050, 500), 'only 46 mm'],
    [{ id: 'X1', kind: 'stud', x: 980, y: 0, width: 50, height: 2000 } as const, 'lies over'],
    [{ id: 'X1', kind: 'pattress', x: 500, y: 1900, width: 600, height: 300 } as const, 'lies over'],
    [{ id: 'X1', kind: 'pattress', x: 900, y: 2030, width: 200, height: 100 } as const, 'only 30 mm'],
  ])('is told (%#)', (point, words) => {
    const [finding, ...others] = concealedFindings(walled([cable], [point]));
    expect(others).toEqual([]);
    expect(finding?.object).toBe('X1');
    expect(finding?.text).toContain(words);
  });

  it('is not told further off, nor of joints', () => {
    expect(concealedFindings(walled([cable], [hole(1055, 500)]))).toEqual([]);
    expect(concealedFindings(walled([cable], [hole(1000, 2055)]))).toEqual([]);
    expect(concealedFindings(walled([{ ...cable, kind: 'board-joint' }], [hole(1000, 500)]))).toEqual([]);
  });

  it('is told of a slanting pipe only where the pipe runs', () => {
    const pipe: SurveyLine = { id: 'P1', kind: 'pipe', from: [0, 0], to: [1000, 1000] };
    const box = (x: number, y: number) =>
      ({ id: 'X1', kind: 'pattress', x, y, width: 100, height: 100 }) as const;
    expect(concealedFindings(walled([pipe], [box(450, 450)]))).toHaveLength(1);
    // Within the box around the pipe, and 71 mm and more from the pipe itself.
    expect(concealedFindings(walled([pipe], [box(600, 400)]))).toEqual([]);
  });

  it('property: is told exactly where a point of the line, taken every millimetre, is that near', () => {
    const place = fc.integer({ min: 0, max: 600 });
    fc.assert(
      fc.property(place, place, place, place, place, place, fc.integer({ min: 10, max: 200 }), (...given) => {
        const [x1, y1, x2, y2, x, y, side] = given;
        const line: SurveyLine = { id: 'C1', kind: 'cable', from: [x1, y1], to: [x2, y2] };
        const point = { id: 'X1', kind: 'pattress', x, y, width: side, height: side } as const;
        const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1)));
        let nearest = Infinity;
        for (let i = 0; i <= steps; i++) {
          const [px, py] = [x1 + ((x2 - x1) * i) / steps, y1 + ((y2 - y1) * i) / steps];
          const dx = Math.max(x - px, 0, px - x - side);
          const dy = Math.max(y - py, 0, py - y - side);
          nearest = Math.min(nearest, Math.hypot(dx, dy));
        }
        fc.pre(Math.abs(nearest - 50) > 1);
        expect(concealedFindings(walled([line], [point]))).toHaveLength(nearest < 50 ? 1 : 0);
      }),
    );
  });

  it('stands among the findings of the survey, and takes no area from the wall', () => {
    const { usable, findings } = surveyWall(walled([cable], [hole(1000, 500)]));
    expect(findings.map(({ code }) => code)).toContain('fixing-point-at-concealed-line');
    expect(usable).toEqual(surveyWall(walled([], [])).usable);
  });
});
