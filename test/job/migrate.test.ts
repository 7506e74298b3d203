import { describe, expect, it } from 'vitest';
import { currentVersion, jobMigrations, migrateJob, type Migration } from '../../core/job/migrate';

/** Invented versions: in 2 the job's name was called title, in 3 walls came to be listed. */
const migrations: readonly Migration[] = [
  { from: 2, apply: (file) => ({ ...file, walls: [] }) },
  { from: 1, apply: ({ title, ...file }) => ({ ...file, name: title }) },
];

describe('versions of the job file', () => {
  it('the current one is not touched', () => {
    const file = { format: 'lodeplan-job', version: currentVersion };
    expect(migrateJob(file)).toEqual({ file });
    expect((migrateJob(file) as { file: object }).file).toBe(file);
  });

  it('an older one takes every step to the current one, in order', () => {
    const file = { format: 'lodeplan-job', version: 1, title: 'Reading room', 'x-own': 1 };
    expect(migrateJob(file, migrations, 3)).toEqual({
      file: { format: 'lodeplan-job', version: 3, name: 'Reading room', walls: [], 'x-own': 1 },
    });
    expect(file).toEqual({ format: 'lodeplan-job', version: 1, title: 'Reading room', 'x-own': 1 });
  });

  it('one from the middle takes the rest', () => {
    const file = { format: 'lodeplan-job', version: 2, name: 'x' };
    expect(migrateJob(file, migrations, 3)).toEqual({ file: { ...file, version: 3, walls: [] } });
  });

  it.each([
    [4, 'newer-version', 'version is 4, but this program understands versions 1 to 3'],
    [0, 'no-version', 'version is 0; this program understands versions 1 to 3'],
    [1.5, 'no-version', 'version is 1.5'],
    [null, 'no-version', 'version is null'],
    [undefined, 'no-version', 'version is missing'],
  ])('%s is refused: %s', (version, code, phrase) => {
    const { finding } = migrateJob({ format: 'lodeplan-job', version }, migrations, 3) as {
      finding: { code: string; text: string };
    };
    expect(finding.code).toBe(code);
    expect(finding.text).toContain(phrase);
  });

  it('one that has lost its step is refused', () => {
    const { finding } = migrateJob({ format: 'lodeplan-job', version: 1 }, migrations.slice(0, 1), 3) as {
      finding: { text: string };
    };
    expect(finding.text).toBe('version is 1, which this program can no longer read.');
  });

  it('every version before the current one has its step', () => {
    const steps = jobMigrations.map(({ from }) => from).sort((a, b) => a - b);
    expect(steps).toEqual(Array.from({ length: currentVersion - 1 }, (_, i) => i + 1));
  });
});
