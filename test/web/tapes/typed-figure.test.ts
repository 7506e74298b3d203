import { describe, expect, it } from 'vitest';
import { boxOfObject, findObject, findWall, type ObjectRef } from '../../../core/job/shape';
import { surveyWall } from '../../../core/survey/survey';
import { runningMarks, type Marked } from '../../../core/zones/running-marks';
import { zoneAreas } from '../../../core/zones/zone-areas';
import { changeForFigure, choicesFor, type FigureDoes } from '../../../web/tapes/typed-figure';
import { smallJob, smallWall } from '../proofing-wall';

const marked = (kind: Marked['kind'], id: string, edge: Marked['edge']): Marked => ({ kind, id, edge });

function typed(axis: 'x' | 'y', mark: Marked, from: number, to: number, does: FigureDoes) {
  const result = changeForFigure(smallWall, axis, mark, from, to, does);
  if ('fault' in result) return { fault: result.fault, name: '', box: null };
  const after = findWall(result.change.change(smallJob), 'A')!;
  const object = mark.kind === 'wall' ? undefined : findObject(after, mark as ObjectRef);
  return { fault: null, name: result.change.name, box: object ? boxOfObject(object) : null, after };
}

describe('a figure typed on a tape', () => {
  it('moves a socket by its middle', () => {
    const { name, box } = typed('x', marked('fitting', 'K4', 'centre'), 2340, 2500, 'move');
    expect(name).toBe('Move socket K4');
    expect(box).toEqual({ x: 2427, y: 1157, width: 146, height: 86 });
  });

  it('moves a door by its right edge, its width stays', () => {
    const { box } = typed('x', marked('opening', 'D1', 'right'), 1146, 1200, 'move');
    expect(box).toEqual({ x: 274, y: 0, width: 926, height: 2040 });
  });

  it('stretches a zone to a new right edge, its left edge stays', () => {
    const { name, box } = typed('x', marked('zone', 'Z1', 'right'), 3420, 3500, 'stretch');
    expect(name).toBe('Make zone Z1 wider');
    expect(box).toEqual({ x: 1420, y: 700, width: 2080, height: 1750 });
  });

  it('stretches a zone down to a new lower edge, its upper edge stays', () => {
    const { name, box } = typed('y', marked('zone', 'Z1', 'bottom'), 700, 450, 'stretch');
    expect(name).toBe('Make zone Z1 higher');
    expect(box).toEqual({ x: 1420, y: 450, width: 2000, height: 2000 });
  });

  it('an edge does not pass its opposite edge', () => {
    const { fault } = typed('x', marked('zone', 'Z1', 'right'), 3420, 1000, 'stretch');
    expect(fault).toBe('The right edge of zone Z1 stays right of its left edge at 1420.');
  });

  it("moves the wall's edge, and only that edge", () => {
    const { after, name } = typed('x', marked('wall', 'A', 'right'), 8000, 8100, 'stretch');
    expect(name).toBe('Move an edge of wall A');
    expect(after?.outline).toEqual([
      [0, 0],
      [8100, 0],
      [8100, 2140],
      [6500, 2700],
      [0, 2700],
    ]);
  });

  it('says so when the thing is gone', () => {
    expect(typed('x', marked('fitting', 'K99', 'left'), 0, 1, 'move').fault).toContain('K99');
  });

  it('brings every edge on a wall to where it is typed', () => {
    const survey = surveyWall(smallWall);
    const { along, up } = runningMarks(survey, zoneAreas(survey));
    for (const [axis, marks] of [
      ['x', along],
      ['y', up],
    ] as const) {
      for (const { at, of } of marks) {
        for (const mark of of) {
          const result = changeForFigure(
            smallWall,
            axis,
            mark,
            at / 100,
            at / 100 + 7,
            choicesFor(mark, smallWall)[0]!,
          );
          if ('fault' in result) throw new Error(result.fault);
          const moved = surveyWall(findWall(result.change.change(smallJob), 'A')!);
          const after = runningMarks(moved, zoneAreas(moved))[axis === 'x' ? 'along' : 'up'];
          const there = after.find((entry) => entry.at === at + 700)?.of ?? [];
          expect(there).toContainEqual(expect.objectContaining({ kind: mark.kind, id: mark.id }));
        }
      }
    }
  });
});

describe('what a figure may do', () => {
  it('middles only move, edges of the wall only stretch, zones stretch first, things move first', () => {
    expect(choicesFor(marked('fitting', 'K4', 'centre'), smallWall)).toEqual(['move']);
    expect(choicesFor(marked('wall', 'A', 'right'), smallWall)).toEqual(['stretch']);
    expect(choicesFor(marked('zone', 'Z1', 'left'), smallWall)).toEqual(['stretch', 'move']);
    expect(choicesFor(marked('opening', 'D1', 'left'), smallWall)).toEqual(['move', 'stretch']);
  });
});
