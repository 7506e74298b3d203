import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { generateInstances } from './class-generators';
import { readInstances, readRecords } from './instance-file';

const folder = mkdtempSync(join(tmpdir(), 'instances-'));
afterAll(() => rmSync(folder, { recursive: true }));

function written(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const instance = {
  id: 'a',
  class: 'own',
  n: 3,
  width: 30,
  height: 20,
  items: [
    [20, 30, 1],
    [4, 5, 2],
  ],
};

describe('a file of instances', () => {
  test('is read as it was written, with plates that are not square and classes that have names', () => {
    expect(readInstances(written('own.json', { instances: [instance] }))).toEqual([instance]);
    const { instances } = generateInstances(3, 1);
    expect(readInstances(written('fresh.json', generateInstances(3, 1)))).toEqual(instances);
  });

  test('has its records beside it, or none', () => {
    const path = written('known.json', { instances: [instance] });
    expect(readRecords(path).size).toBe(0);
    const record = { rotation: 2, rotation3Stage: 3, rotationBound: 1 };
    written('known-best-known.json', { bestKnown: { a: record } });
    expect(readRecords(path).get('a')).toEqual({ free: 2, edgeToEdge: 3, bound: 1 });
  });

  test.each([
    ['{', 'is not a file of JSON text'],
    [{ instances: [] }, 'instances: Invalid length'],
    [{ instances: [{ ...instance, n: 4 }] }, 'instance a says 4 pieces, its items are 3'],
    [
      { instances: [{ ...instance, n: 1, items: [[31, 2, 1]] }] },
      'has a piece 31 × 2, but its plate is 30 × 20',
    ],
    [{ instances: [{ ...instance, items: [[4.5, 5, 3]] }] }, 'instances.0.items.0.0: Invalid integer'],
  ])('is refused with one sentence: %j', (content, says) => {
    expect(() => readInstances(written('bad.json', content))).toThrow(says);
  });

  test('that does not exist is named', () => {
    expect(() => readInstances('/nowhere.json')).toThrow('There is no file /nowhere.json.');
  });
});
