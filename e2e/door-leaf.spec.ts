import { expect, test } from '@playwright/test';
import { clickWall, goTo, waitForPlan } from './wall-points';

const warned =
  /Door D1 \(To the yard\).* the open leaf covers zone Z1 \(Proofs\), and its handle would strike/;

test('a door that would swing against a zone is told of until it has a stop', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Survey');
  await expect(page.getByText(warned)).toHaveCount(0);
  await page.getByLabel('door D1, hinges').selectOption('right');
  await expect(page.getByText(warned)).toHaveCount(1);
  await clickWall(page, 600, 1500);
  const stop = page.getByLabel('door D1, door stop');
  await expect(stop).toHaveValue('no');

  // A tablet held upright has what only doors have in a second line.
  await page.setViewportSize({ width: 820, height: 1180 });
  await expect(stop).toBeVisible();
  await stop.selectOption('yes');
  await expect(page.getByText(warned)).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(stop).toHaveValue('no');
  await expect(page.getByText(warned)).toHaveCount(1);
});
