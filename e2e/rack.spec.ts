import { expect, test, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

async function openLeaf(page: Page, station: 'Panels' | 'Drawings', name: string): Promise<void> {
  await goTo(page, station);
  await page.getByRole('tab', { name, exact: true }).click();
}

/** Issues the plan on the screen and gives the marks that came onto the rack. */
async function issue(page: Page, revision: string): Promise<string[]> {
  await waitForPlan(page);
  await openLeaf(page, 'Drawings', 'Revisions');
  await page.getByRole('button', { name: 'Issue a revision…' }).click();
  const dialog = page.getByRole('dialog');
  const marks = await dialog
    .locator('section', { hasText: 'Comes onto the rack' })
    .locator('li b')
    .allInnerTexts();
  await dialog.getByLabel('Date of issue').fill('2026-05-04');
  await dialog.getByRole('button', { name: `Issue revision ${revision}` }).click();
  await expect(dialog.getByRole('heading', { name: `Revision ${revision} is issued` })).toBeVisible();
  await dialog.getByRole('button', { name: 'Done' }).click();
  return marks;
}

async function showFirmRack(page: Page) {
  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  await page.getByRole('button', { name: 'The firm’s rack' }).click();
  return page.getByRole('dialog', { name: 'The firm’s rack' });
}

const rowOf = (page: Page, mark: string) =>
  page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: mark, exact: true }) });

/** A job of its own with the stock of the demo: the demo as a file that is opened again, under another name. */
async function openSecondJob(page: Page): Promise<void> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save file' }).click(),
  ]);
  const { readFileSync } = await import('node:fs');
  const job = JSON.parse(readFileSync(await download.path(), 'utf8')) as Record<string, unknown>;
  const text = JSON.stringify({ ...job, name: 'Shop', revisions: [], rack: [], revision: 'A' });
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  await chooser.setFiles({ name: 'shop.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect(page.getByRole('button', { name: /Job details: Shop/ })).toBeVisible();
  await waitForPlan(page);
}

test('an issued revision books offcuts in, is printed from its record, and no undo takes it back', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await openLeaf(page, 'Panels', 'Cutting');
  await page.getByLabel('Kerf, mm').fill('1');
  await page.keyboard.press('Enter');
  const marks = await issue(page, 'A');
  expect(marks.length).toBeGreaterThan(0);

  // The change made before the issue is undone; the record, the next letter and the bookings stay.
  await page.getByRole('button', { name: /^Undo/ }).click();
  await waitForPlan(page);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  await expect(page.getByRole('button', { name: /Job details/ })).toContainText('revision B');
  await page.getByRole('button', { name: 'Show the documents of revision A' }).click();
  await expect(page.getByText('Revision A as issued on 2026-05-04, printed from its record.')).toBeVisible();
  await expect(page.getByLabel('Preview')).toContainText('2026-05-04', { timeout: 60_000 });

  await expect(page.getByText('Kept on this device')).toBeVisible();
  await page.reload();
  await waitForPlan(page);
  const dialog = await showFirmRack(page);
  await expect(dialog.getByRole('rowheader')).toHaveText(marks);
  await expect(dialog.getByRole('row').nth(1)).toContainText('“Print studio”, revision A, 2026-05-04');
});

test('a second job reserves a piece, a third tab sees whose it is, and issuing uses it up for good', async ({
  page,
  context,
}) => {
  await page.goto('/');
  const [mark] = await issue(page, 'A');
  await openSecondJob(page);
  await openLeaf(page, 'Panels', 'Rack');
  await page.getByRole('button', { name: `Take ${mark} for this job` }).click();
  await expect(rowOf(page, mark!)).toContainText('cut up');
  await expect(page.getByText('Kept on this device')).toBeVisible();

  const other = await context.newPage();
  await other.goto('/');
  await waitForPlan(other);
  const rack = await showFirmRack(other);
  await expect(rowOf(other, mark!)).toContainText('reserved by “Shop”');

  // Given back by undo, reserved again by redo: the other tab follows.
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(rowOf(other, mark!)).toContainText('free');
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect(rowOf(other, mark!)).toContainText('reserved by “Shop”');
  await page.reload();
  await waitForPlan(page);
  await openLeaf(page, 'Panels', 'Rack');
  await expect(rowOf(page, mark!)).toContainText('cut up');

  await issue(page, 'A');
  await rack.getByRole('button', { name: /Show what is used up/ }).click();
  await expect(rowOf(other, mark!)).toContainText('used up in “Shop”, revision A');
  await openLeaf(page, 'Panels', 'Rack');
  await page.getByRole('button', { name: `Give back to the firm’s rack: ${mark}` }).click();
  await expect(rowOf(other, mark!)).toContainText('used up in “Shop”, revision A');
});

test('a deleted job frees what it had reserved, and a bad rack file changes nothing', async ({ page }) => {
  await page.goto('/');
  const [mark] = await issue(page, 'A');
  await openSecondJob(page);
  await openLeaf(page, 'Panels', 'Rack');
  await page.getByRole('button', { name: `Take ${mark} for this job` }).click();
  await expect(rowOf(page, mark!)).toBeVisible();
  await expect(page.getByText('Kept on this device')).toBeVisible();
  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  await page.getByRole('button', { name: 'Open Print studio' }).click();
  await waitForPlan(page);
  const rack = await showFirmRack(page);
  await expect(rowOf(page, mark!)).toContainText('reserved by “Shop”');
  await rack.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  await page.getByRole('button', { name: 'Delete Shop' }).click();
  await page.getByRole('button', { name: 'Yes, delete Shop' }).click();
  await page.getByRole('button', { name: 'The firm’s rack' }).click();
  await expect(rowOf(page, mark!)).toContainText('free');

  const file = page.getByLabel('Rack file to bring in');
  await file.setInputFiles({
    name: 'rack.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format": "lodeplan-job"}'),
  });
  await expect(rack.getByRole('status')).toContainText('This is no rack file');
  await expect(rowOf(page, mark!)).toContainText('free');
});
