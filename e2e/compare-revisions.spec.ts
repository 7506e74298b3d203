import { expect, test, type Locator, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, goTo, waitForPlan } from './wall-points';

async function putIn(page: Page, kind: string, at: readonly [number, number]): Promise<void> {
  await page.getByRole('button', { name: kind, exact: true }).click();
  await clickWall(page, ...at);
}

async function fillIn(field: Locator, value: string): Promise<void> {
  await field.fill(value);
  await field.press('Enter');
}

async function issue(page: Page, revision: string, date: string): Promise<void> {
  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Revisions' }).click();
  await page.getByRole('button', { name: 'Issue a revision…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Revision', { exact: true }).fill(revision);
  await dialog.getByLabel('Date of issue').fill(date);
  await dialog.getByRole('button', { name: `Issue revision ${revision}` }).click();
  await expect(dialog.getByRole('heading', { name: `Revision ${revision} is issued` })).toBeVisible();
  await dialog.getByRole('button', { name: 'Done' }).click();
}

test('what has changed since a revision, and between two, is told in words and marked with clouds', async ({
  page,
}) => {
  await startWall(page);
  await putIn(page, 'Socket', [700, 300]);
  await putIn(page, 'Switch', [3900, 1100]);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await waitForPlan(page);
  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Revisions' }).click();

  // There is nothing to compare with before the first revision.
  const compare = page.getByRole('button', { name: 'What has changed…' });
  await expect(compare).toHaveCount(0);
  await issue(page, 'A', '2026-05-04');

  const dialog = page.getByRole('dialog', { name: 'What has changed' });
  const here = dialog.getByRole('region', { name: 'Changes on the wall shown' });
  const elsewhere = dialog.getByRole('region', { name: 'Changes elsewhere' });
  await compare.click();
  await expect(here).toContainText('Nothing has changed on this wall.');
  await expect(elsewhere).toContainText('Nothing else has changed.');
  await expect(
    dialog.getByRole('img', { name: 'Wall A, no change: clouds round what has changed' }),
  ).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);

  // The socket is moved by its figure, the switch deleted, the zone made wider.
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Fittings' }).click();
  const left = page.getByRole('textbox', { name: /socket.*from left/i });
  const stood = Number(await left.inputValue());
  await fillIn(left, String(stood - 250));
  await clickWall(page, 3900, 1100);
  await page.keyboard.press('Delete');
  await goTo(page, 'Zones');
  const width = page.getByLabel('Zone Z1, width');
  const wide = Number(await width.inputValue());
  await fillIn(width, String(wide + 300));
  await waitForPlan(page);

  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Revisions' }).click();
  await compare.focus();
  await page.keyboard.press('Enter');
  await expect(here.getByRole('listitem').filter({ hasText: 'Socket K1 moved 250 mm left.' })).toHaveCount(1);
  await expect(here).toContainText('Zone Z1 is 300 mm wider on the right.');
  await expect(here.getByRole('listitem').filter({ hasText: /^Switch \S+ is gone: it was \d/ })).toHaveCount(
    1,
  );
  const picture = dialog.getByRole('img', { name: 'Wall A, 3 changes: clouds round what has changed' });
  await expect(picture).toBeVisible();
  await page.setViewportSize({ width: 820, height: 1180 });
  // On a narrow screen the words stand under the picture, and nothing is cut off at its side.
  const [drawn, told] = [(await picture.boundingBox())!, (await here.boundingBox())!];
  expect(told.y).toBeGreaterThanOrEqual(drawn.y + drawn.height);
  expect(Math.max(drawn.x + drawn.width, told.x + told.width)).toBeLessThanOrEqual(820);
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.keyboard.press('Escape');

  // A second record; what is changed after it is not in it.
  await issue(page, 'B', '2026-05-11');
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Fittings' }).click();
  await fillIn(left, String(stood));
  await waitForPlan(page);
  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Revisions' }).click();
  await compare.click();
  await expect(here).toContainText('Socket K1 moved 250 mm right.');
  await expect(here.getByRole('listitem')).toHaveCount(1);
  await dialog.getByLabel('From').selectOption({ label: 'Revision A of 2026-05-04' });
  await dialog
    .getByRole('combobox', { name: 'to', exact: true })
    .selectOption({ label: 'Revision B of 2026-05-11' });
  await expect(here).toContainText('Socket K1 moved 250 mm left.');
  await expect(picture).toBeVisible();

  // The other way round, what went has come.
  await dialog.getByLabel('From').selectOption({ label: 'Revision B of 2026-05-11' });
  await dialog
    .getByRole('combobox', { name: 'to', exact: true })
    .selectOption({ label: 'Revision A of 2026-05-04' });
  await expect(here).toContainText('Socket K1 moved 250 mm right.');
  await expect(here).toContainText('Zone Z1 is 300 mm narrower on the right.');
  await expect(here).toContainText(/Switch \S+ is new:/);
});
