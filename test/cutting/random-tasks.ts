import fc from 'fast-check';
import { rectangle, type Polygon } from '../../core/geometry/polygon';
import type { CutPanel, CuttingMethod, CuttingTask, StockTrim } from '../../core/cutting/plan';

/** Panels between 20 and 490 mm, some notched, holed, slanted or alike; stock, rack and kerf as they come. */
export function randomTasks(method: CuttingMethod): fc.Arbitrary<CuttingTask> {
  return fc
    .record({
      shapes: fc.array(fc.tuple(shape(), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 2 })), {
        minLength: 1,
        maxLength: 10,
      }),
      kerf: fc.constantFrom(0, 0, 100, 330),
      prices: fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 900 })),
      hasFace: fc.boolean(),
      rack: fc.array(fc.tuple(length(100, 600), length(100, 600), fc.constantFrom('S1', 'S2')), {
        maxLength: 3,
      }),
      leastOffcut: fc.constantFrom<[number, number]>([10000, 10000], [5000, 20000]),
      trim: fc.option(trim(), { nil: undefined }),
    })
    .map(({ shapes, kerf, prices, hasFace, rack, leastOffcut, trim }) => ({
      panels: shapes.flatMap(([outline, copies, choice], i) =>
        Array.from({ length: copies }, (_, copy): CutPanel => {
          const stock = [['S1'], ['S1', 'S2'], ['S2']][choice]!;
          return { mark: `P${i}-${copy}`, stock, outline };
        }),
      ),
      stock: [
        { id: 'S1', width: 50000, height: 50000, price: prices[0], hasFace, ...(trim && { trim }) },
        { id: 'S2', width: 60000, height: 100000, price: prices[1], hasFace },
      ],
      rack: rack.map(([width, height, stock], i) => ({ id: `R${i}`, stock, width, height })),
      method,
      kerf,
      leastOffcut,
    }));
}

/** Wider or narrower than the kerf, or none. */
function trim(): fc.Arbitrary<StockTrim> {
  const margin = fc.constantFrom(0, 50, 100, 1000, 1230);
  return fc.record({ left: margin, right: margin, bottom: margin, top: margin });
}

function length(from: number, to: number): fc.Arbitrary<number> {
  // Mostly on a coarse grid, so that panels meet exactly, sometimes on odd hundredths.
  return fc.oneof(
    { weight: 3, arbitrary: fc.integer({ min: from / 10, max: to / 10 }).map((n) => n * 1000) },
    { weight: 1, arbitrary: fc.integer({ min: from * 100, max: to * 100 }) },
  );
}

function shape(): fc.Arbitrary<Polygon> {
  const part = fc.integer({ min: 15, max: 85 }).map((percent) => percent / 100);
  return fc
    .tuple(length(20, 490), length(20, 490), part, part, fc.integer({ min: 0, max: 7 }))
    .map(([w, h, a, b, kind]) => {
      const x = Math.round(w * a);
      const y = Math.round(h * b);
      const ring = (...points: [number, number][]) =>
        points.map(([px, py]) => ({ x: px + 700, y: py - 900 }));
      if (kind === 0) return { outer: ring([0, 0], [w, 0], [w, y], [x, y], [x, h], [0, h]), holes: [] };
      if (kind === 1) {
        const z = Math.round(x / 2);
        return { outer: ring([0, 0], [w, 0], [w, h], [x, h], [x, y], [z, y], [z, h], [0, h]), holes: [] };
      }
      if (kind === 2) {
        const [l, s] = [Math.round(x / 3), Math.round(y / 3)];
        return {
          outer: ring([0, 0], [w, 0], [w, h], [0, h]),
          holes: [ring([l, s], [l, y], [x, y], [x, s])],
        };
      }
      if (kind === 3) return { outer: ring([0, 0], [w, 0], [w, y], [0, h]), holes: [] };
      return rectangle(-300, 200, w, h);
    });
}
