import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../core/job/read';

interface Refused {
  readonly file: string;
  readonly code: string;
  readonly path: string;
  readonly phrase: string;
}

const folder = new URL('../fixtures/job/', import.meta.url);
const cases = JSON.parse(readFileSync(new URL('refused.json', folder), 'utf8')) as Refused[];

describe('files that are refused, each with one sentence that says where and why', () => {
  it.each(cases)('$file: $code at "$path"', ({ file, code, path, phrase }) => {
    const { job, findings } = readJob(readFileSync(new URL(`refused/${file}`, folder), 'utf8'));
    expect(job).toBeNull();
    expect(findings).toHaveLength(1);
    const [finding] = findings;
    expect(finding).toMatchObject({ level: 'error', code });
    if (path !== '') expect(finding!.text.split(' ')[0]).toBe(path);
    expect(finding!.text).toContain(phrase);
    expect(finding!.text).toMatch(/\.$/);
  });

  it('no file lies there without a case', () => {
    expect(readdirSync(new URL('refused/', folder)).sort()).toEqual(cases.map(({ file }) => file).sort());
  });
});
