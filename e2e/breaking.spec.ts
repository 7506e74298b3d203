import { expect, test, type Locator, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

/** What may be typed by mistake, by a paste or by malice into a field that wants a figure. */
const oddEntries = ['NaN', 'Infinity', '1e9', '-5', '1200mm2', '', '99999999999', '<b>1</b>'];

async function tableOf(page: Page, station: Parameters<typeof goTo>[1], part: string) {
  await goTo(page, station);
  await page.getByRole('tab', { name: part, exact: true }).click();
  await page.locator('#leaf').getByRole('textbox').first().waitFor();
}

/** A nameless job whose one wall carries as many panels as it takes to be too many. */
function jobFile(width: number, height: number, walls = 1): Buffer {
  const corners = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const layout = { stock: 'S1', start: 'lower-left', jointGap: 0, stagger: 0, leastWidth: 50 };
  return Buffer.from(
    JSON.stringify({
      format: 'lodeplan-job',
      version: 1,
      name: 'Large',
      currency: 'EUR',
      stock: [
        { id: 'S1', name: 'Steel', width: 500, height: 500, thickness: 0.5, price: 6.4, hasFace: false },
      ],
      rack: [],
      cutting: { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] },
      walls: Array.from({ length: walls }, (_, i) => ({
        id: `W${i + 1}`,
        name: `Room ${i + 1}`,
        outline: corners,
        rim: { floor: 0, ceiling: 0, left: 0, right: 0 },
        openings: [],
        fittings: [],
        zones: [{ id: 'Z1', name: '', shape: corners, buildUp: 'steel-panel', layout }],
      })),
    }),
  );
}

async function openFile(page: Page, name: string, buffer: Buffer) {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer });
}

test.beforeEach(async ({ page }) => {
  const faults: string[] = [];
  page.on('pageerror', (fault) => faults.push(fault.message));
  (page as Page & { faults?: string[] }).faults = faults;
  await page.goto('/');
  await waitForPlan(page);
});

test.afterEach(({ page }) => {
  expect((page as Page & { faults?: string[] }).faults).toEqual([]);
});

for (const [station, part] of [
  ['Survey', 'Openings and fittings'],
  ['Survey', 'Wall'],
  ['Survey', 'Corners'],
  ['Zones', 'Zones'],
  ['Panels', 'Layout'],
  ['Panels', 'Stock sheets'],
  ['Panels', 'Rack'],
  ['Panels', 'Cutting'],
] as const) {
  test(`odd figures in ${part} at ${station} are refused in words or read as what they say`, async ({
    page,
  }) => {
    await tableOf(page, station, part);
    const fields = page.locator('#leaf input[inputmode="decimal"]');
    const labels = new Set(await fields.evaluateAll((all) => all.map((field) => field.ariaLabel!)));
    const kinds = new Map([...labels].map((label) => [label.split(', ').at(-1)!, label]));
    expect(kinds.size).toBeGreaterThan(0);
    for (const label of kinds.values()) {
      const field = page.getByLabel(label, { exact: true });
      const before = await field.inputValue();
      for (const odd of oddEntries) {
        await field.fill(odd);
        await field.press('Enter');
        const after = await field.inputValue();
        const refused = (await field.getAttribute('aria-invalid')) === 'true';
        if (refused) await expect(field).toHaveAccessibleDescription(/[.!]$/);
        else expect(after, `${odd} in ${label}`).toMatch(/^([-−]?\d+(\.\d+)?)?$/);
        if (refused) await field.press('Escape');
        else if (after !== before) await takeBack(page, field, before);
        await expect(field).toHaveValue(before);
      }
    }
  });
}

/** A figure that is not part of the job, such as a margin of a search, has nothing to undo. */
async function takeBack(page: Page, field: Locator, before: string) {
  const undo = page.getByRole('button', { name: /^Undo/ });
  if (await undo.isEnabled()) return undo.click();
  await field.fill(before);
  await field.press('Enter');
}

test('a stock sheet in use stays, and it is said where it is used', async ({ page }) => {
  await tableOf(page, 'Panels', 'Stock sheets');
  await page.getByRole('button', { name: 'Delete stock sheet S1' }).click();
  await expect(page.locator('#leaf').getByRole('alert')).toContainText('Zone Z1 on wall A is laid with it');
  await expect(page.getByLabel('Stock sheet S1, width')).toHaveValue('500');
});

test('more than 200 000 panels are refused with their number, and the open job stays', async ({ page }) => {
  await openFile(page, 'large.json', jobFile(240_000, 230_000));
  await expect(page.getByRole('dialog')).toContainText('would make 220800 panels; the limit is 200000');
  await page.getByRole('button', { name: 'Back to the job' }).click();
  await expect(page).toHaveTitle(/^Print studio/);
});

test('10 000 panels can be scrolled, laid anew and read', async ({ page }) => {
  await goTo(page, 'Panels');
  await openFile(page, 'large.json', jobFile(60_000, 42_000));
  await expect(page).toHaveTitle(/^Large/);
  await waitForPlan(page);
  await expect(page.getByLabel('Findings')).toContainText('10080');
  expect(await page.locator('#leaf tbody tr').count()).toBeLessThan(150);
  await page.locator('#leaf').evaluate((part) => (part.scrollTop = part.scrollHeight));
  await expect(page.locator('#leaf tbody')).toContainText('10080');
  await page.getByRole('tab', { name: 'Layout' }).click();
  await page.getByLabel('Zone Z1, joint gap').fill('2');
  await page.keyboard.press('Enter');
  await waitForPlan(page);
  await expect(page.getByLabel('Zone Z1, joint gap')).toHaveValue('2');
});

test('among 120 walls the one on the screen is seen, and a wall can still be added', async ({ page }) => {
  await openFile(page, 'many.json', jobFile(3000, 2600, 120));
  await expect(page).toHaveTitle(/^Large/);
  await tableOf(page, 'Survey', 'Wall');
  await page.getByRole('button', { name: 'Show wall W90' }).click();
  const walls = page.getByRole('navigation', { name: 'Walls' });
  await expect(walls.getByRole('button', { name: 'W90 Room 90' })).toBeInViewport({ ratio: 1 });
  await expect(walls.getByRole('button', { name: 'Add wall' })).toBeInViewport({ ratio: 1 });
  await goTo(page, 'Drawings');
  await expect(page.locator('section[aria-label="Drawing"] b')).toContainText('wall W90', {
    timeout: 60_000,
  });
});

test('a file that is no job leaves the open one as it is', async ({ page }) => {
  const binary = Buffer.from(Array.from({ length: 4096 }, (_, i) => (i * 197) % 256));
  for (const [name, content] of [
    ['picture.json', binary],
    ['blank.json', Buffer.alloc(3_000_000, ' ')],
  ] as const) {
    await openFile(page, name, content);
    await expect(page.getByRole('dialog')).toContainText('cannot be opened');
    await page.getByRole('button', { name: 'Back to the job' }).click();
    await expect(page).toHaveTitle(/^Print studio/);
  }
});

test('what is half typed when the page is left changes nothing', async ({ page }) => {
  await tableOf(page, 'Survey', 'Wall');
  await page.getByLabel('wall A, width').fill('53');
  await page.reload();
  await waitForPlan(page);
  await tableOf(page, 'Survey', 'Wall');
  await expect(page.getByLabel('wall A, width')).toHaveValue('5400');
});

test('without storage the job can be worked on, and Undo brings back the one a new job replaced', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', {
      get() {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      },
    });
  });
  await page.reload();
  await expect(page.getByRole('alert')).toContainText('keeps nothing here');
  await page.getByRole('button', { name: 'Understood' }).click();
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText('until you leave the page');
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await expect(page).toHaveTitle(/^New job/);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page).toHaveTitle(/^Print studio/);
});

test('documents are drawn and printed when the network is gone', async ({ page, context }) => {
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(2500);
  await page.waitForLoadState('networkidle');
  await context.setOffline(true);
  await goTo(page, 'Drawings');
  const print = page.getByRole('button', { name: /^Download PDF: .*cut list/i });
  await expect(print).toBeEnabled({ timeout: 30_000 });
  const [file] = await Promise.all([page.waitForEvent('download'), print.click()]);
  expect(file.suggestedFilename()).toContain('cut-list.pdf');
  await page.getByRole('tab', { name: 'Workshop' }).click();
  const lists = page.getByRole('button', { name: 'Download lists as CSV' });
  const [list] = await Promise.all([page.waitForEvent('download'), lists.click()]);
  expect(list.suggestedFilename()).toMatch(/\.csv$/);
});
