import { describe, expect, test } from 'vitest';
import { strongerBounds } from '../../core/cutting/bounds/stronger-bounds';
import { kindsOf } from '../../core/cutting/kinds';
import { boundsOf, type Bounds } from '../../core/cutting/lower-bound';
import { benchmarkInstances, taskOf } from './benchmark-instances';

const instances = benchmarkInstances();
/** Records that dual feasible functions of the known families leave open. */
const proved = [
  '03_040_04 03_100_02 05_040_01 05_060_01 05_060_05 05_080_02 07_020_03 07_040_05',
  '08_020_01 08_060_01 08_100_02 08_100_04 10_060_02',
].flatMap((line) => line.split(' '));

describe.runIf(instances.length > 0)(
  'Berkey & Wang 1987, Martello & Vigo 1998: weights made for the panels',
  () => {
    test.each(proved)('prove the record of %s least possible', (id) => {
      const instance = instances.find((one) => one.id === id)!;
      const task = taskOf(instance, 'free');
      const kinds = kindsOf(task);
      expect(boundsOf(task, kinds).newSheets).toBe(instance.record.free - 1);
      const plan = { newSheets: instance.record.free, cost: instance.record.free };
      let last: Bounds = { newSheets: 0, cost: 0 };
      for (const bounds of strongerBounds(task, kinds, plan)) last = bounds;
      expect(last.newSheets).toBe(instance.record.free);
    });

    test('exceed no record of 20 pieces', () => {
      for (const instance of instances.filter(({ n }) => n <= 20)) {
        const task = taskOf(instance, 'free');
        for (const { newSheets } of strongerBounds(task, kindsOf(task)))
          expect(newSheets, instance.id).toBeLessThanOrEqual(instance.record.free);
      }
    });
  },
);
