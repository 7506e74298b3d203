import { expect, test } from '@playwright/test';
import { startWall } from './new-wall';
import { goTo } from './wall-points';

test('a diagonal says that a wall is out of square, and the outline is fitted to it, and back', async ({
  page,
}) => {
  await startWall(page, '4000', '3000');
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Check measures' }).click();
  await page.getByRole('button', { name: 'Put in a check measure' }).click();
  const measured = page.getByRole('textbox', { name: 'Check measure 1, measured' });
  await expect(measured).toHaveValue('5000');
  for (const odd of ['NaN', '-5', '', '1e9', '<b>1</b>', '99999999999']) {
    await measured.fill(odd);
    await measured.press('Enter');
    await expect(measured).toHaveAttribute('aria-invalid', 'true');
    await expect(measured).toHaveAccessibleDescription(/[.!]$/);
    await measured.press('Escape');
    await expect(measured).toHaveValue('5000');
  }
  await measured.fill('5012');
  await measured.press('Enter');
  await expect(page.locator('#leaf')).toContainText('12 longer than drawn');
  await expect(page.locator('#leaf')).toContainText('Corner 2 is out of square by 15 mm');
  await expect(page.getByLabel('Findings')).toContainText('The tape says 5012 mm from corner 1 to corner 3');

  await page.getByRole('button', { name: 'Fit the outline to these measures' }).click();
  await expect(page.locator('#leaf')).toContainText('as drawn');
  await expect(page.getByLabel('Findings')).not.toContainText('The tape says');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.locator('#leaf')).toContainText('12 longer than drawn');
  await page.getByRole('button', { name: 'Delete Check measure 1' }).click();
  await expect(page.getByLabel('Findings')).not.toContainText('The tape says');
});
