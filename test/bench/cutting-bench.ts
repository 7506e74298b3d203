import { rectangle } from '../../core/geometry/polygon';
import { countStockSheets } from '../../core/cutting/count-stock-sheets';
import type { CuttingMethod, CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { seededRandom } from '../../core/cutting/random';
import { searchCutting } from '../../core/cutting/search';
import { benchmarkInstances, taskOf } from '../cutting/benchmark-instances';

const STEPS = 50;

/** Prints totals and times of the cutting solver; the totals are the checksum. */
export async function cuttingBench(): Promise<void> {
  const instances = benchmarkInstances();
  for (const method of ['free', 'edge-to-edge'] as const) {
    if (instances.length > 0) {
      const first: number[] = [];
      const later: number[] = [];
      const counting: number[] = [];
      const total = { first: 0, later: 0, bound: 0, count: 0, record: 0 };
      for (const instance of instances) {
        const task = taskOf(instance, method);
        const search = searchCutting(task, 1);
        const start = performance.now();
        let plan = search.next().value as DeliveryPlan;
        first.push(performance.now() - start);
        total.first += plan.newSheets;
        total.bound += plan.lowerBound;
        for (let step = 1; step < STEPS; step++) {
          const next = search.next();
          if (next.done) break;
          plan = next.value;
        }
        later.push(performance.now() - start);
        total.later += plan.newSheets;
        total.record += method === 'free' ? instance.record.free : instance.record.edgeToEdge;
        const cut = instance.items.flatMap(([width, height, quantity]) =>
          Array.from({ length: quantity }, () => ({ width, height, area: width * height })),
        );
        const startCount = performance.now();
        total.count += countStockSheets(cut, instance, method, 0);
        counting.push(performance.now() - startCount);
      }
      console.log(
        `cutting ${method}, ${instances.length} classic instances: first plan ${total.first} ` +
          `(median ${median(first)} ms, most ${Math.max(...first).toFixed(1)}), after ${STEPS} steps ` +
          `${total.later} (median ${median(later)} ms), bound ${total.bound}, record ${total.record}, ` +
          `quick count ${total.count} (median ${median(counting)} ms)`,
      );
    }
    const start = performance.now();
    const plan = searchCutting(largeTask(method), 1).next().value as DeliveryPlan;
    const time = performance.now() - start;
    console.log(
      `cutting ${method}, 3,000 panels: first plan ${plan.newSheets} sheets, bound ${plan.lowerBound}, ` +
        `${time.toFixed(0)} ms`,
    );
  }
}

function median(times: readonly number[]): string {
  return [...times].sort((a, b) => a - b)[times.length >> 1]!.toFixed(2);
}

/** As from 120 walls: many whole sheets, closing strips in repeated widths, some odd sizes, a kerf of 2 mm. */
function largeTask(method: CuttingMethod): CuttingTask {
  const random = seededRandom(7);
  const mm = (from: number, to: number, grid: number) =>
    100 * grid * Math.round((from + random() * (to - from)) / grid);
  const panels = Array.from({ length: 3000 }, (_, i) => {
    const kind = random();
    const width = kind < 0.35 ? 50000 : mm(60, 490, kind < 0.8 ? 35 : 1);
    const height = kind < 0.6 ? 50000 : mm(60, 490, kind < 0.8 ? 35 : 1);
    return { mark: `P${i}`, stock: ['S'], outline: rectangle(0, 0, width, height) };
  });
  return {
    panels,
    stock: [{ id: 'S', width: 50000, height: 50000, price: 640, hasFace: false }],
    rack: [],
    method,
    kerf: 200,
    leastOffcut: [10000, 10000],
  };
}
