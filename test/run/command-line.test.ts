import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chooseAlternative, copyAlternative } from '../../core/job/alternatives';
import { fitObject } from '../../core/job/changes';
import { emptyJob, newWall, newZone } from '../../core/job/defaults';
import { writeJob } from '../../core/job/write';

const root = join(import.meta.dirname, '../..');

function job(file: string, out: string, ...more: string[]) {
  const script = join(root, 'core/run/command-line.ts');
  return spawnSync(join(root, 'node_modules/.bin/tsx'), [script, file, '--out', out, ...more], {
    cwd: root,
    encoding: 'utf8',
  });
}

describe('npm run job', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lodeplan-'));

  it(
    'writes results, every PDF and every CSV of the demo, the same bytes each time',
    { timeout: 240_000 },
    () => {
      const [first, second] = ['first', 'second'].map((name) => join(folder, name));
      for (const out of [first!, second!]) expect(job('core/job/demo-job.json', out).status).toBe(0);
      const names = readdirSync(first!);
      expect(names).toContain('results.json');
      expect(names.filter((name) => name.startsWith('setting-out')).length).toBe(3);
      for (const name of [
        'cut-sheets.pdf',
        'cut-list.pdf',
        'client-view.pdf',
        'cut-list.csv',
        'panels.csv',
        'offcuts.csv',
      ]) {
        expect(names).toContain(name);
      }
      for (const name of names) {
        expect(readFileSync(join(first!, name)).equals(readFileSync(join(second!, name))), name).toBe(true);
      }
      expect(JSON.parse(readFileSync(join(first!, 'results.json'), 'utf8')).format).toBe('lodeplan-results');
    },
  );

  it('prints one line a fault for a bad file, writes nothing and exits with 1', () => {
    const bad = JSON.parse(readFileSync(join(root, 'core/job/demo-job.json'), 'utf8'));
    bad.walls[0].openings[0].width = -5;
    bad.walls[1].outline = [
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ];
    const file = join(folder, 'bad.json');
    writeFileSync(file, JSON.stringify(bad));
    const { status, stderr } = job(file, join(folder, 'none'));
    expect(status).toBe(1);
    const lines = stderr.trim().split('\n');
    expect(lines.some((line) => line.includes('walls[0].openings[0].width') && line.includes('-5'))).toBe(
      true,
    );
    expect(existsSync(join(folder, 'none'))).toBe(false);
  });

  it('works out another alternative, or each into a folder of its own', { timeout: 240_000 }, () => {
    const empty = emptyJob('Studio');
    const wall = newWall('A', '', 4200, 2600);
    const zone = newZone(empty, wall, { x: 1000, y: 900, width: 2000, height: 1000 });
    const one = copyAlternative({ ...empty, walls: [{ ...wall, zones: [zone] }] }, 'V1', 'Wider');
    const two = chooseAlternative(
      fitObject(
        chooseAlternative(one, 'V2'),
        'A',
        { kind: 'zone', id: 'Z1' },
        {
          x: 1000,
          y: 900,
          width: 2500,
          height: 1000,
        },
      ),
      'V1',
    );
    const file = join(folder, 'two.json');
    writeFileSync(file, writeJob(two));
    const results = (...path: string[]) => readFileSync(join(folder, ...path, 'results.json'), 'utf8');

    const steps = ['--steps', '10'];
    expect(job(file, join(folder, 'wider'), '--alternative', 'Wider', ...steps).status).toBe(0);
    expect(job(file, join(folder, 'each'), '--all-alternatives', ...steps).status).toBe(0);
    expect(readdirSync(join(folder, 'each')).sort()).toEqual([
      'alternative-1',
      'alternative-2',
      'client-alternatives.pdf',
    ]);
    expect(results('each', 'alternative-2')).toBe(results('wider'));
    expect(results('each', 'alternative-1')).not.toBe(results('wider'));

    const { status, stderr } = job(file, join(folder, 'gone'), '--alternative', 'Lower');
    expect(status).toBe(1);
    expect(stderr.trim()).toBe(
      '--alternative Lower: the job has none of this name; it has Alternative 1 (V1), Wider (V2).',
    );
    expect(existsSync(join(folder, 'gone'))).toBe(false);
  });

  it('says how it is called', () => {
    const { status, stderr } = job('', join(folder, 'none'));
    expect(status).toBe(1);
    expect(stderr).toContain('Usage: npm run job');
  });
});
