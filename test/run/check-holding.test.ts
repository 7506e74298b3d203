import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { comparePulls, readPullCases } from '../../core/run/holding-cases';

const root = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'lodeplan-holding-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Pulls that the note prints, one of them made 10 % larger. */
const sample = {
  magnetGrades: { N42: { Br: 1.3, mur: 1.05 } },
  cases: [
    { grade: 'N42', diameter_mm: 20, height_mm: 5, sheet_mm: 0.5, gap_mm: 1, force_N: 15.336 },
    { grade: 'N42', diameter_mm: 30, height_mm: 10, sheet_mm: 0.7, gap_mm: 2, force_N: 35.042 * 1.1 },
  ],
};

function run(...args: string[]) {
  const script = join(root, 'core/run/check-holding.ts');
  return spawnSync(join(root, 'node_modules/.bin/tsx'), [script, ...args], { encoding: 'utf8', cwd: folder });
}

describe('npm run check:holding', () => {
  it('ends with the number of cases and the deviations, of a path relative to where it is called', () => {
    writeFileSync(join(folder, 'cases.json'), JSON.stringify(sample));
    const { stdout, status } = run('--cases', './cases.json');
    expect(status).toBe(0);
    expect(stdout.trim().split('\n').at(-1)).toBe('cases=2 max=9.1% rms=6.4%');
  });

  it('with --solver holds the finite elements against them', () => {
    writeFileSync(join(folder, 'one.json'), JSON.stringify({ ...sample, cases: sample.cases.slice(0, 1) }));
    const { stdout, status } = run('--cases', 'one.json', '--solver');
    expect(status).toBe(0);
    expect(stdout.trim().split('\n').at(-1)).toMatch(/^cases=1 max=\d\.\d% rms=\d\.\d%$/);
    expect(stdout).not.toContain('max 0.000%');
  });

  it('says in one line what is wrong, and exits with 1', () => {
    const { stderr, stdout, status } = run('--cases', join(folder, 'nowhere.json'));
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(stderr).toContain('cannot be read');
  });
});

describe('a file of reference cases', () => {
  function faultOf(change: (file: typeof sample & Record<string, unknown>) => void): string {
    const file = structuredClone(sample);
    change(file);
    const read = readPullCases(JSON.stringify(file));
    return 'fault' in read ? read.fault : 'none';
  }

  it('that is no JSON is refused with the line', () => {
    expect(readPullCases('{\n"cases": [,]}')).toEqual({ fault: expect.stringContaining('line 2') });
  });

  it.each([
    [(f: typeof sample) => void (f.cases[1]!.gap_mm = -1), 'cases.1.gap_mm'],
    [(f: typeof sample) => void (f.cases[0]!.force_N = 0), 'cases.0.force_N'],
    [(f: typeof sample) => void (f.cases[0]!.grade = 'N99'), '"N99"'],
    [(f: typeof sample) => void (f.cases[0]!.grade = 'toString'), '"toString"'],
    [(f: typeof sample) => void (f.cases = []), 'cases'],
    [(f: typeof sample) => void delete (f as Partial<typeof sample>).magnetGrades, 'magnetGrades'],
  ])('is refused with the place of the fault (%#)', (change, words) => {
    expect(faultOf(change)).toContain(words);
  });

  it('compares cases outside the limits too, and counts them', () => {
    const read = readPullCases(
      JSON.stringify({ ...sample, cases: [...sample.cases, { ...sample.cases[0], gap_mm: 0 }] }),
    );
    if ('fault' in read) throw new Error(read.fault);
    expect(comparePulls(read.cases)).toMatchObject({ cases: 3, outside: 1 });
  });
});
