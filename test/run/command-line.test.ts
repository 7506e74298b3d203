import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');

function job(file: string, out: string) {
  const script = join(root, 'core/run/command-line.ts');
  return spawnSync(join(root, 'node_modules/.bin/tsx'), [script, file, '--out', out], {
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

  it('says how it is called', () => {
    const { status, stderr } = job('', join(folder, 'none'));
    expect(status).toBe(1);
    expect(stderr).toContain('Usage: npm run job');
  });
});
