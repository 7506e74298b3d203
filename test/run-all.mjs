/*
 * `npm test`: installs what is missing, then type check, lint, unit, reference, property and browser tests.
 * Everything runs even if an earlier part fails; the last line counts the tests.
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureInstalled, root, run } from '../web/serve/ensure-installed.mjs';

ensureInstalled();
const { findBrowser } = await import('../e2e/find-browser.mjs');

const out = `${root}/out`;
const unitReport = `${out}/unit.json`;
const browserReport = `${out}/browser.json`;
mkdirSync(out, { recursive: true });
for (const report of [unitReport, browserReport]) rmSync(report, { force: true });

const failed = [];
part('Type check', 'npx', ['tsc', '--noEmit']);
part('Type check of components', 'npx', [
  'svelte-check',
  '--tsconfig',
  './tsconfig.json',
  '--fail-on-warnings',
]);
part('Lint', 'npx', ['eslint', '.']);
part('Format', 'npx', ['prettier', '--check', '.']);
part('Unit, reference and property tests', 'npx', [
  ...['vitest', 'run', '--config', 'test/vitest.config.ts'],
  ...['--reporter=default', '--reporter=json', `--outputFile.json=${unitReport}`],
]);
const browser = await findBrowser();
part('Browser tests', 'npx', ['playwright', 'test', '--config', 'e2e/playwright.config.ts'], {
  CHROMIUM_PATH: browser,
  PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport,
});

const unit = read(unitReport);
const browsers = read(browserReport)?.stats;
const passed = (unit?.numPassedTests ?? 0) + (browsers?.expected ?? 0);
const broken = (unit?.numFailedTests ?? 0) + (browsers?.unexpected ?? 0) + (browsers?.flaky ?? 0);
const skipped = (unit?.numPendingTests ?? 0) + (browsers?.skipped ?? 0);
console.log(failed.length === 0 ? '\nAll parts passed.' : `\nFailed: ${failed.join('; ')}.`);
console.log(`${passed} passed, ${Math.max(broken, failed.length)} failed, ${skipped} skipped`);
process.exit(failed.length === 0 ? 0 : 1);

function part(title, command, parameters, variables = {}) {
  console.log(`\n── ${title}`);
  const { status } = run(command, parameters, { env: { ...process.env, ...variables } });
  if (status !== 0) failed.push(title);
}

function read(report) {
  try {
    return JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return undefined;
  }
}
