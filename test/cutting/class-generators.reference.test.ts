import { describe, expect, test } from 'vitest';
import { benchmarkInstances } from './benchmark-instances';
import { classNumbers, generateInstances, sizes } from './class-generators';
import type { PackingInstance } from './instance-file';

/** Expected area of a piece by the definitions of the classes (from memory), as a share of the plate. */
const meanOfSides = (from: number, to: number) => (from + to) / 2;
const types = [
  meanOfSides(67, 100) * meanOfSides(1, 50),
  meanOfSides(1, 50) * meanOfSides(67, 100),
  meanOfSides(50, 100) ** 2,
  meanOfSides(1, 50) ** 2,
];
const expectedShare = (number: number) => {
  const plain = [10, 10, 35, 35, 100, 100][number - 1];
  const plate = [10, 30, 40, 100, 100, 300][number - 1] ?? 100;
  if (plain !== undefined) return meanOfSides(1, plain) ** 2 / plate ** 2;
  const weighted = types.reduce((sum, area, type) => sum + area * (type === number - 7 ? 0.7 : 0.1), 0);
  return weighted / plate ** 2;
};

function meanShare(instances: readonly PackingInstance[]): number {
  let area = 0;
  let pieces = 0;
  for (const { items, width, height } of instances) {
    for (const [w, h, quantity] of items) {
      area += (quantity * w * h) / (width * height);
      pieces += quantity;
    }
  }
  return area / pieces;
}

describe('Berkey & Wang 1987, classes 1–6; Martello & Vigo 1998, classes 7–10: fresh instances', () => {
  const { instances } = generateInstances(1);

  test('are as many as the published ones of every class and size, and other ones', () => {
    for (const number of classNumbers) {
      for (const n of sizes) {
        expect(instances.filter((one) => one.class === number && one.n === n)).toHaveLength(5);
      }
    }
    expect(generateInstances(1)).toEqual(generateInstances(1));
    expect(generateInstances(2).instances[0]!.items).not.toEqual(instances[0]!.items);
  });

  test.each(classNumbers)('class %i has pieces of the area that its definition gives', (number) => {
    const own = instances.filter((one) => one.class === number);
    expect(meanShare(own) / expectedShare(number)).toBeGreaterThan(0.92);
    expect(meanShare(own) / expectedShare(number)).toBeLessThan(1.08);
  });

  const published = benchmarkInstances();
  test.runIf(published.length > 0).each(classNumbers)(
    'class %i is like the published instances',
    (number) => {
      const of = (list: readonly PackingInstance[]) => list.filter((one) => one.class === number);
      const ratio = meanShare(of(instances)) / meanShare(of(published));
      expect(ratio).toBeGreaterThan(0.88);
      expect(ratio).toBeLessThan(1.14);
      const sides = (list: readonly PackingInstance[]) =>
        of(list).flatMap(({ items }) => items.flatMap(([w, h]) => [w, h]));
      expect(Math.max(...sides(instances))).toBeLessThanOrEqual(Math.max(...sides(published)) + 1);
      expect(Math.min(...sides(instances))).toBeLessThanOrEqual(Math.min(...sides(published)) + 1);
    },
  );
});
