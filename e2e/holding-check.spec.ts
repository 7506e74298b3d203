import { expect, test, type Page } from '@playwright/test';
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
