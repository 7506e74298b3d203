import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Installs the packages of the lock file if any that package.json names is missing. Knows only Node itself,
 * so that it runs on a fresh clone.
 */
export function ensureInstalled() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Lodeplan needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  const { dependencies, devDependencies } = JSON.parse(readFileSync(`${root}/package.json`, 'utf8'));
  const names = Object.keys({ ...dependencies, ...devDependencies });
  const missing = names.filter((name) => !existsSync(`${root}/node_modules/${name}/package.json`));
  if (missing.length === 0) return;
  console.log(`Installing packages (${missing.length} of ${names.length} are missing) …`);
  const { status } = run('npm', ['ci', '--no-audit', '--no-fund']);
  if (status !== 0) {
    console.error('npm ci failed: see its message above. Without its packages Lodeplan cannot be built.');
    process.exit(status ?? 1);
  }
}

/** Runs a program of the path in the project's folder, showing what it prints. */
export function run(command, parameters, options = {}) {
  return spawnSync(command, parameters, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  });
}
