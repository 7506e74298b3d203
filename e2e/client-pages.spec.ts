import { expect, test, type Locator, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { goTo, waitForPlan } from './wall-points';

const rowOf = (page: Page, title: string): Locator =>
  page
    .getByRole('row')
    .filter({ has: page.getByRole('button', { name: new RegExp(`^Show .*: ${title}$`) }) });

test('alternatives side by side and what has changed since a revision stand among the documents', async ({
  page,
}) => {
  await startWall(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await waitForPlan(page);
  await goTo(page, 'Drawings');
  await expect(rowOf(page, 'client view')).toHaveCount(1, { timeout: 60_000 });
  await expect(rowOf(page, 'alternatives for the client')).toHaveCount(0);
  await expect(rowOf(page, 'changes since revision A')).toHaveCount(0);

  await page.getByRole('tab', { name: 'Revisions' }).click();
  await page.getByRole('button', { name: 'Issue a revision…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Revision', { exact: true }).fill('A');
  await dialog.getByLabel('Date of issue').fill('2026-05-04');
  await dialog.getByRole('button', { name: 'Issue revision A' }).click();
  await dialog.getByRole('button', { name: 'Done' }).click();

  await goTo(page, 'Zones');
  const width = page.getByLabel('Zone Z1, width');
  await width.fill('2500');
  await width.press('Enter');
  await page.getByRole('tab', { name: 'Alternatives' }).click();
  await page.getByRole('button', { name: 'Copy into an alternative' }).click();
  const name = page.getByLabel('Alternative 2, name');
  await name.fill('Wider');
  await name.press('Enter');
  await waitForPlan(page);

  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Documents' }).click();
  const alternatives = rowOf(page, 'alternatives for the client');
  await expect(alternatives).toContainText('A4 landscape', { timeout: 60_000 });
  await alternatives.getByRole('button', { name: /^Show/ }).click();
  await expect(page.getByRole('img', { name: /alternatives for the client, page 1 of 1/ })).toBeVisible();

  const changes = rowOf(page, 'changes since revision A');
  await changes.getByRole('button', { name: /^Show/ }).click();
  await expect(page.getByRole('img', { name: /changes since revision A, page 1 of/ })).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    changes.getByRole('button', { name: /^Download PDF/ }).click(),
  ]);
  expect(download.suggestedFilename()).toContain('changes-since');
});
