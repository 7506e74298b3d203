import { describe, expect, test } from 'vitest';
import { strongerBounds } from '../../core/cutting/bounds/stronger-bounds';
import { kindsOf } from '../../core/cutting/kinds';
import { boundsOf, type Bounds } from '../../core/cutting/lower-bound';
import { benchmarkInstances, taskOf, type BenchmarkInstance } from './benchmark-instances';

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

/** Records of three stages that line weights leave open, and cuts of any depth cannot undercut either. */
const provedEdgeToEdge =
  '03_060_01 03_060_05 03_100_01 05_060_03 07_060_01 07_060_04 08_020_02 08_040_01 08_040_02 08_040_03'.split(
    ' ',
  );

describe.runIf(instances.length > 0)(
  'Berkey & Wang 1987, Martello & Vigo 1998: weights made for cuts edge to edge',
  () => {
    const boundOf = (instance: BenchmarkInstance, plan?: Bounds) => {
      const task = taskOf(instance, 'edge-to-edge');
      let last = 0;
      for (const { newSheets } of strongerBounds(task, kindsOf(task), plan)) last = newSheets;
      return last;
    };

    test.each(provedEdgeToEdge)('prove the record of %s least possible', (id) => {
      const instance = instances.find((one) => one.id === id)!;
      const record = instance.record.edgeToEdge;
      expect(boundOf(instance, { newSheets: record, cost: record })).toBe(record);
    });

    test('exceed no record of 20 pieces', () => {
      for (const instance of instances.filter(({ n }) => n <= 20))
        expect(boundOf(instance), instance.id).toBeLessThanOrEqual(instance.record.edgeToEdge);
    });
  },
);
