import { expect, test } from '@playwright/test';
import { goTo, onScreen } from './wall-points';

test('a reload in the middle of a drag finds the job as it was before the drag', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Survey');
  const k1 = page.getByRole('textbox', { name: /socket K1.*from left/i });
  await k1.fill('1600');
  await k1.press('Enter');
  await expect(page.getByText('Kept on this device')).toBeVisible();
  const at = await onScreen(page, 1673, 343);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 150, at.y - 60, { steps: 5 });
  await page.reload();
  await goTo(page, 'Survey');
  await expect(k1).toHaveValue('1600');
});

test('the planner works without a network once it is loaded', async ({ page, context }) => {
  await page.goto('/');
  await goTo(page, 'Drawings');
  await expect(page.getByRole('button', { name: 'Client view on screen' })).toBeEnabled({ timeout: 60_000 });
  await context.setOffline(true);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download all PDFs' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
});
