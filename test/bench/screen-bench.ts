import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';
import { writeJob } from '../../core/job/write';
import { findBrowser } from '../../e2e/find-browser.mjs';
import { elevation, goTo, onScreen, waitForPlan } from '../../e2e/wall-points';
import { singleWallJob } from './generated-jobs';
import { row } from './print';

const root = new URL('../..', import.meta.url).pathname;

/** Figures of the screen, in the built planner and a real browser. */
export async function screenBench(): Promise<void> {
  const configFile = `${root}/web/vite.config.ts`;
  await build({ configFile, logLevel: 'error' });
  printFirstLoad();
  const server = await preview({ configFile, preview: { port: 4480, strictPort: false, host: 'localhost' } });
  const browser = await chromium.launch({
    executablePath: await findBrowser(),
    args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-blink-features=FileSystemAccessLocal'],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    // The runner marks functions with their names; in the page there is nobody to ask for them.
    await page.addInitScript('globalThis.__name = (value) => value');
    await page.goto(server.resolvedUrls!.local[0]!);
    await waitForPlan(page);
    await timeChanges(page);
    await timeDrag(page);
  } finally {
    await browser.close();
    server.httpServer.close();
  }
}

/** Scripts that the page asks for before anything is clicked; pdf-lib and fonts load on demand. */
function printFirstLoad(): void {
  const html = readFileSync(`${root}/dist/index.html`, 'utf8');
  const first = [...html.matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file!);
  const worker = readdirSync(`${root}/dist/assets`).filter((name) => /worker.*\.js$/.test(name));
  const size = (files: readonly string[]) =>
    files.reduce((sum, file) => sum + gzipSync(readFileSync(`${root}/dist/${file}`)).length, 0) / 1024;
  console.log(`first-load JS, gzipped: page ${size(first).toFixed(0)} kB (${first.length} files)`);
  for (const name of worker) console.log(`${name}, gzipped: ${size([`assets/${name}`]).toFixed(0)} kB`);
}

/** From a typed change of the demo to the first result that belongs to it on the screen. */
async function timeChanges(page: Page): Promise<void> {
  await goTo(page, 'Survey');
  const times = await page.evaluate(async () => {
    const bench = document.querySelector('[data-plan]')!;
    const field = document.querySelector<HTMLInputElement>(
      'input[aria-label*="K4" i][aria-label*="from left" i]',
    )!;
    const measured: number[] = [];
    const nextFrame = () => new Promise((resume) => requestAnimationFrame(resume));
    for (let i = 0; i < 60; i++) {
      field.focus();
      field.value = String(2267 + (i % 2 === 0 ? 7 + i : 0));
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await nextFrame();
      const start = performance.now();
      field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
      do await nextFrame();
      while (bench.getAttribute('data-plan') === 'older');
      measured.push(performance.now() - start);
      while (bench.getAttribute('data-plan') !== 'final') await nextFrame();
    }
    return measured.sort((a, b) => a - b);
  });
  row('demo: change to first result on screen', { times });
}

/** A socket dragged over a wall with 500 panels: scripting and rendering of the main thread, per frame. */
async function timeDrag(page: Page): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  const text = writeJob(singleWallJob(500, 20));
  await chooser.setFiles({ name: 'wall.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: /Job details: Generated school/ }).waitFor();
  await goTo(page, 'Panels');
  await waitForPlan(page);
  await goTo(page, 'Survey');
  await elevation(page).waitFor();

  const left = page.getByRole('textbox', { name: /socket K5.*from left/i });
  const floor = page.getByRole('textbox', { name: /socket K5.*from floor/i });
  const from = await onScreen(
    page,
    Number(await left.inputValue()) + 73,
    Number(await floor.inputValue()) + 43,
  );
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const read = async () => {
    const { metrics } = await cdp.send('Performance.getMetrics');
    return (name: string) => metrics.find((metric) => metric.name === name)!.value * 1000;
  };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 12, from.y + 4);
  const [scripting, layout]: number[][] = [[], []];
  for (let i = 0; i < 120; i++) {
    const before = await read();
    const angle = (i / 120) * 4 * Math.PI;
    await page.mouse.move(from.x + 120 * Math.sin(angle), from.y + 50 * Math.cos(angle));
    await page.evaluate(() => new Promise((resume) => requestAnimationFrame(resume)));
    const after = await read();
    scripting!.push(after('ScriptDuration') - before('ScriptDuration'));
    layout!.push(
      after('LayoutDuration') +
        after('RecalcStyleDuration') -
        before('LayoutDuration') -
        before('RecalcStyleDuration'),
    );
  }
  await page.mouse.up();
  const ascending = (times: number[]) => ({ times: times.sort((a, b) => a - b) });
  row('drag of a socket, 500 panels: scripting per frame', ascending(scripting!));
  row('drag of a socket, 500 panels: style and layout', ascending(layout!));
}
