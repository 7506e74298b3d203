import { describe, expect, test } from 'vitest';
import { kindsOf } from '../../core/cutting/kinds';
import { boundsOf } from '../../core/cutting/lower-bound';
import { searchCutting } from '../../core/cutting/search';
import { benchmarkInstances, taskOf } from './benchmark-instances';
import { faultsOf } from './verify-plan';

const instances = benchmarkInstances();
const name = 'Berkey & Wang 1987, classes 1–6; Martello & Vigo 1998, classes 7–10';

describe.runIf(instances.length > 0)(name, () => {
  test('no bound exceeds the best number of plates on record, and all together reach the published sum', () => {
    let sum = 0;
    let published = 0;
    for (const instance of instances) {
      const task = taskOf(instance, 'free');
      const { newSheets } = boundsOf(task, kindsOf(task));
      expect(newSheets, instance.id).toBeLessThanOrEqual(instance.record.free);
      sum += newSheets;
      published += instance.bound;
    }
    // The two choose their parameters differently, so that single instances may differ by one.
    expect(sum).toBeGreaterThanOrEqual(published - 3);
  });

  const small = instances.filter(({ n }) => n <= 40);
  test.each(['free', 'edge-to-edge'] as const)(
    'first plans, cut %s, of up to 40 pieces are sound and within 3 % of the records',
    (method) => {
      let total = 0;
      let record = 0;
      for (const instance of small) {
        const task = taskOf(instance, method);
        const plan = searchCutting(task, 1).next().value!;
        expect(faultsOf(task, plan), instance.id).toEqual([]);
        total += plan.newSheets;
        record += method === 'free' ? instance.record.free : instance.record.edgeToEdge;
      }
      expect(total / record).toBeLessThan(1.03);
    },
  );
});
