import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossEdges } from '../../core/panels/area-cross-edges';
import { axisStarts } from '../../core/panels/axis-starts';
import { patternOf, type Grid } from '../../core/panels/grid';
import { nearJointsAmong, type JointClearance } from '../../core/panels/joint-clearance';
import { nearJointsOf } from '../../core/panels/near-joints';
import { piecesOfGrid } from '../../core/panels/pieces-of-grid';
import { jointRuns, seamsOf } from '../../core/panels/seams';
import { toHundredth } from '../../core/units';
import type { ZoneArea } from '../../core/zones/zone-area';
import { areaOf, layouts, rectilinearPlans, type ZonePlan } from './random-zones';
import { layout, stockSheet } from './zones-by-hand';

const stock = stockSheet(500, 400);

interface Drawn {
  readonly lines: readonly (readonly [x: number, y: number, end: number, how: string])[];
  readonly corners: number;
  readonly boardJoints: number;
}

const mm = fc.integer({ min: -50, max: 1800 });
const clearances: fc.Arbitrary<Drawn> = fc.record({
  lines: fc.array(fc.tuple(mm, mm, mm, fc.constantFrom('upright', 'level', 'leaning')), { maxLength: 3 }),
  corners: fc.integer({ min: 1, max: 150 }),
  boardJoints: fc.integer({ min: 1, max: 150 }),
});

/** Corners of the openings without 20 mm of clearance round them, and board joints as drawn. */
function clearanceOf(plan: ZonePlan, { lines, corners, boardJoints }: Drawn): JointClearance {
  const at = (x: number, y: number) => ({ x: toHundredth(x), y: toHundredth(y) });
  const inset = 20;
  return {
    places: {
      corners: plan.openings.flatMap(([x, y, width, height]) =>
        [x + inset, x + width - inset].flatMap((cx) =>
          [y + inset, y + height - inset].map((cy) => ({ ...at(cx, cy), opening: 'O', kind: 'window' })),
        ),
      ),
      boardJoints: lines.map(([x, y, end, how], i) => {
        const lean = how === 'leaning' ? 11 : 0;
        const to = how === 'level' ? at(end, y + lean) : at(x + lean, end);
        return { id: `L${i}`, from: at(x, y), to };
      }),
    },
    corners: toHundredth(corners),
    boardJoints: toHundredth(boardJoints),
  };
}

function amongPanels(area: ZoneArea, grid: Grid, clearance: JointClearance): number {
  const panels = piecesOfGrid(area.area, grid).map(({ polygon }) => polygon);
  return nearJointsAmong(jointRuns(seamsOf(panels, grid.pitchX - grid.width)), clearance).length;
}

describe('joints that are too near to cracks', () => {
  it('are counted as they are found among the panels themselves', () => {
    let some = 0;
    fc.assert(
      fc.property(
        rectilinearPlans,
        layouts,
        clearances,
        fc.integer({ min: -60000, max: 60000 }),
        fc.integer({ min: -60000, max: 60000 }),
        (plan, changes, drawn, x, y) => {
          const area = areaOf(plan, changes);
          if (area.area.length === 0) return;
          const pattern = patternOf(layout(changes), stock);
          const clearance = clearanceOf(plan, drawn);
          const found = amongPanels(area, { ...pattern, start: { x, y } }, clearance);
          const counted = nearJointsOf(area, pattern, clearance).count({ x, y });
          some += Math.min(found, 1);
          const gap = pattern.pitchX - pattern.width;
          if (gap === 0) {
            expect(counted).toBe(found);
            return;
          }
          // Where a joint ends in the crossing of another, it may be told a joint's width longer.
          const shifted = (by: number): JointClearance => ({ ...clearance, corners: clearance.corners + by });
          expect(counted).toBeGreaterThanOrEqual(
            amongPanels(area, { ...pattern, start: { x, y } }, shifted(-gap)),
          );
        },
      ),
      { numRuns: 500 },
    );
    expect(some).toBeGreaterThan(100);
  });

  it('are the same number all the way between two events', () => {
    fc.assert(
      fc.property(
        rectilinearPlans,
        layouts,
        clearances,
        fc.integer({ min: 0, max: 40000 }),
        (plan, changes, drawn, other) => {
          const area = areaOf(plan, changes);
          if (area.area.length === 0) return;
          const pattern = patternOf({ ...layout(changes), stagger: 0 }, stock);
          const upright = { ...drawn, lines: drawn.lines.filter(([, , , how]) => how !== 'leaning') };
          const near = nearJointsOf(area, pattern, clearanceOf(plan, upright));
          const edges = crossEdges(area.area, area.box, pattern);
          const axes = [
            {
              starts: axisStarts(
                edges.x,
                { size: pattern.width, pitch: pattern.pitchX, least: 0 },
                [],
                near.events.x,
              ),
              at: (x: number) => ({ x, y: other }),
            },
            {
              starts: axisStarts(
                edges.y,
                { size: pattern.height, pitch: pattern.pitchY, least: 0 },
                [],
                near.events.y,
              ),
              at: (y: number) => ({ x: other, y }),
            },
          ];
          for (const { starts, at } of axes) {
            const events = starts.filter(({ isEvent }) => isEvent).map((start) => start.at);
            events.slice(1).forEach((event, i) => {
              if (event - events[i]! < 3) return;
              expect(near.count(at(events[i]! + 1))).toBe(near.count(at(event - 1)));
            });
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});
