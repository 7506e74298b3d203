import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { clickWall, goTo, waitForPlan } from './wall-points';

const leaf = (page: Page) => page.locator('#leaf');
const show = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

test('a bicycle is held by no magnet: what would, done with one click, and the sheet in the set', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await page.getByRole('button', { name: 'B Type store' }).click();
  await page.getByRole('button', { name: 'Bicycle hook' }).click();
  // The coating of the type store, then what is said of it there.
  await clickWall(page, 4300, 1500);
  await show(page, 'Calculation');
  await expect(leaf(page).locator('select')).toContainText('bicycle hook');
  await expect(leaf(page).getByRole('heading', { name: /bicycle hook/ })).not.toContainText(': holds');
  const screw = leaf(page).getByRole('button', { name: /Screw it to a fixing point/ });
  await expect(screw).toBeVisible();
  await screw.click();
  await expect(leaf(page).getByRole('heading', { name: /bicycle hook/ })).toContainText(
    'screwed to a fixing point',
  );
  await goTo(page, 'Drawings');
  await expect(leaf(page)).toContainText('Holding checks', { timeout: 30_000 });
});

test('the check of one item is saved from its calculation as a PDF of its own', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await show(page, 'Calculation');
  await leaf(page).locator('select').first().selectOption('H6');
  await expect(leaf(page).getByRole('heading', { name: /shelf H6/ })).toContainText('does not hold');
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    leaf(page).getByRole('button', { name: 'Save this check as PDF' }).click(),
  ]);
  expect(saved.suggestedFilename()).toContain('holding-check-A-H6');
  const bytes = await readFile(await saved.path());
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  const pages = await getDocument({ data: new Uint8Array(bytes) }).promise;
  const words: string[] = [];
  for (let i = 1; i <= pages.numPages; i++) {
    const { items } = await (await pages.getPage(i)).getTextContent();
    words.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  expect(words[0]).toContain('Does not hold');
  expect(pages.numPages).toBeGreaterThan(1);
  for (const one of words) expect(one).toContain('An estimate only');
});

for (const width of [820, 1440])
  test(`the calculation is not wider than ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 1180 });
    await page.goto('/');
    await waitForPlan(page);
    await goTo(page, 'Hanging');
    await show(page, 'Calculation');
    await leaf(page).locator('select').first().selectOption('H6');
    const table = leaf(page).getByRole('table').last();
    await expect(table).toContainText('pull of all magnets counted');
    const box = (await table.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(width);
    await expect(leaf(page).getByRole('list').filter({ hasText: 'Furlani 2001' })).toBeVisible();
  });
