import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOf, rectangle, type Polygon } from '../../core/geometry/polygon';
import type { CuttingMethod, CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

const steps = 6;

function planOf(task: CuttingTask): DeliveryPlan {
  let last: DeliveryPlan | undefined;
  let left = steps;
  for (const plan of searchCutting(task, 1)) {
    last = plan;
    if (--left === 0) break;
  }
  return last!;
}

/** The same panels as if they were their bounding rectangles. */
function boxed(task: CuttingTask): CuttingTask {
  const panels = task.panels.map((panel) => {
    const { left, bottom, right, top } = boxOf(panel.outline.outer);
    return { ...panel, outline: rectangle(0, 0, right - left, top - bottom) };
  });
  return { ...task, panels };
}

function sloping(): fc.Arbitrary<Polygon> {
  return fc
    .record({
      width: fc.constantFrom(30000, 50000),
      steepness: fc.constantFrom(0.25, 0.5),
      foot: fc.integer({ min: 0, max: 24 }),
      way: fc.boolean(),
    })
    .map(({ width, steepness, foot, way }) => {
      const [low, high] = [foot * 1000, foot * 1000 + width * steepness];
      const [left, right] = way ? [low, high] : [high, low];
      const corners = [
        [0, 0],
        [width, 0],
        ...(right > 0 ? [[width, right]] : []),
        ...(left > 0 ? [[0, left]] : []),
      ] as [number, number][];
      return { outer: corners.map(([x, y]) => ({ x, y })), holes: [] };
    });
}

function notched(): fc.Arbitrary<Polygon> {
  const side = fc.integer({ min: 8, max: 49 }).map((n) => n * 1000);
  const part = fc.integer({ min: 2, max: 8 });
  return fc.tuple(side, side, part, part).map(([w, h, a, b]) => {
    const [x, y] = [(w * a) / 10, (h * b) / 10];
    const corners = [
      [0, 0],
      [w, 0],
      [w, y],
      [x, y],
      [x, h],
      [0, h],
    ] as [number, number][];
    return { outer: corners.map(([px, py]) => ({ x: px, y: py })), holes: [] };
  });
}

function tasks(method: CuttingMethod): fc.Arbitrary<CuttingTask> {
  const side = fc.integer({ min: 5, max: 50 }).map((n) => n * 1000);
  const plain = fc.tuple(side, side).map(([w, h]) => rectangle(0, 0, w, h));
  return fc
    .record({
      shapes: fc.array(fc.oneof(sloping(), sloping(), notched(), plain), { minLength: 2, maxLength: 12 }),
      kerf: fc.constantFrom(0, 300),
      hasFace: fc.boolean(),
    })
    .map(({ shapes, kerf, hasFace }) => ({
      panels: shapes.map((outline, i) => ({ mark: `P${i}`, stock: ['S'], outline })),
      stock: [{ id: 'S', width: 50000, height: 50000, price: 640, hasFace }],
      rack: [],
      method,
      kerf,
      leastOffcut: [10000, 10000],
    }));
}

describe.each(['edge-to-edge', 'free'] as const)('panels by their real outlines, cut %s,', (method) => {
  test('never take more stock sheets than by their bounding rectangles, and lie soundly', () => {
    let saved = 0;
    fc.assert(
      fc.property(tasks(method), (task) => {
        const [real, box] = [planOf(task), planOf(boxed(task))];
        expect(faultsOf(task, real)).toEqual([]);
        expect(real.newSheets).toBeLessThanOrEqual(box.newSheets);
        saved += box.newSheets - real.newSheets;
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(saved).toBeGreaterThan(0);
  });
});
