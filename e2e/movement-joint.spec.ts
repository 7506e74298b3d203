import { expect, test } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

test('a movement joint parts the panels, and they join again when it is undone', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Joints and cables' }).click();
  await page.getByRole('button', { name: 'Put in a movement joint' }).click();
  for (const end of ['begins', 'ends']) {
    const field = page.getByLabel(`Joint M1 ${end}, from left`);
    await field.fill('2650');
    await field.press('Enter');
    await expect(field).toHaveValue('2650');
  }
  await waitForPlan(page);

  await goTo(page, 'Panels');
  const parted = page.locator('tr.panel', { hasText: 'movement joint M1' });
  await expect(parted.first()).toBeVisible();

  // The joint was put in, and each of its ends was moved.
  for (let change = 0; change < 3; change++) await page.keyboard.press('Control+z');
  await expect(parted).toHaveCount(0);
});
