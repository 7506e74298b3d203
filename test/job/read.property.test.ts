import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { readJob, readJobObject } from '../../core/job/read';
import { writeJob } from '../../core/job/write';
import { jobFile } from './random-job';

describe('sound jobs', () => {
  it('are read, and nothing in them is lost or changed', () => {
    fc.assert(
      fc.property(jobFile, (file) => {
        const { job, findings } = readJobObject(file);
        expect(findings).toEqual([]);
        expect(job).toMatchObject(file);
      }),
      { numRuns: 150, seed: 2 },
    );
  });

  it('are the same after they were written and read again', () => {
    fc.assert(
      fc.property(jobFile, (file) => {
        const { job } = readJobObject(file);
        const text = writeJob(job!);
        expect(readJob(text).job).toEqual(job);
        expect(writeJob(readJob(text).job!)).toBe(text);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(job)));
      }),
      { numRuns: 150, seed: 3 },
    );
  });
});

describe('damaged jobs', () => {
  const demo = JSON.parse(JSON.stringify(demoJob())) as unknown;
  const places = placesIn(demo);
  const damage = fc.record({
    place: fc.constantFrom(...places),
    value: fc.oneof(
      fc.constant(undefined),
      fc.constantFrom<unknown>(null, '', 'S1', -1, 0, 1e9, NaN, Infinity, true, [], {}, [[0, 0]], [1, 2, 3]),
      fc.double(),
      fc.jsonValue({ maxDepth: 1 }),
    ),
  });

  it('never stop the program, and each refusal names a place that is there', () => {
    const seen = { refused: 0, taken: 0 };
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 3 }), (damages) => {
        const file = structuredClone(demo);
        for (const { place, value } of damages) put(file, place, value);
        const { job, findings } = readJobObject(file);
        seen[job ? 'taken' : 'refused']++;
        expect(findings.length === 0).toBe(job !== null);
        for (const { level, code, text } of findings) {
          expect(level).toBe('error');
          expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
          expect(text).toMatch(/\.$/);
          expect(text).not.toMatch(/undefined|\[object/);
          expect(isThere(file, text), text).toBe(true);
        }
      }),
      { numRuns: 1500, seed: 1 },
    );
    expect(seen.refused).toBeGreaterThan(500);
    expect(seen.taken).toBeGreaterThan(40);
  });
});

type Path = (string | number)[];

function placesIn(value: unknown): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) => {
    const step = Array.isArray(value) ? Number(key) : key;
    return [[step], ...placesIn(entry).map((path): Path => [step, ...path])];
  });
}

function put(file: unknown, place: Path, value: unknown): void {
  const holder = place.slice(0, -1).reduce<unknown>(step, file) as Record<string, unknown> | undefined;
  if (typeof holder !== 'object' || holder === null) return;
  if (value === undefined) delete holder[place.at(-1)!];
  else holder[place.at(-1)!] = value;
}

/** Whether the path that a sentence begins with leads to a value, or to where a missing one should be. */
function isThere(file: unknown, text: string): boolean {
  const path = text.split(' ', 1)[0]!;
  const steps = [...path.matchAll(/\[(\d+)\]|\.?([A-Za-z]+)/g)].map(([, index, name]) =>
    index === undefined ? name! : Number(index),
  );
  const written = steps.map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`)).join('');
  if (written.replace(/^\./, '') !== path || steps.length === 0) return false;
  const holder = steps.slice(0, -1).reduce<unknown>(step, file);
  if (typeof holder !== 'object' || holder === null) return false;
  return Object.hasOwn(holder, steps.at(-1)!) || text.includes('is missing;');
}

function step(value: unknown, key: string | number): unknown {
  return typeof value === 'object' && value !== null
    ? (value as Record<string | number, unknown>)[key]
    : undefined;
}
