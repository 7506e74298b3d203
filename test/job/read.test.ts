import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { deepestNesting, longestFile, mostFaultsListed, mostValues } from '../../core/job/limits';
import { readJob, readJobObject } from '../../core/job/read';

const least = { format: 'lodeplan-job', version: 1, name: 'Reading room' };

describe('what a job file may leave out', () => {
  it('takes the usual value', () => {
    expect(readJobObject(least)).toEqual({
      job: {
        ...least,
        client: '',
        reference: '',
        revision: '',
        date: '',
        currency: 'EUR',
        stock: [],
        rack: [],
        cutting: { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] },
        walls: [],
        revisions: [],
      },
      findings: [],
    });
  });

  it('what is given stays, also a zone without steel', () => {
    const zone = {
      id: 'Z1',
      shape: [
        [0, 0],
        [1000, 0],
        [0, 1000],
      ],
      buildUp: 'chalk',
    };
    const wall = {
      id: 'A',
      outline: [
        [0, 0],
        [3000, 0],
        [3000, 2500],
      ],
      zones: [zone],
    };
    const { job } = readJobObject({ ...least, walls: [wall] });
    expect(job!.walls[0]!.zones[0]).toEqual({ ...zone, name: '', holes: [] });
    expect(job!.walls[0]!.rim).toEqual({ floor: 0, ceiling: 0, left: 0, right: 0 });
  });
});

describe('prices', () => {
  it.each([
    ['EUR', 6.405, 6.41],
    ['JPY', 1250.5, 1251],
    ['BHD', 2.71849, 2.718],
  ])('are rounded to the minor unit of %s', (currency, price, rounded) => {
    const stock = [{ id: 'S1', width: 500, height: 500, price }];
    expect(readJobObject({ ...least, currency, stock }).job!.stock[0]!.price).toBe(rounded);
  });
});

describe('fields that the format does not know', () => {
  it('are kept at every level, even where they are called like parts of JavaScript', () => {
    const extra = { 'x-note': { kept: [1, { deep: null }] }, constructor: 'Miller & Daughter', prototype: 2 };
    const file = withExtras(JSON.parse(JSON.stringify(demoJob())), extra);
    const { job, findings } = readJobObject(file);
    expect(findings).toEqual([]);
    expect(job).toEqual(file);
    expect(job!.walls[1]!.openings[0]!.shape![3]).toMatchObject({ 'x-note': extra['x-note'] });
  });

  it('are not looked into', () => {
    expect(readJobObject({ ...least, walls2: [{ outline: 'crooked' }] }).findings).toEqual([]);
  });
});

describe('hostile files', () => {
  it('nested without end', () => {
    const depth = 200_000;
    const text = `{"format":"lodeplan-job","version":1,"name":"x","x":${'['.repeat(depth)}${']'.repeat(depth)}}`;
    const { job, findings } = readJob(text);
    expect(job).toBeNull();
    expect(findings[0]).toMatchObject({ level: 'error', code: 'nested-too-deep' });
    expect(findings[0]!.text).toContain(`more than ${deepestNesting} deep`);
  });

  it('that hold themselves', () => {
    const file: Record<string, unknown> = { ...least };
    file.self = file;
    expect(readJobObject(file).findings[0]!.code).toBe('nested-too-deep');
  });

  it('of too many values', () => {
    const file = { ...least, x: new Array(mostValues).fill(0) };
    expect(readJobObject(file).findings[0]!.text).toContain(`more than ${mostValues} values`);
  });

  it('of too many characters', () => {
    const { findings } = readJob(' '.repeat(longestFile + 1));
    expect(findings[0]!.text).toContain(`has ${longestFile + 1} characters; the limit is ${longestFile}`);
  });

  it('with a fault in every line: the first ones are told, the rest counted', () => {
    const stock = Array.from({ length: 80 }, (_, i) => ({ id: `S${i}`, width: -1, height: 500 }));
    const { findings } = readJobObject({ ...least, stock });
    expect(findings).toHaveLength(mostFaultsListed + 1);
    expect(findings.at(-1)!.text).toContain('30 more faults');
  });

  it('with a long text where a number should be: the message stays short', () => {
    const cutting = { kerf: 'x'.repeat(1_000_000) };
    expect(readJobObject({ ...least, cutting }).findings[0]!.text.length).toBeLessThan(200);
  });

  it('with a fault in each of very many values: the first is told', () => {
    const outline = Array.from({ length: 60_000 }, () => 'x');
    const { findings } = readJobObject({ ...least, walls: [{ id: 'A', outline }] });
    expect(findings).toHaveLength(1);
    expect(findings[0]!.text).toContain('walls[0].outline[0] (wall A)');
  });

  it.each([
    ['a function', () => 1],
    ['a date', new Date(0)],
    ['a big number', 1n],
  ])('%s is no JSON', (_, x) => {
    expect(readJobObject({ ...least, x }).findings[0]!.text).toContain('a job file cannot hold');
  });

  it('does not change Object.prototype', () => {
    readJob('{"format":"lodeplan-job","version":1,"name":"x","walls":[{"__proto__":{"polluted":true}}]}');
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('a shape of very many arcs is refused by its edges, not drawn', () => {
    const outline = Array.from({ length: 1_000 }, (_, i) => ({
      arcTo: [(i % 2) * 300_000, i],
      via: [150_000, i + 140_000],
    }));
    const { findings } = readJobObject({ ...least, walls: [{ id: 'A', outline }] });
    expect(findings[0]).toMatchObject({ code: 'too-many', wall: 'A' });
  });
});

describe('limits of all layouts together', () => {
  it('says the number', () => {
    const zone = (id: string) => ({
      id,
      shape: [
        [0, 0],
        [5000, 0],
        [5000, 3000],
        [0, 3000],
      ],
      buildUp: 'steel-panel',
      layout: { stock: 'S1' },
    });
    const outline = [
      [0, 0],
      [5000, 0],
      [5000, 3000],
      [0, 3000],
    ];
    const walls = ['A', 'B'].map((id) => ({ id, outline, zones: [zone('Z1')] }));
    const { findings } = readJobObject({ ...least, stock: [{ id: 'S1', width: 10, height: 10 }], walls });
    expect(findings.map(({ text }) => text)).toEqual([
      'walls would make 300000 panels together; the limit is 200000, so split the job.',
    ]);
  });
});

function withExtras(value: unknown, extra: object): unknown {
  if (Array.isArray(value)) return value.map((entry) => withExtras(entry, extra));
  if (typeof value !== 'object' || value === null) return value;
  const inner = Object.entries(value).map(([key, entry]) => [key, withExtras(entry, extra)]);
  return { ...Object.fromEntries(inner), ...extra };
}
