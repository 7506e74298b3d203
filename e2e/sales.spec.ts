import { expect, test } from '@playwright/test';
import { goTo } from './wall-points';

test('sales shows the client the magnetic zone on the screen, without a shop dimension', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Drawings');
  const show = page.getByRole('button', { name: 'Client view on screen' });
  await expect(show).toBeEnabled({ timeout: 60_000 });
  await show.click();
  const view = page
    .getByRole('dialog')
    .or(page.getByRole('region', { name: /client/i }))
    .first();
  await expect(view).toBeVisible();
  await expect(view).toContainText(/magnet/i);
  const words = await view.evaluate((element) =>
    [...element.querySelectorAll('text')].map((text) => text.textContent?.trim() ?? ''),
  );
  expect(words.length).toBeGreaterThan(3);
  // Shop dimensions are bare figures in millimetres.
  expect(words.filter((word) => /^\d{3,4}([.,]\d)?( mm)?$/.test(word))).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(show).toBeVisible();
});
