/* `npm run bench:screen`: what dragging costs on a full wall, by the browser's own trace. */
import { chromium, type CDPSession, type Page } from '@playwright/test';
import { createHash } from 'node:crypto';
import { build, preview } from 'vite';
import type { Job } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';
import { findBrowser } from '../../e2e/find-browser.mjs';
import { drawPhoto, rectangle } from '../../e2e/photo-of-wall';
import { goTo, onScreen, waitForPlan, type Px } from '../../e2e/wall-points';
import { fullWallJob } from './full-wall';
import { row } from './print';
import { traced } from './trace-frames';

const root = new URL('../..', import.meta.url).pathname;
const configFile = `${root}/web/vite.config.ts`;
const moves = 150;
const frameMs = 1000 / 60;

await build({ configFile, logLevel: 'error' });
const server = await preview({ configFile, preview: { port: 4481, strictPort: false, host: 'localhost' } });
const browser = await chromium.launch({
  executablePath: await findBrowser(),
  // Without the system's own file dialogs, which no script can answer.
  args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-blink-features=FileSystemAccessLocal'],
});
try {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  // The runner marks functions with their names; in the page there is nobody to ask for them.
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.goto(server.resolvedUrls!.local[0]!);
  await waitForPlan(page);
  await timeOpening(page);
  await waitForPlan(page);
  const cdp = await context.newCDPSession(page);
  const { job, grips } = fullWallJob();
  console.log(`${describe(job.walls[0]!)}; main thread per frame, wall clock and processor time`);
  for (const { title, station, at } of grips) {
    await goTo(page, station);
    await waitForPlan(page);
    await page.keyboard.press('Escape');
    await drag(page, cdp, title, await onScreen(page, ...at));
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
  }
} finally {
  await browser.close();
  server.httpServer.close();
}

function describe({ fittings, zones }: { fittings: unknown[]; zones: unknown[] }): string {
  return `500 panels, ${fittings.length} fittings, ${zones.length} zones, a photo`;
}

/** From the choice of the file to the first frame that shows the wall. */
async function timeOpening(page: Page): Promise<void> {
  const text = writeJob(withPhoto(fullWallJob().job, await drawPhoto(page)));
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  const shown = page.evaluate(async () => {
    const start = performance.now();
    const nextFrame = () => new Promise((resume) => requestAnimationFrame(resume));
    const drawing = () => document.querySelector('[data-testid="elevation"]');
    while (!drawing()?.getAttribute('aria-label')?.includes('Board wall')) await nextFrame();
    await nextFrame();
    return performance.now() - start;
  });
  await chooser.setFiles({ name: 'wall.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  row('opening the job, to the wall on the screen', { times: [await shown] });
  // The photo is rectified in the background.
  await page.waitForFunction(() => {
    const canvas = document.querySelector('canvas')!;
    const { data } = canvas.getContext('2d')!.getImageData(canvas.width / 2, canvas.height / 2, 1, 1);
    return data[3]! > 0;
  });
}

/** With the photo of a wall of 4200 × 2600 under it, drawn out over the whole of it. */
function withPhoto(job: Job, jpeg: Buffer): Job {
  const [wall] = job.walls;
  const { outline } = wall!;
  const id = createHash('sha256').update(jpeg).digest('hex');
  const photo = { id, type: 'image/jpeg' as const, width: 2400, height: 1800, data: jpeg.toString('base64') };
  const points = rectangle(0, 0, 4200, 2600).map(({ x, y }, i) => ({
    px: [x, y] as [number, number],
    at: outline[i] as [number, number],
  }));
  return {
    ...job,
    photos: [photo],
    walls: [{ ...wall!, photo: { photo: id, points, fade: 0.3, shown: true } }],
  };
}

/** Along two loops about where it was, one move a frame, as a mouse reports them. */
async function drag(page: Page, cdp: CDPSession, title: string, from: Px): Promise<void> {
  await page.mouse.click(from.x, from.y);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 12, from.y + 4);
  await new Promise((resume) => setTimeout(resume, 300));
  const frames = await traced(cdp, async () => {
    for (let i = 0; i < moves; i++) {
      const due = performance.now() + frameMs;
      const angle = (i / moves) * 4 * Math.PI;
      await page.mouse.move(from.x + 120 * Math.sin(angle), from.y + 40 * Math.cos(angle));
      await new Promise((resume) => setTimeout(resume, Math.max(0, due - performance.now())));
    }
  });
  await page.mouse.up();
  const ascending = (times: number[]) => ({ times: times.sort((a, b) => a - b) });
  row(`${title}: frame`, ascending(frames.map(({ busy }) => busy)));
  row(`${title}: processor`, ascending(frames.map(({ processor }) => processor)));
}
