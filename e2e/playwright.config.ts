import { defineConfig } from '@playwright/test';

const port = Number(process.env.E2E_PORT ?? 4391);

export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  timeout: 120_000,
  expect: { timeout: 15_000 },
  retries: 0,
  workers: 1,
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_NAME ? [['list'], ['json']] : 'list',
  use: {
    baseURL: `http://localhost:${port}`,
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH,
      // Dialogs of the system for files cannot be answered by a test: there, files are downloaded and uploaded.
      args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-blink-features=FileSystemAccessLocal'],
    },
    screenshot: 'only-on-failure',
  },
  webServer: {
    command: 'node web/serve/start.mjs',
    cwd: new URL('..', import.meta.url).pathname,
    port,
    env: { PORT: String(port) },
    reuseExistingServer: false,
    timeout: 120_000,
  },
});
