import { readFile } from 'node:fs/promises';
import { expect, test } from '@playwright/test';
import { waitForPlan } from './wall-points';

test('by keyboard alone, from opening the page to a printed budget price and on to a job', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  const before = await page.title();
  await page.keyboard.press('F1');
  await page.keyboard.type('budget');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Budget price, subject to survey' });
  await expect(dialog).toBeVisible();

  // What is typed wrong is said in one sentence, and mended where it stands.
  await expect(dialog.getByLabel('Width')).toBeFocused();
  await page.keyboard.type('wide');
  await page.keyboard.press('Tab');
  await page.keyboard.type('2600');
  await expect(dialog.getByRole('alert')).toContainText('Width: Type a size above 0');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.type('4200');
  await expect(dialog.getByRole('alert')).toHaveCount(0);

  const range = dialog.getByRole('row', { name: /^Budget price with tax/ }).getByRole('cell');
  await expect(range).toHaveCount(3, { timeout: 30_000 });
  expect(new Set(await range.allTextContents()).size).toBe(3);
  await expect(dialog.getByRole('row', { name: /^Visits/ })).toBeVisible();
  await expect(dialog.getByRole('row', { name: /^Ready for magnets/ })).toBeVisible();
  await expect(dialog).toContainText('Holds no tools, frames or thick stacks');
  await expect(dialog).toContainText('4200 × 2600 mm and all of it one zone');

  const print = dialog.getByRole('button', { name: 'Print on one page' });
  await expect(print).toBeEnabled({ timeout: 60_000 });
  await reach(print);
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toContain('budget-price.pdf');
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  await expect(dialog.getByRole('status').filter({ hasText: 'saved as a PDF' })).toBeVisible();
  // The open job is as it was.
  expect(await page.title()).toBe(before);
  await expect(page.getByRole('button', { name: /^Undo/, includeHidden: true })).toBeDisabled();

  await page.keyboard.press('Tab');
  await expect(dialog.getByRole('button', { name: 'Make it a job' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(page).toHaveTitle(/^New wall/);
  await expect(page.getByRole('group', { name: 'Alternatives' }).or(page.locator('.walls'))).toContainText(
    'Steel panels, writable',
  );

  /** Tab after Tab, as somebody without a mouse does. */
  async function reach(wanted: typeof print) {
    for (let i = 0; i < 30; i++) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error('The button cannot be reached by Tab.');
  }
});

test('a budget price in feet, of one way alone; a wall without magnets asks to be written on', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await page.keyboard.press('j');
  await page.keyboard.press('b');
  const dialog = page.getByRole('dialog', { name: 'Budget price, subject to survey' });
  await dialog.getByLabel('Width').fill("14'");
  await dialog.getByLabel('Height').fill('8\' 6"');
  await dialog.getByLabel('Magnetic coating').uncheck();
  await dialog.getByLabel('Magnetic film').uncheck();
  await expect(dialog.getByRole('row', { name: /^Budget price/ }).getByRole('cell')).toHaveCount(1, {
    timeout: 30_000,
  });
  await expect(dialog).toContainText('4267.2 × 2590.8 mm');
  await dialog.getByLabel('The wall is').selectOption('plain');
  await dialog.getByLabel('No magnets').check();
  await expect(dialog.getByRole('alert')).toContainText('has to be written on');
});

test('a job without rates borrows those of the last job that has some', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await expect(page.getByText('Kept on this device')).toBeVisible();
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await expect(page).toHaveTitle(/^New job/);
  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Budget price' }).click();
  const dialog = page.getByRole('dialog', { name: 'Budget price, subject to survey' });
  await expect(dialog).toContainText('Rates, products and working hours are those of “Print studio”');
  await dialog.getByLabel('Width').fill('4200');
  await dialog.getByLabel('Height').fill('2600');
  await expect(dialog.getByRole('row', { name: /^Reckoned at/ }).getByRole('cell')).toHaveCount(3, {
    timeout: 30_000,
  });
  await expect(dialog).not.toContainText('have no rate');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(page).toHaveTitle(/^New job/);
});
