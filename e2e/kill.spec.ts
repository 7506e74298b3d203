import { chromium, expect, test, type Browser, type Page } from '@playwright/test';
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { goTo } from './wall-points';

/*
 * The browser is killed at random moments while a job is being changed, and started again on the same profile. The test
 * keeps its own account of what the page had said to be kept: that must be there, with its undo. LODEPLAN_KILLS=50 for
 * the long run; the seed is printed, so that the moments can be tried again.
 */
const kills = Number(process.env.LODEPLAN_KILLS ?? 10);
const seed = Number(process.env.LODEPLAN_SEED ?? 20261127);
/** Some changes are made within it, or none. */
const longestLife = 1500;

/** mulberry32, as widely published: good enough to choose moments. */
function chances(from: number): () => number {
  let state = from;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

interface Running {
  readonly process: ChildProcess;
  readonly browser: Browser;
  readonly page: Page;
}

async function start(profile: string, address: string): Promise<Running> {
  const process_ = spawn(
    process.env.CHROMIUM_PATH || chromium.executablePath(),
    [
      '--headless',
      '--no-sandbox',
      '--disable-dev-shm-usage',
      '--disable-gpu',
      '--no-first-run',
      '--remote-debugging-port=0',
      '--window-size=1200,900',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    // A group of its own, so that all of the browser dies at once.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const endpoint = await new Promise<string>((resolve, reject) => {
    createInterface(process_.stderr!).on('line', (line) => {
      const found = /DevTools listening on (ws:\S+)/.exec(line);
      if (found) resolve(found[1]!);
    });
    process_.once('exit', () => reject(new Error('The browser did not start.')));
  });
  const browser = await chromium.connectOverCDP(endpoint);
  const page = browser.contexts()[0]!.pages()[0]!;
  await page.goto(address);
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Wall', exact: true }).click();
  return { process: process_, browser, page };
}

async function kill({ process: running }: Running): Promise<void> {
  const gone = new Promise((resolve) => running.once('exit', resolve));
  process.kill(-running.pid!, 'SIGKILL');
  await gone;
}

const wallName = (page: Page) => page.getByLabel('wall A, name');

/** Names of the wall in the order in which they were given, and up to which one the page had said "kept". */
interface Account {
  readonly names: string[];
  reported: number;
}

/** Types names, and takes one back now and then, until the browser is gone. */
async function edit(page: Page, account: Account, from: number): Promise<void> {
  for (let n = from; ; n++) {
    const isUndo = n % 5 === 4 && account.names.length > 1;
    if (isUndo) {
      account.names.push(account.names.at(-2)!);
      await page.getByRole('button', { name: /^Undo/ }).click({ timeout: 5000 });
    } else {
      await wallName(page).fill(`Wall ${n}`, { timeout: 5000 });
      account.names.push(`Wall ${n}`);
      await wallName(page).press('Enter', { timeout: 5000 });
    }
    await page.getByRole('banner').getByText('Kept on this device').waitFor({ timeout: 5000 });
    account.reported = account.names.length - 1;
  }
}

test(`the browser is killed ${kills} times in the middle of changes, and what was kept is there`, async ({
  baseURL,
}) => {
  test.setTimeout(60_000 + kills * 30_000);
  const chance = chances(seed);
  const profile = mkdtempSync(join(tmpdir(), 'lodeplan-kill-'));
  let running = await start(profile, baseURL!);
  let made = 0;
  let behind = 0;
  let count = 0;
  try {
    for (let n = 0; n < kills; n++) {
      const account: Account = { names: [await wallName(running.page).inputValue()], reported: 0 };
      const editing = edit(running.page, account, count).catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, chance() * longestLife));
      await kill(running);
      await editing;
      count += account.names.length;
      made += account.names.length - 1;

      running = await start(profile, baseURL!);
      const found = await wallName(running.page).inputValue();
      const allowed = account.names.slice(account.reported);
      expect(allowed, `kill ${n + 1} with seed ${seed}`).toContain(found);
      // One change may be under way; two never are.
      expect(allowed.length).toBeLessThanOrEqual(2);
      if (found !== account.names.at(-1)) behind++;
      if (made > 0 && account.reported > 0) {
        await expect(running.page.getByRole('button', { name: /^(Undo|Redo) “/ }).first()).toBeEnabled();
      }
    }

    // Every change of every life is still in the history, one after another.
    const undo = running.page.getByRole('button', { name: /^Undo/ });
    let back = 0;
    while (await undo.isEnabled()) {
      await undo.click();
      back++;
    }
    await expect(wallName(running.page)).toHaveValue('Proofing wall');
    console.log(
      `Killed ${kills} times (seed ${seed}): ${made} changes, ${behind} times the last one was not kept yet, ${back} undone at the end.`,
    );
  } finally {
    await kill(running);
    rmSync(profile, { recursive: true, force: true });
  }
});
